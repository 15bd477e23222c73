package groove

import "math"

// blade is a wheel's edge or, for a gang, one of its mitres, at an offset along the axle.
// To each side of its line it has a tip, flat or round, out to breadth, and flanks beyond.
// A sharp mitre has only flanks, a round or flat edge only a tip. The wheel's faces end it
// at the distance face from the wheel's middle plane.
type blade struct {
	offset, face float64
	left, right  float64 // how far to each side this blade takes the glass, before a neighbour does
	breadth      float64 // half the width of the tip
	round        float64 // the tip's radius; 0 where it is flat
	slope        float64 // of the flanks, 1/T
	meet         float64 // how far beyond the tip the flanks would meet if they went on
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

// middle returns the blade on a cut's own line. For a gang it is a mitre in the middle,
// even where the gang has none there.
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

// flat reports whether the blade is flat at its line. The slightest lean of the surface
// then decides where it is deepest.
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

// filled returns the area between the edge and the wheel's full radius, from the blade's
// line out to a width.
func (b *blade) filled(width float64) float64 {
	area, w := 0.0, min(width, b.breadth)
	if q := b.round; q > 0 {
		area = q*w - (w*math.Sqrt(q*q-w*w)+q*q*math.Asin(w/q))/2
	}
	return area + (width-w)*(b.slope*(width+w)/2-b.meet)
}

// hollow returns the curvature of the edge at its line: 1/q where it is round, q being its
// radius.
func (b *blade) hollow() float64 {
	if b.round > 0 {
		return 1 / b.round
	}
	return 0
}

// halfWidth returns, to second order, the width of the groove to one side of the edge's
// line, where that line is h below the surface, and how steeply the edge rises there. The
// surface falls away to that side with a lean and with a curvature κ across the cut. The
// width is the root b of h − lean·b − κb²/2 = b/T for a mitre, with b²/2q on the right for a
// round edge or tip, and 0 for a flat one; but it never goes past the wheel's face.
func (b *blade) halfWidth(h, lean, across, face float64) (width, rise float64) {
	slope, curve := lean, across+b.hollow()
	root := func(h float64) float64 {
		rise = math.Sqrt(max(slope*slope+2*curve*h, 0))
		if slope+rise <= 0 { // the surface comes nearer to the wheel all the way
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
