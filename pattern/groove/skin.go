package groove

import "math"

// skinSpot is a place on the edge of a wheel that is drawn by hand: where the wheel stands along
// the stroke, how it is rolled (from -1, all to the right, to 1, all to the left), and the place
// ahead of it and to the left of its middle.
type skinSpot struct {
	blade                     blade
	stands, lean, ahead, left float64
}

// lowest searches the edge of a wheel drawn by hand for the place that leaves the least glass
// and the one that is deepest. For each roll that is tried it keeps the best seen so far.
type lowest struct {
	*stroke
	thin, deep   [probes]skinSpot
	least, depth [probes]float64
}

func newLowest(k *stroke) *lowest {
	l := &lowest{stroke: k}
	for i := range l.least {
		l.least[i] = math.Inf(1)
	}
	return l
}

// section looks at a section of a blade.
func (l *lowest) section(b *blade, x *section) {
	across := l.across(b)
	ahead := x.ahead
	for i := range probes {
		lean := 2*float64(i)/(probes-1) - 1
		if x.own.roll == nil && lean != 0 {
			continue
		}
		for _, left := range across {
			off := 0.0
			if l.last > l.first {
				off = x.own.curve.twist * left / x.own.stiff()
			}
			for _, on := range [...]float64{0, off, -off} {
				l.try(i, x.own, skinSpot{*b, x.own.stands, lean, ahead + on, left})
				if off == 0 {
					break
				}
			}
		}
	}
}

// across returns the places of a blade's edge, to the left of the wheel's middle, that are looked
// at: refine finds what is between. Of a mitre of a gang they go no farther than to where its
// neighbours take the glass.
func (l *lowest) across(b *blade) []float64 {
	const fine = 1.0 // mm
	from, to := max(b.offset-b.right, -b.face), min(b.offset+b.left, b.face)
	n := max(int(math.Ceil((to-from)/fine)), 4)
	if b.sharp() {
		n = 4
	}
	if l.wheel.blades() > 1 && !(from == -b.face || to == b.face) {
		n = 2
	}
	across := []float64{b.offset}
	for i := range n + 1 {
		across = append(across, from+(to-from)*float64(i)/float64(n))
	}
	return across
}

// try measures a spot of a wheel, and keeps it if it is the best seen at its roll.
func (l *lowest) try(i int, p *pose, at skinSpot) {
	radius, height, ok := l.bites(p, &at)
	if !ok {
		return
	}
	if depth := l.depthBelow(p, radius, height); depth > l.depth[i] {
		l.depth[i], l.deep[i] = depth, at
	}
	if l.inside == nil {
		return
	}
	if left := l.inside.Distance(radius, height); left < l.least[i] {
		l.least[i], l.thin[i] = left, at
	}
}

// bites returns the radius and the height of a spot of a wheel, and whether it is in the glass.
func (l *lowest) bites(p *pose, at *skinSpot) (radius, height float64, ok bool) {
	radius, height, _ = p.skin(&at.blade, p.roll.leaning(at.lean), at.ahead, at.left)
	ok = height >= l.foot && height <= l.rim
	if !p.level() { // over a disc all that is higher is glass
		ok = ok && radius < l.surface.RadiusAt(height)
	}
	return radius, height, ok
}

// depthBelow returns the depth of a place of a wheel under the outside of the glass.
func (l *lowest) depthBelow(p *pose, radius, height float64) float64 {
	if l.hollowest < 0 {
		return l.depthUnder(radius, height)
	}
	depth, _ := under(l.surface, p.along, radius, height)
	return depth
}

// refine searches round the best of each roll for a better one. It returns the least glass
// left, with the place on the glass, and the greatest depth.
func (l *lowest) refine() (left Remains, depth float64) {
	const near = 1.0 // mm: the most that a closer look may change
	left.Min = math.Inf(1)
	deepest, thinnest := 0.0, math.Inf(1)
	for i := range probes {
		deepest, thinnest = max(deepest, l.depth[i]), min(thinnest, l.least[i])
	}
	for i := range probes {
		if l.depth[i] > 0 && l.depth[i] > deepest-near {
			_, d := l.climb(l.deep[i], l.depth[i], func(p *pose, radius, height float64) float64 {
				return l.depthBelow(p, radius, height)
			})
			depth = max(depth, d)
		}
		if math.IsInf(l.least[i], 1) || l.least[i] > thinnest+near {
			continue
		}
		at, worth := l.climb(l.thin[i], -l.least[i], func(_ *pose, radius, height float64) float64 {
			return -l.inside.Distance(radius, height)
		})
		if -worth < left.Min {
			p := l.at(at.stands)
			radius, height, turn := p.skin(&at.blade, p.roll.leaning(at.lean), at.ahead, at.left)
			if p.level() {
				height = radius
			}
			left = Remains{-worth, p.theta + turn, height}
		}
	}
	left.Min = max(left.Min, 0)
	return left, depth
}

// climb moves a spot, in ever smaller steps, to where it is worth most.
func (l *lowest) climb(at skinSpot, worth float64, of func(p *pose, radius, height float64) float64) (skinSpot, float64) {
	const swing = 0.1 // of the whole roll, for a millimetre's step
	for step := 0.5; step > 0.01; {
		moved := false
		for _, by := range [...][4]float64{
			{1, 0, -1, 0}, {-1, 0, 1, 0}, // on a drawn wheel, the same place of the glass
			{1, 0, 0, 0}, {-1, 0, 0, 0}, {0, 0, 1, 0}, {0, 0, -1, 0},
			{0, 0, 0, 1}, {0, 0, 0, -1}, {0, swing, 0, 0}, {0, -swing, 0, 0},
		} {
			next := at
			next.stands = min(max(at.stands+by[0]*step, l.first), l.last)
			next.lean = min(max(at.lean+by[1]*step, -1), 1)
			next.ahead += by[2] * step
			next.left = min(max(at.left+by[3]*step, -at.blade.face), at.blade.face)
			if next == at {
				continue
			}
			p := l.at(next.stands)
			radius, height, ok := l.bites(&p, &next)
			if !ok {
				continue
			}
			if is := of(&p, radius, height); is > worth+1e-6 {
				at, worth, moved = next, is, true
				break
			}
		}
		if !moved {
			step /= 2
		}
	}
	return at, worth
}
