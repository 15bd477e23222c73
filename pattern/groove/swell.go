package groove

import (
	"math"
	"sort"
)

// byHand reports whether the stroke swells or is rolled.
func (k *stroke) byHand() bool { return k.swells || k.line.hand.rocks() }

// gesture gives a wheel that is set down along the stroke the depth and the roll there.
func (k *stroke) gesture(p *pose) {
	length := k.line.Length()
	along := p.stands
	if k.line.closed {
		along -= length * math.Floor(along/length)
	}
	share, roll := k.line.hand.at(along / length)
	if k.swells {
		p.depth *= share
	}
	if roll != [2]float64{} {
		p.roll = newRolling(roll)
	}
}

// upright sets the wheel down at a distance along the line as for an even cut. It keeps the
// last one: a touch is asked for again and again where it stands.
func (k *stroke) upright(s float64) pose {
	if !k.kept || k.latest.stands != s {
		at, ahead := k.line.At(s)
		k.latest = place(k.surface, k.wheel.Radius, k.depth, at, ahead)
		k.latest.stands, k.kept = s, true
	}
	p := k.latest
	p.depth = k.depth
	return p
}

// drawSwelled finds where to set the wheel down and lift it, as draw does. Where the wheel
// stands, its depth is the swell's. Towards an end of the line it can't be as deep as that
// without biting beyond the end: what it may take there is in the tail of the place from
// which it may be as deep. It reports whether there is more than one such place.
func (k *stroke) drawSwelled() bool {
	length := k.line.Length()
	// How much deeper than the swell asks the wheel may go in without biting beyond the
	// start (side -1) or the end.
	room := func(s, side float64) float64 {
		p := k.upright(s)
		p.depth = 0
		far := s
		if side > 0 {
			far = length - s
		}
		deep, _, _ := p.bite(&k.middle, p.spot(side*far, 0))
		share, _ := k.line.hand.at(s / length)
		return -deep - k.asked*share
	}
	middle := k.fairest(room)
	k.first, k.last = middle, middle
	if k.line.on[0] {
		k.first = 0
	} else if k.first = k.lifted(room, middle, -1); k.first >= length {
		return false
	}
	if k.line.on[1] {
		k.last = length
	} else {
		k.last = k.lifted(room, middle, 1)
	}
	k.from, k.to, k.swells = 0, length, true
	return k.first < k.last
}

// fairest returns where along the line a wheel has as much room towards both ends.
func (k *stroke) fairest(room func(s, side float64) float64) float64 {
	length := k.line.Length()
	switch k.line.on {
	case [2]bool{true, true}:
		return length / 2
	case [2]bool{true, false}:
		return 0
	case [2]bool{false, true}:
		return length
	}
	differ := func(s float64) float64 { return room(s, -1) - room(s, 1) }
	if k.hollow {
		return crossing(differ, length)
	}
	return bisected(differ, 0, length, -1)
}

// lifted returns the place nearest to a middle, towards an end of the line, from which on the
// wheel has no room any more: the middle itself where it has none even there.
func (k *stroke) lifted(room func(s, side float64) float64, middle, side float64) float64 {
	const step = 0.25 // mm
	end := 0.0
	if side > 0 {
		end = k.line.Length()
	}
	has := room(middle, side)
	if has <= 0 {
		return middle
	}
	n := math.Ceil(math.Abs(end-middle) / step)
	for i := 1.0; i <= n; i++ {
		to := middle + (end-middle)*i/n
		if room(to, side) <= 0 {
			return bisected(func(s float64) float64 { return room(s, side) }, middle+(end-middle)*(i-1)/n, to, has)
		}
	}
	return end
}

// plunge returns how deep the wheel is set down, where that is deepest.
func (k *stroke) plunge() float64 {
	if !k.swells {
		return k.depth
	}
	const parts = 200 // the cubics between twelve shares are nearly flat at their crests
	deepest := 0.0
	for i := range parts + 1 {
		p := k.first + (k.last-k.first)*float64(i)/parts
		share, _ := k.line.hand.at(p / k.line.Length())
		deepest = max(deepest, k.depth*share)
	}
	return deepest
}

// stand returns where the wheel stands, along the stroke, when it bites deepest at a place
// along it: to second order, where depth − (1/R + κ_along)·off²/2 is greatest.
func (k *stroke) stand(s float64) float64 {
	nearest := min(max(s, k.first), k.last)
	here := k.upright(nearest)
	stiff, length := here.stiff(), k.line.Length()
	deep := func(t float64) float64 {
		share, _ := k.line.hand.at(t / length)
		return k.depth*share - stiff*(s-t)*(s-t)/2
	}
	const parts = 24
	reach := math.Sqrt(2 * k.depth / stiff)
	from, to := max(nearest-reach, k.first), min(nearest+reach, k.last)
	best, at := deep(nearest), nearest
	for i := range parts + 1 {
		t := from + (to-from)*float64(i)/parts
		if d := deep(t); d > best {
			best, at = d, t
		}
	}
	step := (to - from) / parts
	if finer := highest(deep, max(at-step, from), min(at+step, to), 12); deep(finer) > best {
		return finer
	}
	return at
}

// swelled returns the station at a distance along the stroke, measured with the wheel in the
// place from which it bites deepest there.
func (k *stroke) swelled(s float64, neighbours []station) station {
	stands := k.stand(s)
	var own *pose
	if n := len(neighbours); n > 0 && neighbours[n-1].own.stands == stands {
		own = neighbours[n-1].own
	} else {
		k.poses = append(k.poses, k.at(stands))
		own = &k.poses[len(k.poses)-1]
	}
	nearest := min(max(s, k.first), k.last)
	if k.line.Straight() || stands == nearest {
		return newStation(s, own, s-stands, 0)
	}
	here := k.upright(nearest)
	ahead, aside := own.local(here.spot(s-nearest, 0))
	return newStation(s, own, ahead, aside)
}

// deepestAt returns how deep the cut's own line is at a place, under the wheel that goes deepest
// there of all those along the stroke. Round a bend that needn't be the one the swell has deepest:
// wheels farther off pass beside the place.
func (k *stroke) deepestAt(on spot, along float64) (depth float64) {
	const nearly = 0.9 // the deepest square to the glass bites nearly the most along its own normal
	near, most := k.wheels, 0.0
	from := sort.Search(len(near), func(i int) bool { return near[i].stands >= along-k.wheel.Radius })
	to := sort.Search(len(near), func(i int) bool { return near[i].stands > along+k.wheel.Radius })
	near = near[from:to]
	bites := make([]float64, len(near))
	for i := range near {
		bites[i] = near[i].inside(&k.middle, on)
		most = max(most, bites[i])
	}
	for i := range near {
		if bites[i] > 0 && bites[i] >= nearly*most {
			deep, _, _ := near[i].depthAt(&k.middle, on)
			depth = max(depth, deep)
		}
	}
	return depth
}
