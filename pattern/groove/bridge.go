package groove

import (
	"context"
	"math"

	"roundlay/geometry"
)

// Bridge is where a wheel too large for a hollow bites. It rests on two places of the
// glass; the deeper may be away from where it was set down, and beside its line. The zero
// Bridge means that the wheel fits.
type Bridge struct {
	// Depth is the depth at the deepest place, square to the glass. Theta and Height are
	// that place.
	Depth         float64
	Theta, Height float64
	// Left is the glass left there: 0 where the wheel breaks through, +Inf where the
	// inside is not known.
	Left float64
}

// Bridges reports whether the wheel is too large for a hollow under the cut.
func (g *Groove) Bridges() bool { return g.Bridge != nil }

const (
	// span is the distance, in millimetres, between the places where a wheel in a hollow
	// is looked at. Between two of them depths deviate from a straight line by less than
	// span²/8 times the sum of the curvatures: 0.01 mm in a hollow of 15 mm.
	span = 1.0
	// A wheel bridges if it bites elsewhere by this many millimetres deeper than where it
	// stands, or by apart in a place apart from its mark. Less is not visible.
	deeper, apart = 0.005, 0.02
	// A broad edge across a hollow always bites deeper beside its line. It bridges past
	// this, in millimetres, and a fifth of the depth.
	beside = 0.05
)

// mayBridge reports whether the glass may be too hollow for the wheel: anywhere as hollow
// as the rim is round (rim), or so hollow across the cut that the wheel's edge may touch it
// before its line does (edge).
func (k *stroke) mayBridge() (rim, edge bool) {
	return k.hollow, k.broad && (k.line.hand.rocks() || k.gape() > beside)
}

// gape returns how much nearer to the wheel's edge than to its line the glass may come,
// where it is hollow across the cut: 0 where the line is nearest.
func (k *stroke) gape() float64 {
	const parts = 8
	most := 0.0
	for part := 1; part <= parts; part++ {
		aside := k.wheel.Thick / 2 * float64(part) / parts
		most = max(most, -k.hollowest*aside*aside/2-k.wheel.Drop(aside))
	}
	return most
}

// bridge finds out whether the wheel bridges a hollow and, if it does, how far beyond the
// ends of the line it bites.
func (k *stroke) bridge() {
	rim, edge := k.mayBridge()
	if !rim && !edge {
		return
	}
	stands := k.standings()
	for i := range stands {
		if rim && !k.bridges {
			k.bridges = k.spans(&stands[i])
		}
	}
	if k.bridges {
		if k.first == k.last {
			k.sink()
		} else {
			k.lengthen()
		}
		stands = k.standings()
	}
	for i := range stands {
		if lookedAt(i, len(stands)) {
			k.lookAbout(&stands[i])
		}
	}
	k.lookBetween()
	if !k.bridges {
		return
	}
	if k.swells {
		// What rests in two places can't be counted on to follow its swell: what it would take
		// pressed in at the middle, as deep as anywhere, is told where that is worse.
		p := k.at(k.line.Length() / 2)
		p.depth = k.depth
		k.lookAbout(&p)
	}
	k.stands = stands
	for i := range stands {
		p := &stands[i]
		k.from = min(k.from, p.stands-k.bites(p, -1))
		k.to = max(k.to, p.stands+k.bites(p, 1))
	}
}

// sink sets the wheel down in the middle of the line, at the depth asked for. A wheel that
// bridges a hollow bites at both ends of it and not between, so the mark doesn't show where
// it stands or how deep it can go.
func (k *stroke) sink() {
	k.first = k.line.Length() / 2
	k.last, k.depth = k.first, k.asked
}

// lengthen moves the ends of the stroke out, a span at a time, until the wheel's own mark
// reaches the ends of the line. Only the connected mark counts: bites past the hollow may
// reach the ends much earlier.
func (k *stroke) lengthen() {
	length := k.line.Length()
	for comes := false; !comes && k.first > 0; {
		k.first = max(k.first-span, 0)
		p := k.at(k.first)
		comes = k.mark(&p, -1) >= k.first
	}
	for comes := false; !comes && k.last < length; {
		k.last = min(k.last+span, length)
		p := k.at(k.last)
		comes = k.mark(&p, 1) >= length-k.last
	}
}

// mark returns how far ahead of the wheel (side 1), or behind it (side -1), it bites
// without a gap.
func (k *stroke) mark(p *pose, side float64) float64 {
	furthest := 0.0
	k.along(p, side, func(far float64, h heading) bool {
		deep, _, _ := p.bite(&k.middle, h.spot(k.surface))
		if deep > 0 {
			furthest = far
		}
		return deep > 0
	})
	return furthest
}

// rests reports whether the wheel bites anywhere outside its mark.
func (k *stroke) rests() bool { return k.bridges || k.elsewhere.Depth > 0 }

// restsAnywhere finds out whether the wheel bites anywhere outside its mark, and stops at
// the first such place.
func (k *stroke) restsAnywhere() bool {
	rim, edge := k.mayBridge()
	if !rim && !edge {
		return false
	}
	stands := k.standings()
	for i := range stands {
		if rim && k.spans(&stands[i]) {
			return true
		}
	}
	for i := range stands {
		if lookedAt(i, len(stands)) {
			if k.lookAbout(&stands[i]); k.elsewhere.Depth > 0 {
				return true
			}
		}
	}
	return false
}

// lookedAt reports whether the whole wheel is looked at in the i-th of some standings: in
// every fifth, or in about eight of many, and in the last.
func lookedAt(i, of int) bool { return i%max(5, of/8) == 0 || i == of-1 }

// standings returns the wheel set down at places all along the stroke, a span apart.
func (k *stroke) standings() []pose {
	n := int(math.Ceil((k.last - k.first) / span))
	all := make([]pose, n+1)
	for i := range all {
		all[i] = k.at(k.first + (k.last-k.first)*float64(i)/float64(max(n, 1)))
	}
	return all
}

// along follows the glass under a wheel's middle plane, ahead of it (side 1) or behind it
// (side -1). It calls visit every span, as far as the wheel reaches and there is glass,
// until visit returns false. It corrects its heading at each step: on a curved glass a
// straight way would soon leave the plane by more than the wheel's thickness.
func (k *stroke) along(p *pose, side float64, visit func(far float64, way heading) bool) {
	h := p.heading()
	for far := span; far < k.wheel.Radius; far += span {
		h = h.straight(k.surface, side*span)
		off := -p.seen(p.space(h.spot(k.surface))).Y
		on := h.left().straight(k.surface, min(max(off, -span), span))
		h = heading{on.theta, on.along, h.psi - side*min(max(off/span, -1), 1)}
		// No wheel that stands on this side of the glass bites on the far side.
		if !k.glassAt(h.along) || math.Abs(h.theta-p.theta) > math.Pi/2 || !visit(far, h) {
			return
		}
	}
}

// glassAt reports whether there is glass at a distance along the profile.
func (k *stroke) glassAt(along float64) bool { return along >= 0 && along <= k.surface.Length() }

// spans reports whether a wheel rests on a second place along the line: whether it bites
// deeper there than where it stands, or than on the way there.
func (k *stroke) spans(p *pose) bool {
	found := false
	for _, side := range [2]float64{-1, 1} {
		least := p.depth
		k.along(p, side, func(_ float64, h heading) bool {
			deep, _, _ := p.bite(&k.middle, h.spot(k.surface))
			found = deep > p.depth+deeper || deep > max(least, 0)+apart
			least = min(least, deep)
			return !found
		})
		if found {
			return true
		}
	}
	return false
}

// bites returns how far ahead (side 1) or behind (side -1) a wheel bites at all, as far as
// that can be drawn on the chart.
func (k *stroke) bites(p *pose, side float64) float64 {
	furthest := 0.0
	k.along(p, side, func(far float64, h heading) bool {
		if k.surface.ChartRadius(h.along) < 2*minChart { // leaves room for places beside the way
			return false
		}
		if deep, _, _ := p.bite(&k.middle, h.spot(k.surface)); deep > 0 {
			furthest = far
		}
		return true
	})
	return furthest
}

// minChart is the least radius of the chart, in millimetres, at which a groove is drawn.
// The chart ends in a point where its cone does; beyond that, everything would be mirrored.
const minChart = 1.0

// charted returns the distance along the profile, nearest to the given one, at which the
// chart's radius is at least minChart.
func charted(surface *geometry.Surface, along float64) float64 {
	r := surface.ChartRadius(along)
	if r >= minChart {
		return along
	}
	return along + (minChart-r)/(surface.ChartRadius(along+1)-r)
}

// spanned returns the station at a distance along the stroke, measured with the wheel in
// the place along the stroke from which it bites deepest there.
func (k *stroke) spanned(s float64) station {
	at := k.on(s)
	best, deepest := 0, math.Inf(-1)
	for i := range k.stands {
		if deep, _, _ := k.stands[i].bite(&k.middle, at); deep > deepest {
			best, deepest = i, deep
		}
	}
	own := &k.stands[best]
	if k.line.Straight() {
		return newStation(s, own, s-own.stands, 0)
	}
	ahead, aside := own.local(at)
	return newStation(s, own, ahead, aside)
}

// on returns the place on the glass at a distance along the stroke; beyond the line's ends
// it continues straight.
func (k *stroke) on(s float64) spot {
	end := min(max(s, 0), k.line.Length())
	p := k.at(end)
	return p.spot(s-end, 0)
}

// spanning returns the bridge of a finished groove, nil for none.
func (k *stroke) spanning(g *Groove) *Bridge {
	if !k.rests() {
		return nil
	}
	b := k.elsewhere
	if b.Depth == 0 {
		b.Left = math.Inf(1)
	}
	if k.bridges {
		worst := deepest(g.Samples)
		if g.Samples[worst].Depth <= k.asked+deeper { // where it stands: the other place is what matters
			worst = again(g.Samples, worst)
		}
		if s := g.Samples[worst]; s.Depth > b.Depth {
			b.Depth, b.Theta, b.Height = s.Depth, s.Theta, s.Height
			if own := k.stations[worst]; k.inside != nil {
				_, radius, height := own.own.depthAt(&k.middle, own.across(0))
				b.Left = max(k.inside.Distance(radius, height), 0)
			}
		}
	}
	if !(b.Depth > 0) {
		return nil
	}
	return &b
}

// deepest returns the number of the deepest sample.
func deepest(samples []Sample) int {
	worst := 0
	for i, s := range samples {
		if s.Depth > samples[worst].Depth {
			worst = i
		}
	}
	return worst
}

// again returns the number of the sample at which a groove that was deepest at one
// is deeper again than on the way there, by the most; that one itself if it
// nowhere is.
func again(samples []Sample, from int) int {
	rise, at := 0.0, from
	for _, way := range [2]int{-1, 1} {
		least := samples[from].Depth
		for i := from; i >= 0 && i < len(samples); i += way {
			least = min(least, samples[i].Depth)
			if up := samples[i].Depth - least; up > rise {
				rise, at = up, i
			}
		}
	}
	return at
}

// LargestWheel returns the largest radius, up to the wheel's own, of a wheel with the same
// edge that bites only in its mark along a line, at Groove.Asked; 0 if there is none. It sets
// some twenty wheels into the glass, and ends between two of them with the context's error.
func (l *Cutter) LargestWheel(ctx context.Context, line Line, wheel Wheel, depth float64) (float64, error) {
	const (
		steps = 9  // of bisection: to a five-hundredth of the wheel's radius
		tries = 10 // near the limit a smaller wheel doesn't always fit where a larger one does
	)
	line = l.laid(line)
	goesIn := func(radius float64) bool {
		wheel.Radius = radius
		k, _ := l.set(line, wheel, depth)
		return !k.restsAnywhere()
	}
	low, high := 0.0, wheel.Radius
	for range steps {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		if middle := (low + high) / 2; goesIn(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	for range tries {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		if goesIn(0.98 * low) {
			break
		}
		low *= 0.97
	}
	return low, nil
}
