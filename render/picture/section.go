package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// rung is one place on a line across a groove: its depth below the surface, and its
// depth below the plane that touches the surface on the groove's line, which gives
// its shape in space.
type rung struct {
	at          geometry.Point
	depth, sunk float64
}

// section returns the rungs across a groove at a sample, under each blade of the
// wheel, from the left edge to the right.
func section(s groove.Sample, w groove.Wheel, outside *geometry.Surface, fine detail) [][]rung {
	curve := bend(s, outside)
	switch w.Edge {
	case groove.Gang:
		return gang(s, w, curve)
	case groove.Mitre:
		return [][]rung{across(s, curve, []float64{1, 0}, func(share float64) float64 { return 1 - share })}
	case groove.Flat:
		// On a flat panel the depth falls as the surface bends away. What is left
		// of it where the wheel's faces end it is a step.
		step := 0.0
		if half := s.HalfWidth(); s.Depth > 0 {
			step = max(1-curve*half*half/(2*s.Depth), 0)
		}
		return [][]rung{across(s, curve, fine.panel, func(share float64) float64 { return 1 - (1-step)*share*share })}
	}
	return [][]rung{across(s, curve, fine.hollow, func(share float64) float64 { return 1 - share*share })}
}

// across returns rungs at shares of the way from the centre line to the edges,
// where the depth is a share of the sample's.
func across(s groove.Sample, curve float64, shares []float64, depth func(share float64) float64) []rung {
	rungs := make([]rung, 0, 2*len(shares)-1)
	add := func(edge geometry.Point, wide, share float64) {
		deep, off := s.Depth*depth(share), wide*share
		rungs = append(rungs, rung{between(s.At, edge, share), deep, deep + curve*off*off/2})
	}
	for _, share := range shares {
		add(s.LeftEdge, s.Left, share)
	}
	for i := len(shares) - 2; i >= 0; i-- {
		add(s.RightEdge, s.Right, shares[i])
	}
	return rungs
}

// gang returns the rungs under each mitre of a gang wheel: its bottom, and its
// edges or, where two run into one another, the crest between them.
func gang(s groove.Sample, w groove.Wheel, curve float64) [][]rung {
	left := aside(s)
	steep := 1 / math.Tan(w.Angle/2)
	all := make([][]rung, w.Mitres)
	for i := range all {
		offset := (float64(i) - float64(w.Mitres-1)/2) * w.Spacing
		bottom := max(s.Depth-curve*offset*offset/2, 0)
		half := min(bottom/steep, w.Spacing/2)
		at := func(off float64) rung {
			depth := bottom - steep*math.Abs(off)
			return rung{r2.Add(s.At, r2.Scale(offset+off, left)), depth, depth}
		}
		all[i] = []rung{at(half), at(0), at(-half)}
	}
	return all
}

// bend returns the curvature of the surface across the groove at a sample.
func bend(s groove.Sample, outside *geometry.Surface) float64 {
	across := aside(s)
	right, up := outside.Compass(s.Theta)
	round, along := outside.Curvatures(s.Height)
	level, upright := r2.Dot(across, right), r2.Dot(across, up)
	return round*level*level + along*upright*upright
}

// aside returns the direction across the groove to the left; none at a tip, where
// it has no width.
func aside(s groove.Sample) geometry.Point {
	if s.LeftEdge == s.RightEdge {
		return geometry.Point{}
	}
	return r2.Unit(r2.Sub(s.LeftEdge, s.RightEdge))
}

// ribs returns the samples at which a groove is divided along its length. Straight
// edges between them stray so far from the other samples at most, and no part is long.
func ribs(samples []groove.Sample, stray float64) []int {
	const long = 4.0 // mm
	var divide func(first, last int) []int
	divide = func(first, last int) []int {
		a, b := samples[first], samples[last]
		worst, at := 0.0, 0
		for i := first + 1; i < last; i++ {
			s := samples[i]
			share := (s.Along - a.Along) / (b.Along - a.Along)
			off := max(
				r2.Norm(r2.Sub(s.LeftEdge, between(a.LeftEdge, b.LeftEdge, share))),
				r2.Norm(r2.Sub(s.RightEdge, between(a.RightEdge, b.RightEdge, share))),
				r2.Norm(r2.Sub(s.At, between(a.At, b.At, share))),
			)
			if off > worst {
				worst, at = off, i
			}
		}
		if worst <= stray {
			if last-first < 2 || b.Along-a.Along <= long {
				return []int{first}
			}
			at = (first + last) / 2
		}
		return append(divide(first, at), divide(at, last)...)
	}
	return append(divide(0, len(samples)-1), len(samples)-1)
}

func between(a, b geometry.Point, share float64) geometry.Point {
	return r2.Add(a, r2.Scale(share, r2.Sub(b, a)))
}
