package picture

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// reliefMeshes returns a mesh for every blade that bites of a cut along which the wheel was rolled.
// Its flanks are none of the wheel's own: they come from the kernel's cross-sections, which
// are without polish.
func reliefMeshes(g groove.Groove, wheel groove.Wheel, outside *geometry.Surface, fine detail) []mesh {
	var all []mesh
	for _, hollow := range groove.NewCutter(outside, nil).Relief(&g, wheel) {
		m := mesh{crease: true, near: lampOver(outside)}
		var thetas []float64
		for _, i := range crossed(hollow, fine.apart) {
			c := &hollow[i]
			at := nearest(g.Samples, c)
			m.ribs = append(m.ribs, rolledRungs(c, bend(at, outside), fine.parts))
			thetas = append(thetas, at.Theta)
		}
		for i := range len(m.ribs) - 1 {
			m.lay(i, thetas[i], thetas[i+1], wheel.Edge == groove.Flat, outside)
		}
		if len(m.falls) > 0 {
			all = append(all, m)
		}
	}
	return all
}

// crossed chooses the cross-sections that are drawn, so many millimetres apart: the first and
// the last with them.
func crossed(hollow groove.Hollow, apart float64) []int {
	var chosen []int
	for i := range hollow {
		middle := between(hollow[i].Left, hollow[i].Right, 0.5)
		if n := len(chosen); n > 0 && i < len(hollow)-1 {
			last := hollow[chosen[n-1]]
			if r2.Norm(r2.Sub(middle, between(last.Left, last.Right, 0.5))) < apart {
				continue
			}
		}
		chosen = append(chosen, i)
	}
	return chosen
}

// rolledRungs returns the rungs of so many parts across a cross-section, from its left edge to its right one,
// on a surface that curves so across it.
func rolledRungs(c *groove.Cross, curve float64, parts int) []rung {
	wide := r2.Norm(r2.Sub(c.Right, c.Left))
	rungs := make([]rung, parts+1)
	for i := range rungs {
		share := float64(i) / float64(parts)
		deep, off := 0.0, (share-0.5)*wide
		if i > 0 && i < parts {
			deep = c.Depth(share)
		}
		rungs[i] = rung{between(c.Left, c.Right, share), deep, deep + curve*off*off/2}
	}
	return rungs
}

// nearest returns the sample whose line is nearest to a cross-section.
func nearest(samples []groove.Sample, c *groove.Cross) groove.Sample {
	middle := between(c.Left, c.Right, 0.5)
	best := samples[0]
	for _, s := range samples[1:] {
		if r2.Norm2(r2.Sub(s.At, middle)) < r2.Norm2(r2.Sub(best.At, middle)) {
			best = s
		}
	}
	return best
}
