package groove

import "math"

// lookRound looks along a wheel's own edge, in each column a span apart, for what of
// it is in the glass: also where that lies beyond a neck or a hollow, and no way on
// the glass leads there under the wheel.
func (k *stroke) lookRound(p *pose) {
	columns := k.columns()
	if k.spots == nil {
		k.spots = newEdgeSpots(columns)
	}
	for i, c := range columns {
		reach := min(p.wheelRadius-c.blade.drop(c.left-c.blade.offset), p.wheelRadius)
		for ahead := -math.Floor(reach/span) * span; ahead <= reach; ahead += span {
			if radius, height := p.rim(&c.blade, ahead, c.left); k.holds(radius, height) {
				depth, left := k.bitten(p, &c, ahead, radius, height)
				k.spots[2*i].offer(p, ahead, -left)
				k.spots[2*i+1].offer(p, ahead, depth)
			}
		}
		k.alongEdge(p, c, reach)
	}
}

// alongEdge looks between the places of a column that were looked at for where
// less is left, from each that leaves less than both its neighbours.
func (k *stroke) alongEdge(p *pose, c column, reach float64) {
	if k.inside == nil {
		return
	}
	left := func(ahead float64) float64 {
		if radius, height := p.rim(&c.blade, ahead, c.left); k.holds(radius, height) {
			return k.inside.Distance(radius, height)
		}
		return math.Inf(1)
	}
	before, here := math.Inf(1), math.Inf(1)
	for ahead := -math.Floor(reach/span) * span; ahead <= reach+span; ahead += span {
		after := left(ahead)
		if at := ahead - span; here <= before && here <= after && here < k.about.Min+span {
			for step := span / 2; step > 0.01; step /= 2 {
				for _, next := range [2]float64{at - step, at + step} {
					if l := left(next); l < here {
						at, here = next, l
					}
				}
			}
			if radius, height := p.rim(&c.blade, at, c.left); k.holds(radius, height) {
				k.bitten(p, &c, at, radius, height)
			}
		}
		before, here = here, after
	}
}

// holds reports whether a place, by its radius and its height, lies in the glass.
func (k *stroke) holds(radius, height float64) bool {
	return height >= k.foot && height <= k.rim && radius < k.wide && radius < k.surface.RadiusAt(height)
}

// bitten notes a place of a wheel's edge that is in the glass, and returns how deep
// it is there and what it leaves.
func (k *stroke) bitten(p *pose, c *column, ahead, radius, height float64) (depth, left float64) {
	depth, left = k.depthUnder(radius, height), math.Inf(1)
	if k.inside != nil {
		left = k.inside.Distance(radius, height)
	}
	k.deepest = max(k.deepest, depth)
	theta, least := p.theta+p.turnTo(ahead, c.left, radius), max(left, 0)
	if least < k.about.Min {
		k.about = Remains{least, theta, height}
	}
	limit := 1.2*p.depth + beside
	if c.left == 0 {
		limit = p.depth + 2*deeper
	}
	if depth > limit && depth > k.elsewhere.Depth {
		k.elsewhere = Bridge{Depth: depth, Theta: theta, Height: height, Left: least}
	}
	return depth, left
}

// depthUnder returns how deep a place lies under the outside of the glass: its
// distance from the profile, which in a deep bite may be nearest far up or down.
func (k *stroke) depthUnder(radius, height float64) float64 {
	distance := func(s float64) float64 {
		r, z := k.surface.At(min(max(s, 0), k.surface.Length()))
		return math.Hypot(r-radius, z-height)
	}
	level := k.surface.AlongAt(height)
	at, best := level, distance(level)
	for off := span; off < best; off += span {
		for _, s := range [2]float64{level - off, level + off} {
			if d := distance(s); d < best {
				at, best = s, d
			}
		}
	}
	depth, at := under(k.surface, at, radius, height)
	if at < 0 || at > k.surface.Length() { // the glass ends before
		return best
	}
	return min(best, max(depth, 0))
}

// turnTo returns how far round the glass from the wheel a place of its edge lies.
func (p *pose) turnTo(ahead, left, radius float64) float64 {
	return math.Asin(min(max((ahead*p.sine-left*p.cosine)/max(radius, 1e-9), -1), 1))
}
