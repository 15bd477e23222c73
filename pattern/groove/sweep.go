package groove

import (
	"math"
)

// widen returns the cross-section of the groove at a place along the stroke:
// what the wheel cuts where it stands nearest, and what more it takes as it
// comes and goes. Where the cut runs askew to the glass's axis, or bends, the
// groove is widest a little before or behind the wheel's own place.
func (k *stroke) widen(f foot, b blade) span {
	widest, _ := f.own.section(b, f.q, f.own.left)
	if k.last <= k.first || !k.sweeps(f, b, widest) {
		return widest
	}
	reach := f.own.reach(b, k.depth)
	lo, hi := max(k.first, f.along-reach), min(k.last, f.along+reach)
	edge := func(stand, side float64) float64 {
		e, bites := k.at(stand).section(b, f.q, f.own.left)
		switch {
		case !bites:
			return math.Inf(-1)
		case side > 0:
			return e.left
		}
		return -e.right
	}
	widest.left = max(widest.left, greatest(lo, hi, func(stand float64) float64 { return edge(stand, 1) }))
	widest.right = min(widest.right, -greatest(lo, hi, func(stand float64) float64 { return edge(stand, -1) }))
	return widest
}

// reach returns, to second order, how far ahead or behind a blade bites at most,
// on its own line or to one side of it: the tilt of the ellipse of contact.
func (p *placing) reach(b blade, depth float64) float64 {
	stiff, broad := 1/p.radius+p.curve.along, p.curve.across+b.hollow()
	reach := p.tail(depth)
	if b.pointed() || broad == 0 {
		return reach
	}
	return reach / math.Sqrt(1-p.curve.twist*p.curve.twist/(stiff*broad))
}

// greatest returns the greatest value of a smooth function between two places: a
// coarse look, then ever closer round the best of it.
func greatest(lo, hi float64, f func(float64) float64) float64 {
	const coarse, close = 8, 1.0 / 64
	best, summit := lo, math.Inf(-1)
	try := func(x float64) bool {
		if x < lo || x > hi {
			return false
		}
		y := f(x)
		if y <= summit {
			return false
		}
		best, summit = x, y
		return true
	}
	for i := range coarse + 1 {
		try(lo + (hi-lo)*float64(i)/coarse)
	}
	for step := (hi - lo) / (2 * coarse); step > close*(hi-lo)/coarse; step /= 2 {
		if !try(best - step) {
			try(best + step)
		}
	}
	return summit
}

// sweeps reports whether, to second order, the wheel's passing can widen the
// groove by more than a few thousandths of a millimetre at a place.
func (k *stroke) sweeps(f foot, b blade, e span) bool {
	c := f.own.curve
	half := (e.left - e.right) / 2
	stiff := 1/k.wheel.Radius + c.along
	steep := b.steepness(half, c.across)
	askew := c.twist * max(math.Abs(e.left), math.Abs(e.right))
	if askew*askew > 2*stiff*steep*0.002 {
		return true
	}
	bend := math.Abs(k.line.Bend(f.along))
	if half > 0.99*b.face() {
		return bend > 0 // the wheel's face is an upright wall: any swing of it shows
	}
	return bend*steep > 0.5*stiff
}
