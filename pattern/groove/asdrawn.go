package groove

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// This file measures what a stroke by hand leaves across a station: there the wheel that takes
// most may stand elsewhere, and be rolled to either side.

// probes is how many rolls of a wheel are tried where it isn't known which takes most.
const probes = 5

// rolled returns the cross-section that a wheel which is rolled cuts at a station from its one
// place: all from the leftmost to the rightmost place that it takes.
func (s station) rolled(b *blade) section {
	p := s.own
	x := section{station: s, ridge: ridge{line: b.offset - s.aside}}
	x.left, x.right = x.line, x.line
	if math.Abs(b.offset) >= b.face { // the mitre is off the wheel
		return x
	}
	bite := func(left float64) float64 { return p.inside(b, s.across(left)) }
	left, right := math.Inf(-1), math.Inf(1)
	x.deep = math.Inf(-1)
	try := func(at float64) {
		deep := bite(at)
		if deep > x.deep {
			x.deep, x.line = deep, at
		}
		if deep > 0 {
			left, right = max(left, at), min(right, at)
		}
	}
	for _, r := range p.roll.some(probes) {
		try(p.tipOf(b, r, s.ahead) - s.aside)
	}
	if x.deep <= 0 && !b.sharp() { // a broad edge may bite beside its line
		const parts = 12
		for i := -parts; i <= parts; i++ {
			try(b.offset - s.aside + (b.face+p.depth)*float64(i)/parts)
		}
	}
	x.left, x.right = x.line, x.line
	if x.deep <= 0 {
		return x
	}
	edge := func(from, hand float64) float64 {
		guess, fall := b.halfWidth(bite(from), 0, p.curve.across, b.face)
		return from + hand*rootWithin(func(far float64) float64 { return bite(from + hand*far) }, guess, fall, p.widest(b))
	}
	x.left, x.right = edge(left, 1), edge(right, -1)
	return x
}

// widest returns a width, in millimetres along the glass, beyond which a blade can't bite to
// either side of where it does.
func (p *pose) widest(b *blade) float64 { return 4 * (b.face + math.Abs(b.offset) + p.depth) }

// asDrawn moves the edges of a cross-section out to what the wheel takes from anywhere along
// the stroke.
func (k *stroke) asDrawn(b *blade, x section) section {
	if k.first == k.last && !k.line.on[0] && !k.line.on[1] {
		return x
	}
	left, right := k.farthest(b, &x, 1), k.farthest(b, &x, -1)
	if x.deep <= 0 { // where others bite to one hand of the blade's own line, that isn't in the mark
		switch toLeft, toRight := left > x.left, right > -x.right; {
		case toRight && !toLeft:
			x.left = -right
			left = k.farthest(b, &x, 1)
		case toLeft && !toRight:
			x.right = left
			right = k.farthest(b, &x, -1)
		}
	}
	if x.deep <= 0 && left > -right { // other wheels bite here
		x.line, x.deep = (left-right)/2, math.SmallestNonzeroFloat64
	}
	x.left, x.right = left, -right
	return x
}

// wheelsApart is the distance, in millimetres, between the wheels along a stroke by hand that
// are tried everywhere.
const wheelsApart = 0.5

// setDown sets the wheel down all along a stroke by hand and, where it comes from beyond or
// goes on, as far beyond as it reaches.
func (k *stroke) setDown(b *blade) {
	from, to := k.first, k.last
	if k.line.on[0] {
		p := k.at(from)
		from -= k.reachAsDrawn(b, &p)
	}
	if k.line.on[1] {
		p := k.at(to)
		to += k.reachAsDrawn(b, &p)
	}
	n := int(math.Ceil((to - from) / wheelsApart))
	k.wheels = make([]pose, n+1)
	for i := range k.wheels {
		k.wheels[i] = k.at(from + (to-from)*float64(i)/float64(max(n, 1)))
	}
}

// farthest returns the farthest distance to one hand (1 left, -1 right) of a section at which
// the wheel bites, from any place along the stroke: it tries all places as far off as the
// wheel reaches, and then closer about the best.
func (k *stroke) farthest(b *blade, x *section, hand float64) float64 {
	const (
		finest = 0.03 // mm
		least  = 5e-4 // mm: too little to look for
	)
	edge := x.left
	if hand < 0 {
		edge = -x.right
	}
	beyond := x.across(hand * (edge + least))
	var beside besides
	try := func(p *pose) bool {
		begin := edge + least
		if p.inside(b, beyond) <= 0 {
			ok := false
			if begin, ok = k.begins(b, p, &x.station, edge+least, hand, &beside); !ok {
				return false
			}
		}
		out := func(far float64) float64 { return p.inside(b, x.across(hand*(begin+far))) }
		edge = begin + rootWithin(out, 0.01, 0.05, p.widest(b))
		beyond = x.across(hand * (edge + least))
		return true
	}
	first, last := k.wheels[0].stands, k.wheels[len(k.wheels)-1].stands
	best, reach := x.own.stands, k.reachAsDrawn(b, x.own)
	for i := range k.wheels {
		if p := &k.wheels[i]; math.Abs(p.stands-x.along) <= reach+wheelsApart && try(p) {
			best = p.stands
		}
	}
	for step := wheelsApart / 2; step > finest; {
		moved := false
		for _, stands := range [...]float64{best - step, best + step} {
			if stands >= first && stands <= last {
				if p := k.at(stands); try(&p) {
					best, moved = stands, true
					break
				}
			}
		}
		if !moved {
			step /= 2
		}
	}
	return edge
}

// begins returns a distance to one hand of a station, beyond an edge, at which a wheel bites
// that may do so only farther out: a broad one, one that is rolled, a mitre of a gang, or one
// that comes round a bend. It tries places of the blade's own edge, out to the wheel's face.
func (k *stroke) begins(b *blade, p *pose, s *station, edge, hand float64, beside *besides) (begin float64, ok bool) {
	if b.offset == 0 && b.sharp() && p.roll == nil && k.line.Straight() {
		return 0, false
	}
	const near = 0.1 // mm: what the second order may be off by
	beside.know(s)
	v := p.seen(p.space(beside.on))
	// How far ahead of the wheel, and to its left, the station goes in a millimetre of its own:
	// round a bend it lies askew.
	skew, grows := 0.0, 1.0
	if !k.line.Straight() {
		to := r3.Scale(1/besidesApart, r3.Sub(p.seen(p.space(beside.left)), v))
		grows = max(to.Y, 0.1)
		skew = to.X / grows
	}
	rolls := [3]roll{{cos: 1}}
	n := 1
	if p.roll != nil {
		rolls[1], rolls[2], n = p.roll.low, p.roll.high, 3
	}
	for _, out := range [...]float64{0, 0.4, 0.7, 0.98} {
		left := b.offset + out*(hand*b.face-b.offset)
		for _, r := range rolls[:n] {
			ahead := v.X + skew*(left-v.Y)
			lifted := p.above(p.wheelRadius-b.drop(left-b.offset), ahead)
			at := r.outOf(r3.Vec{X: ahead, Y: left, Z: lifted}, p.depth)
			glass := -(p.curve.along*ahead*ahead + 2*p.curve.twist*ahead*at.Y + p.curve.across*at.Y*at.Y) / 2
			far := hand * (at.Y - v.Y) / grows
			if far <= edge || at.Z >= glass+near {
				continue
			}
			q := s.across(hand * far)
			if b.offset != 0 { // a mitre that grazes the glass does so at its point alone
				far += hand * (at.Y - p.seen(p.space(q)).Y) / grows
				q = s.across(hand * far)
			}
			if far > edge && p.inside(b, q) > 0 {
				return far, true
			}
		}
	}
	return 0, false
}

// reachAsDrawn returns how far along the stroke from a place another wheel may bite there. A
// rolled rim is flatter along the cut than an upright one, and its edge may lie deeper.
func (k *stroke) reachAsDrawn(b *blade, own *pose) float64 {
	lying := 1.0
	if k.line.hand.rocks() { // the other wheel may be rolled farther than this one
		lying = math.Cos(max(k.line.hand.rock[0], k.line.hand.rock[1]))
	}
	stiff := own.stiff() * lying
	wide, _ := b.halfWidth(k.depth, 0, own.swept(), b.face)
	reach := math.Sqrt(2*(k.depth+k.dip)/stiff) + math.Abs(own.curve.twist)/stiff*(wide+math.Abs(b.offset))
	if !k.line.Straight() {
		reach *= 1.5
	}
	return reach
}

// tipAsDrawn returns the distance along the stroke at which a blade stops biting anywhere
// across it, as tip does, with every wheel near the end of the stroke at every roll.
func (k *stroke) tipAsDrawn(b *blade, end []station, side float64) float64 {
	stand, far := k.last, k.to
	if side < 0 {
		stand, far = k.first, k.from
	}
	reach := k.reachAsDrawn(b, end[0].own)
	var wheels []pose
	const others = 3
	for i := range others + 1 {
		at := stand - side*reach*float64(i)/others/2
		if i == 0 || k.swells && at > k.first && at < k.last {
			wheels = append(wheels, k.at(at))
		}
	}
	bites := func(off float64) bool {
		for i := range wheels {
			p := &wheels[i]
			s := newStation(0, p, stand+side*off-p.stands, 0)
			if x := s.section(b); !x.empty() && x.left-x.right > 2*narrow {
				return true
			}
		}
		return false
	}
	// From where the wheel stands on: a mitre off the line may end before it, or begin after.
	in, step := 0.0, 0.25
	most := 2*(reach+b.face) + math.Abs(b.offset)
	for !bites(in) {
		if in += max(step, reach/8); b.offset == 0 || in > reach {
			return stand
		}
	}
	for out := max(side*(far-stand), in); ; out += step {
		if out > in && !bites(out) {
			for out-in > narrow {
				if middle := (in + out) / 2; bites(middle) {
					in = middle
				} else {
					out = middle
				}
			}
			return stand + side*in
		}
		if in = max(in, out); in > most {
			return stand + side*most
		}
	}
}

// narrow is the width, in millimetres, of a mark too narrow to be drawn.
const narrow = 1e-3

// floorParts is in how many parts across a cross-section's floor is measured.
const floorParts = 24

// floor returns how deep a cross-section is, along the normal of the glass, in the middle of
// each of its parts from the right edge to the left one.
func (k *stroke) floor(b *blade, x *section) [floorParts]float64 {
	var all [floorParts]float64
	wheels := k.over(b, x)
	for i := range all {
		at := x.across(x.part(i))
		for j := range wheels {
			depth, _, _ := wheels[j].depthAt(b, at)
			all[i] = max(all[i], depth)
		}
	}
	if k.wheel.blades() > 1 {
		k.shared(b, x, wheels, &all)
	}
	return all
}

// part returns how far to the left of a section's station the middle of a part of it is.
func (x *section) part(i int) float64 {
	return x.right + (x.left-x.right)*(float64(i)+0.5)/floorParts
}

// over returns the wheels that are deepest somewhere in a section: its own and those that a
// twist of the glass, the swell or the roll makes deepest to either side.
func (k *stroke) over(b *blade, x *section) []*pose {
	wheels := []*pose{x.own}
	if k.first == k.last || !k.swells && x.own.curve.twist == 0 && k.line.Straight() {
		return wheels
	}
	reach := k.reachAsDrawn(b, x.own)
	for _, share := range [...]float64{0.02, 0.3, 0.7, 0.98} {
		at := x.across(x.right + share*(x.left-x.right))
		best, most := x.own, x.own.inside(b, at)
		for i := range k.wheels {
			if p := &k.wheels[i]; math.Abs(p.stands-x.along) <= reach {
				if deep := p.inside(b, at); deep > most {
					best, most = p, deep
				}
			}
		}
		if !slices.Contains(wheels, best) {
			wheels = append(wheels, best)
		}
	}
	return wheels
}

// areaAsDrawn returns the area of a cross-section. Where mitres of a gang take the same glass
// it is counted for the one that is deepest there.
func (k *stroke) areaAsDrawn(b *blade, x *section) float64 {
	floor := k.floor(b, x)
	sum := 0.0
	wide := (x.left - x.right) / floorParts
	curve := x.own.curve.along + x.own.curve.across
	for _, deep := range floor {
		if deep*curve > 1 { // columns meet there
			deep = 1 / curve
		}
		sum += wide * deep * (1 - deep*curve/2) // they come closer towards the glass's axis
	}
	return sum
}

// shared takes from a mitre's floor what its neighbours in the gang take deeper.
func (k *stroke) shared(b *blade, x *section, wheels []*pose, floor *[floorParts]float64) {
	const most = 2.5 // neighbours to either side: rolled, mitres farther off hardly take the same glass
	for n := range k.wheel.blades() {
		other := k.wheel.blade(n)
		off := other.offset - b.offset
		if off == 0 || math.Abs(off) > most*k.wheel.Spacing || math.Abs(other.offset) >= b.face {
			continue
		}
		for i := range floor {
			at := x.across(x.part(i))
			for j := range wheels {
				if deep, _, _ := wheels[j].depthAt(&other, at); deep > floor[i] || deep == floor[i] && off < 0 {
					floor[i] = 0
				}
			}
		}
	}
}
