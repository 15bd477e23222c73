package groove

import (
	"math"
)

// widen moves the edges of a cross-section out to what the wheel takes as it comes and goes.
// Where the cut bends or runs askew to the glass's axis, the wheel cuts widest a little
// ahead of its place, or behind it.
func (k *stroke) widen(b *blade, x section) section {
	if k.last > k.first && !k.byHand() && (x.own.curve.twist != 0 || !k.line.Straight()) {
		left, right := k.widest(b, &x, 1), k.widest(b, &x, -1)
		x.left, x.right = left, -right
	}
	return x
}

// widest returns the farthest distance to one hand (1 left, -1 right) of a section at which
// the wheel bites, from any place along the stroke.
func (k *stroke) widest(b *blade, x *section, hand float64) float64 {
	edge := x.left
	if hand < 0 {
		edge = -x.right
	}
	c, stiff := &x.own.curve, x.own.stiff()
	face := b.face - hand*b.offset
	wide, rise := b.halfWidth(x.deep, 0, x.own.swept(), face)
	if x.empty() || !k.line.Straight() || wide > 0.99*face {
		return max(k.sweep(b, x.station, edge, hand, -1, 0), k.sweep(b, x.station, edge, hand, 1, 0))
	}
	// From δ away the wheel bites t·b·δ − δ²/2·(1/R + κ_along) deeper, to second order, at
	// an edge b from the line, with the twist t.
	const slight = 0.002 // mm
	askew := c.twist * (b.offset + hand*wide)
	if askew*askew < 2*stiff*rise*slight {
		return edge
	}
	return k.sweep(b, x.station, edge, hand, math.Copysign(1, askew), math.Abs(askew)/stiff)
}

// sweep returns the farthest distance to one hand of a station at which the wheel bites from
// behind it (way -1) or from ahead (way 1). guess is how far off the wheel then stands; if it
// is 0, sweep searches as far as the wheel reaches.
func (k *stroke) sweep(b *blade, s station, edge, hand, way, guess float64) float64 {
	nearest := min(max(s.along, k.first), k.last)
	reach := k.reach(b, s.own)
	most := reach - math.Abs(nearest-s.along)
	// No wheel bites this far aside. Where one that turned in a bend stands almost across the
	// station, its line crosses it that far off, round the glass, and would seem to bite there.
	far := 2 * (reach + b.face)
	switch {
	case way < 0 && !k.line.on[0]:
		most = min(most, nearest-k.first)
	case way > 0 && !k.line.on[1]:
		most = min(most, k.last-nearest)
	}
	best, bent, finest := 0.0, !k.line.Straight(), 0.1
	if bent {
		finest = 0.01
	}
	var beside besides
	try := func(off float64) bool {
		const least = 5e-4 // mm: too little to look for
		if off <= 0 || off > most {
			return false
		}
		p := k.at(nearest + way*off)
		from := edge + least
		if bent || b.offset != 0 {
			// The blade's line may be outside that edge: begin there.
			from = max(from, hand*p.crosses(b, &s, &beside))
		}
		out := func(x float64) float64 { return p.inside(b, s.across(hand*(from+x))) }
		if from > far || out(0) <= 0 {
			return false
		}
		edge = from + root(out, 0.01, 0.05)
		best = off
		return true
	}
	step := guess / 4
	if guess > 0 {
		try(min(guess-way*(nearest-s.along), most))
	} else {
		const coarse = 5
		for i := range coarse {
			try(most * (float64(i+1) / coarse))
		}
		step = most / (2 * coarse)
	}
	for step > finest {
		if !try(best-step) && !try(best+step) {
			step /= 2
		}
	}
	return edge
}

// reach returns, to second order, how far along the stroke the wheel bites anywhere across
// it. On a bend it adds a margin.
func (k *stroke) reach(b *blade, own *pose) float64 {
	tail, _ := own.tail()
	wide, _ := b.halfWidth(k.depth, 0, own.swept(), b.face)
	reach := tail + math.Abs(own.curve.twist)/own.stiff()*(wide+math.Abs(b.offset))
	if !k.line.Straight() {
		reach *= 1.5
	}
	return reach
}

// swept returns the curvature across the cut of the surface that a wheel drawn along leaves:
// less than the glass's where the wheel is askew.
func (p *pose) swept() float64 {
	return p.curve.across - p.curve.twist*p.curve.twist/p.stiff()
}

// besides is a station's own place and one to its left, once they are known: every wheel
// along a sweep is held against the same two.
type besides struct {
	on, left spot
	known    bool
}

// besidesApart is how far, in millimetres, the one lies from the other.
const besidesApart = 1.0

// know finds the places of a station, unless they are known.
func (b *besides) know(s *station) {
	if !b.known {
		*b = besides{s.across(0), s.across(besidesApart), true}
	}
}

// crosses returns how far to the left of a station the line of a blade is, of a wheel that
// stands elsewhere.
func (p *pose) crosses(b *blade, s *station, beside *besides) float64 {
	aside := func(at spot) float64 { _, _, aside := p.bite(b, at); return aside }
	beside.know(s)
	begin := aside(beside.on)
	grows := max((aside(beside.left)-begin)/besidesApart, 0.1)
	left := -begin / grows
	return left - aside(s.across(left))/grows
}
