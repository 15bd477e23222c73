package groove

import "math"

// ridge is where a blade lies in the glass across a station: how far to the
// left, how deep, and how the surface leans away to the left from there.
type ridge struct{ line, deep, lean float64 }

// own returns the ridge on a blade's own line.
func (b *blade) own(s station) ridge {
	line := b.offset - s.aside
	deep, _, aside := s.own.bite(b, s.across(line))
	lean := s.own.curve.twist*s.ahead + s.own.curve.across*b.offset
	return ridge{line - aside, deep + b.drop(aside) + lean*aside, lean}
}

// deepest returns where a blade is deepest, to second order: on its own line or, where the
// surface leans more than the edge is steep, beside it.
func (b *blade) deepest(s station) ridge {
	r := b.own(s)
	steep := math.Abs(r.lean)
	if b.sharp() {
		steep -= b.slope
	} else {
		// For a broad edge measure how the surface leans: on a taper it leans more than the
		// second order says.
		aside := min(0.1, b.breadth) // mm
		left, _, _ := s.own.bite(b, s.across(r.line+aside))
		right, _, _ := s.own.bite(b, s.across(r.line-aside))
		r.lean = (right - left) / (2 * aside)
		steep = math.Abs(r.lean)
	}
	if steep <= 0 {
		return r
	}
	curve := s.own.curve.across + b.hollow()
	most := b.face
	if !b.sharp() {
		most = min(most, b.breadth)
	}
	away := most // if the glass is hollow across the cut
	if curve > 0 {
		away = min(steep/curve, most)
	}
	line := r.line - math.Copysign(away, r.lean)
	deep, room, _ := s.own.bite(b, s.across(line))
	if away == b.face || room < 0 { // at the wheel's face, or past it
		line += math.Copysign(1, line) * room
		deep, _, _ = s.own.bite(b, s.across(line))
	}
	if deep < r.deep {
		return r
	}
	return ridge{line, deep, r.lean + curve*(line-r.line)}
}
