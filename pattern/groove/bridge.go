package groove

import (
	"math"

	"roundlay/geometry"
)

// Bridge is where a wheel bites that is too large for the hollow it enters: it
// rests on two places, and the deeper may be neither its own nor on its line. The
// zero Bridge is none.
type Bridge struct {
	// Depth is how deep the wheel bites at the worst, square to the glass; Theta and
	// Height say where that is.
	Depth         float64
	Theta, Height float64
	// Left is the glass that is left there: 0 where it breaks through, +Inf where
	// the inside is not known.
	Left float64
}

// Bridges reports whether the wheel is too large for a hollow under the cut.
func (g *Groove) Bridges() bool { return g.Bridge.Depth > 0 }

const (
	// span is how far apart places are tried for what a wheel does in a hollow, in
	// millimetres. Between two of them depths differ from a straight line's by less
	// than span²/8 times the sum of the curvatures: 0.01 mm in a hollow of 15 mm.
	span = 1.0
	// deeper is by how much more than at its own place, in millimetres, a wheel
	// bites elsewhere before that is a bridge; apart, how deep it bites in a place
	// apart from its mark: what no eye sees.
	deeper, apart = 0.005, 0.02
	// A broad edge across a hollow bites deeper beside its line, by its nature: it
	// is a bridge past this, in millimetres, and a fifth of the depth.
	beside = 0.05
)

// mayBridge reports whether the glass is anywhere as hollow as the wheel's rim is
// round, or so hollow that the wheel's edge may touch it before its line does.
func (k *stroke) mayBridge() (rim, edge bool) {
	if k.surface.Flat() || k.hollowest >= 0 {
		return false, false
	}
	return 1/k.wheel.Radius+k.hollowest <= 0, k.gape() > beside
}

// gape returns how much nearer the glass may come to the wheel's edge than to its
// line, where the glass is hollow across: 0 where the line is nearest.
func (k *stroke) gape() float64 {
	const parts = 8
	most := 0.0
	for part := 1; part <= parts; part++ {
		aside := k.wheel.Thick / 2 * float64(part) / parts
		most = max(most, -k.hollowest*aside*aside/2-k.wheel.Drop(aside))
	}
	return most
}

// bridge finds out whether the wheel spans a hollow, and how far beyond the ends
// of the line it bites if it does.
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
	k.stands = stands
	for i := range stands {
		p := &stands[i]
		k.from = min(k.from, p.stands-k.bites(p, -1))
		k.to = max(k.to, p.stands+k.bites(p, 1))
	}
}

// sink sets the wheel down in the middle of the line, as deep as it is asked to go.
// Where it spans a hollow no mark shows how far it may go in, or where: it bites at both
// ends of the hollow and not between.
func (k *stroke) sink() {
	k.first = k.line.Length() / 2
	k.last, k.depth = k.first, k.asked
}

// lengthen moves the ends of the stroke out, by a span at a time, to where the wheel's
// own mark, as far as it hangs together, comes to the ends of the line or beyond: what
// it bites past the hollow may come there long before.
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

// mark returns how far to one side a wheel bites without a gap.
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

// rests reports whether the wheel bites anywhere but in its mark.
func (k *stroke) rests() bool { return k.bridges || k.elsewhere.Depth > 0 }

// restsAnywhere finds out whether the wheel bites anywhere but in its mark, and no
// more than that.
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

// lookedAt reports whether the wheel is looked at all over at one of so many
// standings: at every fifth, or eighth part, and the last.
func lookedAt(i, of int) bool { return i%max(5, of/8) == 0 || i == of-1 }

// standings sets the wheel down at places all along the stroke.
func (k *stroke) standings() []pose {
	n := int(math.Ceil((k.last - k.first) / span))
	all := make([]pose, n+1)
	for i := range all {
		all[i] = k.at(k.first + (k.last-k.first)*float64(i)/float64(max(n, 1)))
	}
	return all
}

// along calls visit with the ways that the glass has under a wheel's middle plane,
// ahead of it (side 1) or behind it (side -1), as far as the wheel reaches and
// there is glass, until it returns false. A straight way on the glass would leave
// that plane, on a curved glass soon by more than the wheel is thick.
func (k *stroke) along(p *pose, side float64, visit func(far float64, way heading) bool) {
	h := p.heading()
	for far := span; far < k.wheel.Radius; far += span {
		h = h.straight(k.surface, side*span)
		off := -p.seen(p.space(h.spot(k.surface))).Y
		on := h.left().straight(k.surface, min(max(off, -span), span))
		h = heading{on.theta, on.along, h.psi - side*min(max(off/span, -1), 1)}
		// On the far side of the glass no wheel that stands on this one bites.
		if !k.glassAt(h.along) || math.Abs(h.theta-p.theta) > math.Pi/2 || !visit(far, h) {
			return
		}
	}
}

// glassAt reports whether there is glass at a distance along the profile.
func (k *stroke) glassAt(along float64) bool { return along >= 0 && along <= k.surface.Length() }

// spans reports whether a wheel rests on a second place along the line: bites
// deeper there than where it stands, or deeper than on the way there.
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

// bites returns how far to one side a wheel bites at all, as far as the chart has
// room to draw it.
func (k *stroke) bites(p *pose, side float64) float64 {
	furthest := 0.0
	k.along(p, side, func(far float64, h heading) bool {
		if k.surface.ChartRadius(h.along) < 2*minChart { // a little is to spare for a way beside it
			return false
		}
		if deep, _, _ := p.bite(&k.middle, h.spot(k.surface)); deep > 0 {
			furthest = far
		}
		return true
	})
	return furthest
}

// minChart is the radius, in millimetres, to which the chart narrows at the most
// where a groove is drawn. It comes to its point where its cone does, and beyond that
// everything would lie mirrored.
const minChart = 1.0

// charted returns the distance along the profile nearest to another at which the
// chart has room.
func charted(surface *geometry.Surface, along float64) float64 {
	r := surface.ChartRadius(along)
	if r >= minChart {
		return along
	}
	return along + (minChart-r)/(surface.ChartRadius(along+1)-r)
}

// spanned returns the station at a distance along the stroke with the wheel as
// it bites deepest there, wherever along the stroke that is.
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

// on returns the place on the glass at a distance along the stroke, straight on
// beyond the line's ends.
func (k *stroke) on(s float64) spot {
	end := min(max(s, 0), k.line.Length())
	p := k.at(end)
	return p.spot(s-end, 0)
}

// spanning returns what is to be said of the bridge that a finished groove has.
func (k *stroke) spanning(g *Groove) Bridge {
	if !k.rests() {
		return Bridge{}
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
	return b
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

// LargestWheel returns the radius of the largest wheel of the same edge that bites
// nowhere but in its mark along a line, up to the wheel's own: 0 where none does.
func (l *Cutter) LargestWheel(line Line, wheel Wheel, depth float64) float64 {
	const (
		steps = 9  // of bisection: to a five-hundredth of the wheel's
		tries = 10 // near the limit a little less may do where a little more did not
	)
	line = l.laid(line)
	goesIn := func(radius float64) bool {
		wheel.Radius = radius
		k, _ := l.set(line, wheel, depth)
		return !k.restsAnywhere()
	}
	low, high := 0.0, wheel.Radius
	for range steps {
		if middle := (low + high) / 2; goesIn(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	for range tries {
		if goesIn(0.98 * low) {
			break
		}
		low *= 0.97
	}
	return low
}
