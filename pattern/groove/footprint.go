package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// footprint is what one blade leaves: its cross-sections in order along the stroke.
type footprint []section

// section is the groove's cross-section at a station. Both of its edges, left and right, are
// measured to the left of the centre line.
type section struct {
	station
	ridge
	left, right float64
	edges       edges
}

// edges are what is asked of a section again and again, kept from the first time: where
// its edges and its ridge are.
type edges struct {
	left, right    geometry.Point // on the chart
	ridge          spot
	charted, above bool // found already
}

// charted returns the places of a section's edges on the chart.
func (x *section) charted() (left, right geometry.Point) {
	if e := &x.edges; !e.charted {
		e.left, e.right, e.charted = x.chart(x.left), x.chart(x.right), true
	}
	return x.edges.left, x.edges.right
}

// above returns the place on the glass above a section's ridge.
func (x *section) above() spot {
	if e := &x.edges; !e.above {
		e.ridge, e.above = x.across(x.line), true
	}
	return x.edges.ridge
}

// empty reports whether the blade doesn't bite there.
func (x *section) empty() bool { return x.left <= x.right }

// footprint measures a blade's cross-sections wherever it bites. It is valid until the next
// call.
func (k *stroke) footprint(b *blade, line []station) footprint {
	first, last := line[:1], line[len(line)-1:]
	begin, end := k.tip(b, first, -1), k.tip(b, last, 1)
	before, beyond := k.lobe(b, first, begin), k.lobe(b, last, end)
	f := k.sections[:0]
	for i := range before {
		f = append(f, k.section(b, before[len(before)-1-i]))
	}
	for i := range line {
		if s := &line[i]; s.along > begin-slight && s.along < end+slight {
			f = append(f, k.section(b, *s))
		}
	}
	for _, s := range beyond {
		f = append(f, k.section(b, s))
	}
	k.sections = f
	// An outer mitre of a gang may bite along only a part of the stroke, or nowhere.
	for len(f) > 1 && f[0].empty() && f[1].empty() {
		f = f[1:]
	}
	for n := len(f); n > 1 && f[n-1].empty() && f[n-2].empty(); n-- {
		f = f[:n-1]
	}
	return k.smooth(b, f)
}

// smooth adds cross-sections where an outline turns too sharply to stay within
// stray of the true curve: where the wheel's face comes to bound the groove.
func (k *stroke) smooth(b *blade, f footprint) footprint {
	if k.bridges {
		return f // stations of different standings don't lie on one curve
	}
	rounds := 8 // halving a millimetre to less than stray
	if k.rests() {
		rounds = 2 // the edges jump where the wheel stops resting on the glass: no section smooths that
	}
	most := 500 + 2*len(f) // sections: more than that can't be seen in a drawing
	if k.byHand() {
		most = most * 3 / 4 // each takes ten times as long to measure
	}
	for range rounds {
		i := 0
		for i < len(f) && !k.rough(f, i) {
			i++
		}
		if i == len(f) || len(f) > most {
			break
		}
		finer := append(make(footprint, 0, 2*len(f)), f[:i]...)
		for before := false; i < len(f); i++ {
			here := k.rough(f, i)
			if i > 0 && (before || here) {
				between := k.under((f[i-1].along+f[i].along)/2, []station{f[i].station})
				finer = append(finer, k.section(b, between))
			}
			finer = append(finer, f[i])
			before = here
		}
		f = finer
	}
	return f
}

// rough reports whether the outline turns too sharply at a section that is on the glass.
// Beyond the glass's ends the surface is not real, and a narrow neck may close up.
func (k *stroke) rough(f footprint, i int) bool {
	return (f[i].own.flat || k.glassAt(f[i].above().along)) && f.sharp(i)
}

// sharp reports whether the outline turns too sharply at a section: whether an edge deviates
// from the straight line between its neighbours. An arc deviates from one chord four times
// as much as from two chords of half the length.
func (f footprint) sharp(i int) bool {
	const most = 4 * 1.2 * stray
	off := func(a, p, c geometry.Point) bool {
		chord := r2.Sub(c, a)
		cross := r2.Cross(chord, r2.Sub(p, a))
		return cross*cross > most*most*r2.Norm2(chord)
	}
	left := func(i int) geometry.Point { l, _ := f[i].charted(); return l }
	right := func(i int) geometry.Point { _, r := f[i].charted(); return r }
	switch next := i + 1; {
	case len(f) < 2:
		return false
	case next == len(f):
		next -= 2
		fallthrough
	case i == 0: // an end, blunt or pointed
		return off(right(i), left(i), left(next)) || off(left(i), right(i), right(next))
	default:
		return off(left(i-1), left(i), left(next)) || off(right(i-1), right(i), right(next))
	}
}

// tip returns the distance along the stroke at which a blade stops biting anywhere across
// it, after the wheel is lifted (side 1), or starts to, before it is set down (side -1).
func (k *stroke) tip(b *blade, end []station, side float64) float64 {
	if k.line.on[0] && side < 0 || k.line.on[1] && side > 0 || k.bridges {
		return end[0].along
	}
	if k.byHand() {
		return k.tipAsDrawn(b, end, side)
	}
	own, stand := end[0].own, k.last
	if side < 0 {
		stand = k.first
	}
	guess, fall := own.tail()
	const nothing = 1e-6 // mm that the twist moves the deepest place aside by the end of the tail
	if math.Abs(own.curve.twist)*guess*guess < nothing && b.offset == 0 && !b.flat() {
		return end[0].along
	}
	// A blade beside the cut's line is deepest a little ahead of the wheel, or behind it.
	middle := -own.curve.twist * b.offset / own.stiff()
	bite := func(s float64) float64 {
		ahead := middle + side*s
		return b.deepest(newStation(stand+ahead, own, ahead, 0)).deep
	}
	if bite(0) <= 0 {
		return stand + middle
	}
	// In a hollow a broad edge may bite on and on beside the line: stop after about its
	// width.
	most := 2*(guess+b.face) + math.Abs(b.offset)
	if bite(most) > 0 {
		return stand + middle + side*most
	}
	return stand + middle + side*rootWithin(bite, guess, fall, most)
}

// slight is the distance, in millimetres, that a blade may bite beyond the ends of the line,
// or fall short of them, without being drawn. A sharp blade, narrow at its tip, may bite
// five times as far beyond.
const slight = 0.02

// lobe returns the stations from an end of the line to the tip of a blade's footprint. A
// broad or offset blade askew to the glass's axis leaves the glass, to one side, beyond the
// end of the cut's line. An offset one may also leave it before the end: then the tip is the
// only station.
func (k *stroke) lobe(b *blade, end []station, tip float64) []station {
	from, beyond := end[0].along, tip-end[0].along
	if from <= k.first {
		beyond = -beyond
	}
	parts := max(5, int(math.Ceil(math.Abs(beyond)*5/9))) // 9/25 of it is the longest
	switch {
	case beyond > -slight && beyond < slight, b.sharp() && beyond > 0 && beyond < 5*slight:
		return nil
	case beyond < 0:
		parts = 1
	case b.sharp():
		parts = int(math.Ceil(beyond))
	}
	lobe := make([]station, parts)
	for i := range lobe {
		// Closer together towards the tip, which is blunt.
		left := 1 - float64(i+1)/float64(parts)
		lobe[i] = k.under(from+(tip-from)*(1-left*left), end)
	}
	return lobe
}

// section returns the cross-section that a blade leaves at a station.
func (k *stroke) section(b *blade, s station) section {
	x := s.section(b)
	if k.byHand() {
		x = k.asDrawn(b, x)
	}
	if k.broad && !x.empty() {
		x.left, x.right = x.rests(b, x.left, 1), -x.rests(b, -x.right, -1)
	}
	return k.widen(b, x)
}

// rests returns how far to one hand of a section a wheel bites that is too broad for a
// hollow across the cut. Beyond the edge of its mark it may bite again, out to its face.
func (x *section) rests(b *blade, edge, hand float64) float64 {
	const parts = 6
	for i := parts; i > 0; i-- {
		from := edge + (b.face-edge)*(float64(i)-0.05)/parts
		out := func(far float64) float64 { return x.own.inside(b, x.across(hand*(from+far))) }
		if from > edge && out(0) > 0 {
			return from + root(out, 0.01, 0.05)
		}
	}
	return edge
}

// section returns the cross-section that the wheel cuts at a station from its one place.
func (s station) section(b *blade) section {
	if s.own.roll != nil {
		return s.rolled(b)
	}
	p, r := s.own, b.own(s)
	if r.deep <= 0 {
		r = b.deepest(s)
	}
	x := section{station: s, ridge: r, left: r.line, right: r.line}
	if r.deep <= 0 || math.Abs(b.offset) >= b.face { // not in the glass, or the mitre is off the wheel
		return x
	}
	edge := func(hand float64) float64 {
		guess, fall := b.halfWidth(r.deep, hand*r.lean, p.curve.across, b.face-hand*r.line)
		return root(func(x float64) float64 { return p.inside(b, s.across(r.line+hand*x)) }, guess, fall)
	}
	x.left += edge(1)
	x.right -= edge(-1)
	return x
}

// grow widens the sample at a station of the line so that the footprint's cross-section,
// after polishing, is within it.
func (x *section) grow(s *Sample, polish float64) {
	left, right := x.left+polish, polish-x.right
	if s.Left+s.Right > 0 { // set by another mitre
		left, right = max(left, s.Left), max(right, s.Right)
	}
	s.Left, s.Right = left, right
	s.LeftEdge, s.RightEdge = x.chart(left), x.chart(-right)
}

// volume sums the cross-sections of a blade's footprint along the stroke.
func (k *stroke) volume(b *blade, f footprint) float64 {
	v, last := 0.0, 0.0
	for i := range f {
		area := k.area(b, &f[i])
		if i > 0 {
			v += (f[i].along - f[i-1].along) * (area + last) / 2
		}
		last = area
	}
	return v
}

// area returns the area of a cross-section, to second order but for its width.
func (k *stroke) area(b *blade, x *section) float64 {
	if x.empty() {
		return 0
	}
	if k.byHand() {
		return k.areaAsDrawn(b, x)
	}
	h, lean, curve := k.sunk(x)
	sum := b.area(h, lean, curve, min(x.left-x.line, b.left)) + b.area(h, -lean, curve, min(x.line-x.right, b.right))
	// Where the glass curves along the cut, a section's centroid travels a shorter way than
	// the surface. It is about 0.4 of the depth below it: a third for a V, half for a panel.
	return sum * (1 - 0.4*h*x.own.curve.along)
}

// sunk returns how deep a section's ridge is, and how the surface leans away to the left
// and curves from there.
func (k *stroke) sunk(x *section) (h, lean, curve float64) {
	c := &x.own.curve
	curve, h, lean = c.across, x.deep, x.lean
	if k.first < x.along && x.along < k.last {
		// A wheel that passes askew takes as much as from a surface less curved: away from
		// the cut's line it goes deeper and leans less.
		curve = x.own.swept()
		h += (c.across - curve) * x.line * x.line / 2
		lean -= (c.across - curve) * x.line
	}
	return h, lean, curve
}

// area returns the area of one half of a cross-section of a given depth at its ridge and a
// given width, under a surface that leans and curves away.
func (b *blade) area(h, lean, curve, width float64) float64 {
	return max(h*width-lean*width*width/2-curve*width*width*width/6-b.filled(width), 0)
}

// outline returns the outline of a footprint, widened by polishing: up the left edge and
// back down the right, with two points for each cross-section.
func (k *stroke) outline(f footprint, polish float64) geometry.Outline {
	n := len(f)
	points := k.points.take(2 * n)
	for i := range f {
		x := &f[i]
		s := &x.station
		if polish > 0 && (i == 0 || i == n-1) { // polishing lengthens the tips too
			longer := polish
			if i == 0 {
				longer = -polish
			}
			tip := newStation(s.along, s.own, s.ahead+longer, s.aside)
			s = &tip
		}
		points[i] = s.chart(x.left + polish)
		points[2*n-1-i] = s.chart(x.right - polish)
	}
	o := geometry.NewOutline(points)
	if k.surface.Flat() {
		return o
	}
	space := make([]r3.Vec, len(points))
	for i, q := range points {
		space[i] = k.surface.Space(q)
	}
	return o.InSpace(space, k.stretch)
}
