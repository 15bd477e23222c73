package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// widen moves the edges of a cross-section out to what the wheel takes as it
// comes and goes. Where the cut runs askew to the glass's axis, or bends, the
// groove is widest a little before or behind the wheel's own place.
func (k *stroke) widen(b *blade, x section) section {
	if k.last > k.first && (x.own.curve.twist != 0 || !k.line.Straight()) {
		x.left = k.widest(b, x.station, x.left, 1)
		x.right = -k.widest(b, x.station, -x.right, -1)
	}
	return x
}

// widest returns the farthest that any place of the wheel along the stroke bites
// to one hand (1 left, -1 right) of a station, from the edge that it leaves where
// it stands nearest.
func (k *stroke) widest(b *blade, s station, edge, hand float64) float64 {
	if !k.line.Straight() || edge > 0.99*b.face {
		return max(k.sweep(b, s, edge, hand, -1, 0), k.sweep(b, s, edge, hand, 1, 0))
	}
	// Standing δ away the wheel bites t·b·δ − δ²/2·(1/R + κ_along) deeper, to second
	// order, at an edge b from the line, which comes up so steeply.
	const slight = 0.002 // mm
	c := &s.own.curve
	askew := c.twist * hand * edge
	steep := c.across*edge + b.slope
	if edge < b.breadth {
		steep = (c.across + b.hollow()) * edge
	}
	if askew*askew < 2*s.own.stiff()*steep*slight {
		return edge
	}
	return k.sweep(b, s, edge, hand, math.Copysign(1, askew), math.Abs(askew)/s.own.stiff())
}

// sweep returns the farthest that the wheel bites to one hand of a station as it
// stands behind it (way -1) or ahead (way 1). The guess says how far off it does
// that; without one it is sought as far as the wheel reaches.
func (k *stroke) sweep(b *blade, s station, edge, hand, way, guess float64) float64 {
	nearest := min(max(s.along, k.first), k.last)
	most := k.reach(b, s.own) - math.Abs(nearest-s.along)
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
	try := func(off float64) bool {
		const least = 5e-4 // mm: too little to look for
		if off <= 0 || off > most {
			return false
		}
		p := k.at(nearest + way*off)
		from := edge + least
		if bent || b.offset != 0 {
			// The blade's own line lies to the outside of the station.
			line := r2.Cross(r2.Sub(p.at, s.at), p.ahead) / r2.Cross(s.own.left, p.ahead)
			_, _, aside := p.bite(b, s.across(line))
			from = max(from, hand*(line-aside/r2.Dot(s.own.left, p.left)))
		}
		out := func(x float64) float64 { return p.inside(b, s.across(hand*(from+x))) }
		if out(0) <= 0 {
			return false
		}
		edge = from + root(out, 0.01, 0.1)
		best = off
		return true
	}
	step := guess / 4
	if guess > 0 {
		try(min(guess, most))
	} else {
		const coarse = 5
		for i := range coarse {
			try(most * float64(i+1) / coarse)
		}
		step = most / (2 * coarse)
	}
	for ; step > finest; step /= 2 {
		if !try(best - step) {
			try(best + step)
		}
	}
	return edge
}

// reach returns, to second order, how far along the stroke the wheel bites
// anywhere across it: on a bend, with something to spare.
func (k *stroke) reach(b *blade, own *placing) float64 {
	tail, _ := own.tail()
	askew := math.Abs(own.curve.twist) / own.stiff()
	wide, _ := b.halfWidth(k.depth, 0, own.curve.across-askew*askew*own.stiff(), b.face)
	reach := tail + askew*(wide+math.Abs(b.offset))
	if !k.line.Straight() {
		reach *= 1.5
	}
	return reach
}
