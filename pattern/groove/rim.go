package groove

import "math"

// lookRound looks along a wheel's edge, every span in each column, for places in the glass.
// It also finds those beyond a neck or a hollow, where no way on the glass leads under the
// wheel.
func (k *stroke) lookRound(p *pose) {
	columns := k.leaning()
	if k.spots == nil {
		k.spots = newEdgeSpots(columns)
	}
	for i, c := range columns {
		reach := min(p.wheelRadius-c.blade.drop(c.left-c.blade.offset), p.wheelRadius)
		for ahead := -math.Floor(reach/span) * span; ahead <= reach; ahead += span {
			if radius, height := c.on(p, ahead); k.holds(radius, height) {
				depth, left := k.bitten(p, &c, ahead, radius, height)
				k.spots[2*i].offer(p, ahead, -left)
				k.spots[2*i+1].offer(p, ahead, depth)
			}
		}
		k.alongEdge(p, c, reach)
	}
}

// alongEdge searches a column between the places that were looked at for one that leaves
// less glass. It starts from each that leaves no more than either neighbour.
func (k *stroke) alongEdge(p *pose, c column, reach float64) {
	if k.inside == nil {
		return
	}
	left := func(ahead float64) float64 {
		if radius, height := c.on(p, ahead); k.holds(radius, height) {
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
			if radius, height := c.on(p, at); k.holds(radius, height) {
				k.bitten(p, &c, at, radius, height)
			}
		}
		before, here = here, after
	}
}

// holds reports whether a place, by radius and height, is under the outside of the glass.
func (k *stroke) holds(radius, height float64) bool {
	return height >= k.foot && height <= k.rim && radius < k.wide && radius < k.surface.RadiusAt(height)
}

// bitten records a place of a wheel's edge that is in the glass. It returns the depth and
// the glass left there.
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
	limit := 1.2*(p.depth+k.dip) + beside
	if c.left == 0 && c.lean == 0 {
		limit = p.depth + 2*deeper
	}
	if depth > limit && depth > k.elsewhere.Depth {
		k.elsewhere = Bridge{Depth: depth, Theta: theta, Height: height, Left: least}
	}
	return depth, left
}

// depthUnder returns the depth of a place under the outside of the glass: its distance from
// the profile. In a deep bite the nearest place of the profile may be far up or down.
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
	if at < 0 || at > k.surface.Length() { // beyond the end of the glass
		return best
	}
	return min(best, max(depth, 0))
}

// turnTo returns the angle round the glass from the wheel's place to a place of its edge.
func (p *pose) turnTo(ahead, left, radius float64) float64 {
	return math.Asin(min(max((ahead*p.sine-left*p.cosine)/max(radius, 1e-9), -1), 1))
}
