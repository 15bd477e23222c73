package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// widen moves the edges of a cross-section out to what the wheel takes as it
// comes and goes. Where the cut runs askew to the glass's axis, or bends, the
// groove is widest a little before or behind the wheel's own place.
func (k *stroke) widen(own placing, q geometry.Point, s float64, b blade, e span) span {
	if k.last <= k.first {
		return e
	}
	e.left = k.sweep(own, q, s, b, e.left, 1)
	e.right = -k.sweep(own, q, s, b, -e.right, -1)
	return e
}

// sweep returns the farthest that any place of the wheel along the stroke bites
// to one side (1 left, -1 right) of a place on the map, from the edge that the
// wheel's own place leaves.
func (k *stroke) sweep(own placing, q geometry.Point, s float64, b blade, edge, side float64) float64 {
	if !k.sweeps(own, s, b, edge*side-b.offset) {
		return edge
	}
	reach := math.Sqrt(2 * k.depth / (1/k.wheel.Radius + own.curve.along))
	lo, hi := max(k.first, s-reach), min(k.last, s+reach)
	out := func(x float64) geometry.Point { return r2.Add(q, r2.Scale(side*x, own.left)) }
	best := min(max(s, k.first), k.last)
	try := func(stand float64) bool {
		if stand < lo || stand > hi {
			return false
		}
		p := k.at(stand)
		more := root(func(x float64) float64 { return p.bite(b, out(edge+x)) }, 0.01, math.Inf(1))
		if more < 5e-4 {
			return false
		}
		edge, best = edge+more, stand
		return true
	}
	const coarse = 8
	for i := range coarse + 1 {
		try(lo + (hi-lo)*float64(i)/coarse)
	}
	for step := (hi - lo) / (2 * coarse); step > reach/100; step /= 2 {
		if !try(best - step) {
			try(best + step)
		}
	}
	return edge
}

// sweeps reports whether, to second order, the wheel's passing can widen the
// groove by more than a few thousandths of a millimetre at a place.
func (k *stroke) sweeps(own placing, s float64, b blade, edge float64) bool {
	c := own.curve
	stiff := 1/k.wheel.Radius + c.along
	steep := (c.across + b.hollow()) * math.Abs(edge) // how fast the bite falls at the edge
	if b.pointed() {
		steep = 1/math.Tan(b.wheel.Angle/2) + c.across*math.Abs(edge)
	} else if math.Abs(edge) > 0.999*b.face() {
		steep = math.Inf(1) // bounded by the wheel's face
	}
	askew := c.twist * edge
	return askew*askew > 2*stiff*steep*0.002 || math.Abs(k.line.Bend(s))*steep > 0.5*stiff
}
