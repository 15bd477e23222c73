package groove

import "math"

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
	if x.deep <= 0 && left > -right { // other wheels bite here
		x.line, x.deep = (left-right)/2, math.SmallestNonzeroFloat64
	}
	x.left, x.right = left, -right
	return x
}

// farthest returns the farthest distance to one hand (1 left, -1 right) of a section at which
// the wheel bites, from any place along the stroke: it tries places as far off as the wheel
// reaches, and then closer about the best.
func (k *stroke) farthest(b *blade, x *section, hand float64) float64 {
	const (
		coarse = 6    // places to either side
		finest = 0.02 // mm
		least  = 5e-4 // mm: too little to look for
	)
	edge := x.left
	if hand < 0 {
		edge = -x.right
	}
	from, to := k.first, k.last
	if k.line.on[0] {
		from = math.Inf(-1)
	}
	if k.line.on[1] {
		to = math.Inf(1)
	}
	own := x.own.stands
	reach := k.reachAsDrawn(b, x.own)
	best := own
	try := func(stands float64) bool {
		if stands < from || stands > to {
			return false
		}
		p := k.at(stands)
		found := false
		for _, begin := range k.begins(b, &p, &x.station, edge+least, hand) {
			out := func(far float64) float64 { return p.inside(b, x.across(hand*(begin+far))) }
			if begin > edge && out(0) > 0 {
				edge, best, found = begin+rootWithin(out, 0.01, 0.05, p.widest(b)), stands, true
			}
		}
		return found
	}
	for i := 1; i <= coarse; i++ {
		off := reach * float64(i) / coarse
		try(max(own-off, from))
		try(min(own+off, to))
	}
	for step := reach / (2 * coarse); step > finest; {
		if !try(best-step) && !try(best+step) {
			step /= 2
		}
	}
	return edge
}

// begins returns the distances to one hand of a station at which it is looked for whether a
// wheel bites there: just beyond an edge and, for a wheel that may bite only farther out,
// where its blade is.
func (k *stroke) begins(b *blade, p *pose, s *station, edge, hand float64) []float64 {
	if b.offset == 0 && !b.flat() && k.line.Straight() {
		return []float64{edge}
	}
	all := []float64{edge}
	if b.flat() {
		const parts = 4
		for i := 1; i < parts; i++ {
			all = append(all, edge+(b.face-edge)*float64(i)/parts)
		}
		if k.line.Straight() {
			return all
		}
	}
	v := p.seen(p.space(s.across(0)))
	for _, r := range p.roll.some(3) {
		all = append(all, hand*(p.tipOf(b, r, v.X)-v.Y))
	}
	return all
}

// reachAsDrawn returns how far along the stroke from a place another wheel may bite there. A
// rolled rim is flatter along the cut than an upright one, and its edge may lie deeper.
func (k *stroke) reachAsDrawn(b *blade, own *pose) float64 {
	lying := 1.0
	if r := own.roll; r != nil {
		lying = min(r.low.cos, r.high.cos)
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
	// From where the wheel stands on: a mitre off the line may end before it.
	in, step := 0.0, 0.25
	if !bites(0) {
		return stand
	}
	most := 2*(reach+b.face) + math.Abs(b.offset)
	for out := side * (far - stand); ; out += step {
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

// floorParts is in how many parts a cross-section's floor is measured.
const floorParts = 24

// floor returns how deep a cross-section is at evenly spread places from its left edge to its
// right one, along the normal of the glass.
func (k *stroke) floor(b *blade, x *section) [floorParts + 1]float64 {
	var all [floorParts + 1]float64
	wheels := k.over(x)
	for i := range all {
		share := (float64(i) + 1e-6) / (floorParts + 2e-6) // within the edges, which may be upright
		at := x.across(x.left + share*(x.right-x.left))
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

// over returns the wheels that are deepest somewhere in a section: its own and those that a
// twist of the glass or a change of the roll makes deepest at its edges.
func (k *stroke) over(x *section) []pose {
	wheels := []pose{*x.own}
	if k.first == k.last || !k.swells && x.own.curve.twist == 0 && k.line.Straight() {
		return wheels
	}
	const swelled = 0.5 // mm
	for i, edge := range [2]float64{x.left, x.right} {
		off := x.own.curve.twist * (x.aside + edge) / x.own.stiff()
		if k.swells && math.Abs(off) < swelled {
			off = swelled * float64(2*i-1)
		}
		if stands := min(max(x.own.stands+off, k.first), k.last); stands != x.own.stands {
			wheels = append(wheels, k.at(stands))
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
	for i, deep := range floor {
		part := wide
		if i == 0 || i == floorParts {
			part /= 2
		}
		// The glass narrows towards its axis.
		curve := x.own.curve.along + x.own.curve.across
		sum += part * deep * (1 - deep*curve/2)
	}
	return sum
}

// shared takes from a mitre's floor what its neighbours in the gang take deeper.
func (k *stroke) shared(b *blade, x *section, wheels []pose, floor *[floorParts + 1]float64) {
	outermost := float64(k.wheel.Mitres-1) / 2 * k.wheel.Spacing
	for _, side := range [...]float64{-1, 1} {
		other := *b
		other.offset += side * k.wheel.Spacing
		if math.Abs(other.offset) > outermost+k.wheel.Spacing/2 || math.Abs(other.offset) >= b.face {
			continue
		}
		for i := range floor {
			at := x.across(x.left + float64(i)/floorParts*(x.right-x.left))
			for j := range wheels {
				if deep, _, _ := wheels[j].depthAt(&other, at); deep > floor[i] || deep == floor[i] && side < 0 {
					floor[i] = 0
				}
			}
		}
	}
}
