package groove

import "math"

// blade is one line of a wheel's edge: the whole edge, or one mitre of a gang
// at its offset along the axle. To each side of its line it has a tip, flat or
// round, as broad as breadth, and flanks beyond; a sharp mitre has flanks alone,
// a round or flat edge a tip alone. The wheel's faces bound it at face from the
// wheel's middle plane.
type blade struct {
	offset, face float64
	left, right  float64 // how far to each side the glass is this blade's to take, and not a neighbour's
	breadth      float64 // of the tip, to each side
	round        float64 // the tip's radius; 0 where it is flat
	slope        float64 // of the flanks, 1/T
	meet         float64 // how far beyond the tip the flanks would meet
}

// blades returns how many blades the wheel has.
func (w Wheel) blades() int {
	if w.Edge == Gang {
		return w.Mitres
	}
	return 1
}

// blade returns the wheel's i-th blade. Where a gang's mitres run into one
// another their footprints overlap.
func (w Wheel) blade(i int) blade {
	b := w.middle()
	if w.Edge != Gang {
		return b
	}
	b.offset = (float64(i) - float64(w.Mitres-1)/2) * w.Spacing
	if i > 0 {
		b.right = w.Spacing / 2
	}
	if i < w.Mitres-1 {
		b.left = w.Spacing / 2
	}
	return b
}

// middle returns the blade that bites along a cut's own line: under a gang as
// if one of its mitres ran there.
func (w Wheel) middle() blade {
	b := blade{face: w.Thick / 2, left: math.Inf(1), right: math.Inf(1)}
	switch w.Edge {
	case Mitre, Gang:
		sin, cos := math.Sincos(w.Angle / 2)
		b.slope, b.round = cos/sin, w.TipRadius
		b.breadth = max(w.Tip/2, w.TipRadius*cos)
		b.meet = w.Tip/2*b.slope + w.TipRadius*(1/sin-1)
	case Round:
		b.breadth, b.round, b.meet = w.Convex, w.Convex, -w.Convex
		b.face = min(b.face, w.Convex)
	case Flat:
		b.breadth = math.Inf(1)
	}
	return b
}

// sharp reports whether the blade has a point.
func (b *blade) sharp() bool { return b.breadth == 0 }

// flat reports whether the blade is flat at its line: the least lean of the
// surface tells where it is deepest.
func (b *blade) flat() bool { return b.breadth > 0 && b.round == 0 }

// drop returns how far the edge falls short of the wheel's radius at a distance
// from the blade's line.
func (b *blade) drop(aside float64) float64 {
	aside = math.Abs(aside)
	switch {
	case aside >= b.breadth:
		return b.slope*aside - b.meet
	case b.round > 0:
		return b.round - math.Sqrt(b.round*b.round-aside*aside)
	}
	return 0
}

// filled returns the area between the edge and the wheel's full radius, from the
// blade's line to a distance from it.
func (b *blade) filled(width float64) float64 {
	area, w := 0.0, min(width, b.breadth)
	if q := b.round; q > 0 {
		area = q*w - (w*math.Sqrt(q*q-w*w)+q*q*math.Asin(w/q))/2
	}
	return area + (width-w)*(b.slope*(width+w)/2-b.meet)
}

// hollow returns the curvature of the edge at its line: 1/q where that is round.
func (b *blade) hollow() float64 {
	if b.round > 0 {
		return 1 / b.round
	}
	return 0
}

// halfWidth returns, to second order, how far to one side of the edge's line the
// groove goes where that line is h below the surface, and how steeply the edge
// comes up there. The surface falls away to that side with a lean and with a
// curvature κ across the cut: it is the root b of h − lean·b − κb²/2 = b/T for a
// mitre, of h − lean·b − κb²/2 = b²/2q for a round edge or tip, and of that
// without the last term for a flat one; but at most the way to the wheel's face.
func (b *blade) halfWidth(h, lean, across, face float64) (width, rise float64) {
	slope, curve := lean, across+b.hollow()
	root := func(h float64) float64 {
		rise = math.Sqrt(max(slope*slope+2*curve*h, 0))
		if slope+rise <= 0 { // the surface draws nearer to the wheel all the way
			return math.Inf(1)
		}
		return 2 * h / (slope + rise)
	}
	width = b.breadth
	if !b.sharp() {
		width = root(h)
	}
	if width >= b.breadth && b.breadth < b.face {
		slope, curve = b.slope+lean, across
		width = root(h + b.meet)
	}
	if width < face {
		return width, rise
	}
	return face, min(max(slope+curve*face, 0.01), 1)
}
