package groove

import "math"

// Bridge is where a wheel rests that is too large for the hollow it enters: on
// two places, neither of them its own. The zero Bridge is none.
type Bridge struct {
	// Depth is how deep the wheel bites at the worse of them, square to the glass;
	// Theta and Height say where that is.
	Depth         float64
	Theta, Height float64
	// Left is the glass that is left there: 0 where it breaks through, +Inf where
	// the inside is not known.
	Left float64
	// Wheel is the radius of the largest wheel that goes in along the whole cut.
	Wheel float64
}

// Bridges reports whether the wheel is too large for a hollow under the cut.
func (g *Groove) Bridges() bool { return g.Bridge.Wheel > 0 }

// span is how far apart places are tried for what a wheel does in a hollow, in
// millimetres. Between two of them depths differ from a straight line's by less
// than span²/8 times the sum of the curvatures: 0.01 mm in a hollow of 15 mm.
const span = 1.0

// bite is how much deeper than at its own place, in millimetres, a wheel bites
// elsewhere before that is a bridge: what no eye sees.
const bridged = 0.005

// bridge finds out whether the wheel spans a hollow, and how far beyond the ends
// of the line it bites if it does.
func (k *stroke) bridge(asked float64) {
	if !k.hollow {
		return
	}
	if k.depth <= 0 { // it rests on both ends of the mark, and not between
		k.depth, k.first, k.last = asked, k.line.Length()/2, k.line.Length()/2
	}
	stands := k.standings()
	for i := range stands {
		if k.spans(&stands[i]) {
			k.bridges = true
			break
		}
	}
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

// standings sets the wheel down at places all along the stroke.
func (k *stroke) standings() []placing {
	n := int(math.Ceil((k.last - k.first) / span))
	all := make([]placing, n+1)
	for i := range all {
		all[i] = k.at(k.first + (k.last-k.first)*float64(i)/float64(max(n, 1)))
	}
	return all
}

// under calls visit for the spots straight ahead of a wheel (side 1) or behind it
// (side -1), as far as the wheel reaches and there is glass, until it returns false.
func (k *stroke) along(p *placing, side float64, visit func(far float64, deep float64) bool) {
	for far := span; far < k.wheel.Radius; far += span {
		at := p.spot(side*far, 0)
		if at.along < 0 || at.along > k.surface.Length() {
			return
		}
		deep, _, _ := p.bite(&k.middle, at)
		if !visit(far, deep) {
			return
		}
	}
}

// spans reports whether a wheel bites deeper anywhere along the line than where
// it stands.
func (k *stroke) spans(p *placing) bool {
	found := false
	for _, side := range [2]float64{-1, 1} {
		k.along(p, side, func(_, deep float64) bool {
			found = deep > p.depth+bridged
			return !found
		})
		if found {
			return true
		}
	}
	return false
}

// bites returns how far to one side a wheel bites at all.
func (k *stroke) bites(p *placing, side float64) float64 {
	furthest := 0.0
	k.along(p, side, func(far, deep float64) bool {
		if deep > 0 {
			furthest = far
		}
		return true
	})
	return furthest
}

// spanned returns the station at a distance along the stroke with the wheel as
// it bites deepest there, wherever along the stroke that is.
func (k *stroke) spanned(s, nearest float64) station {
	at := k.on(s)
	best, deepest := -1, math.Inf(-1)
	for i := range k.stands {
		if deep, _, _ := k.stands[i].bite(&k.middle, at); deep > deepest {
			best, deepest = i, deep
		}
	}
	own := &k.stands[best]
	if k.line.Straight() {
		return station{along: s, own: own, ahead: s - own.stands}
	}
	ahead, aside := own.local(at)
	return station{along: s, own: own, ahead: ahead, aside: aside}
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
	if !k.bridges {
		return Bridge{}
	}
	b := Bridge{Left: math.Inf(1), Wheel: k.largest()}
	for i, s := range g.Samples {
		if s.Depth > b.Depth {
			b.Depth, b.Theta, b.Height = s.Depth, s.Theta, s.Height
			if own := k.stations[i]; k.inside != nil {
				_, radius, height := own.own.depthAt(&k.middle, own.across(0))
				b.Left = max(k.inside.Distance(radius, height), 0)
			}
		}
	}
	return b
}

// largest returns the radius of the largest wheel that bites nowhere along the
// line deeper than where it stands, by bisection.
func (k *stroke) largest() float64 {
	const steps = 12 // to a four-thousandth of the wheel's
	low, high := 0.0, k.wheel.Radius
	for range steps {
		middle := (low + high) / 2
		if k.goesIn(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// goesIn reports whether a wheel of a radius spans nothing along the stroke.
func (k *stroke) goesIn(radius float64) bool {
	smaller := *k
	smaller.wheel.Radius = radius
	for i := range k.stands {
		p := k.stands[i]
		p.wheelRadius = radius
		if smaller.spans(&p) {
			return false
		}
	}
	return true
}
