package pattern

import (
	"context"
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// touching is the distance, in millimetres, below which two cuts meet: far less than any
// land, far more than rounding.
const touching = 0.02

// crowd checks the land between every two neighbouring cuts. Given one motif, it checks
// the cuts of that motif alone; given two, only pairs with a cut of each.
func (p *Plan) crowd(only ...int) iter.Seq[Finding] {
	return func(yield func(Finding) bool) {
		p.crowdKnown(context.Background(), nil, only...)(func(f Finding) bool { return f.slight() || yield(f) })
	}
}

// crowdKnown is crowd with slight misses too, and with the lands measured in earlier
// layouts. It stops early when the context is done.
func (p *Plan) crowdKnown(ctx context.Context, known *knownLands, only ...int) iter.Seq[Finding] {
	return func(yield func(Finding) bool) {
		c := &crowding{plan: p, turned: map[[2]int]*groove.Groove{}, alike: map[alike]verdict{}}
		p.neighbours(max(p.maxLand(), touching), func(q pair) bool {
			if ctx.Err() != nil {
				return false
			}
			a, b := p.Cuts[q.first].Motif, p.Cuts[q.second].Motif
			if len(only) > 0 && !slices.Equal(slices.Compact([]int{min(a, b), max(a, b)}), only) {
				return true
			}
			f, bad := known.check(c, q)
			return !bad || yield(f)
		})
	}
}

// once removes duplicates from the crowded pairs. If a motif lies on its own next copy,
// every pair between the two copies is Off. If two lines that both run on from repeat to
// repeat crowd within a repeat, the pair across the repeat's edge is the same and is
// left out.
func (p *Plan) once(found []Finding) []Finding {
	off, within := map[int]bool{}, map[[2]ofMotif]bool{}
	for _, f := range found {
		if f.Kind == Off {
			off[p.of(f, 0).Motif] = true
		} else if !f.betweenCopies && !f.Share {
			within[p.cutsOf(f)] = true
		}
	}
	for i, f := range found {
		a, b := p.of(f, 0).Motif, p.of(f, 1).Motif
		if a == b && f.betweenCopies && !f.Share && off[a] {
			found[i].Kind = Off
		}
	}
	return slices.DeleteFunc(found, func(f Finding) bool {
		return f.betweenCopies && !f.Share && within[p.cutsOf(f)] && p.of(f, 0).RunsOn && p.of(f, 1).RunsOn
	})
}

// of returns the cut of the period that a finding's n-th cut is a copy of.
func (p *Plan) of(f Finding, n int) *Cut { return &p.Cuts[p.inPeriod(f.Cuts[n])] }

// ofMotif is a cut of a motif, in whichever of its copies.
type ofMotif struct{ motif, number int }

// cutsOf returns the two cuts of a finding, the first of the job first.
func (p *Plan) cutsOf(f Finding) [2]ofMotif {
	a, b := p.of(f, 0), p.of(f, 1)
	two := [2]ofMotif{{a.Motif, a.twin.number}, {b.Motif, b.twin.number}}
	if a.Motif > b.Motif || a.Motif == b.Motif && a.twin.number > b.twin.number {
		two[0], two[1] = two[1], two[0]
	}
	return two
}

// maxLand returns the largest land that any pair of cuts has to keep.
func (p *Plan) maxLand() float64 {
	land := 0.0
	for i := range p.Job.Motifs {
		land = max(land, p.land(i, i))
	}
	return land
}

// land returns the largest land that any two cuts of two motifs have to keep.
func (p *Plan) land(a, b int) float64 {
	own := func(i int) float64 {
		m := &p.Job.Motifs[i]
		most := or(m.Land, p.Job.Limits.Land)
		for _, part := range m.Parts {
			most = max(most, or(part.Land, most))
		}
		return most
	}
	return max(own(a), own(b))
}

// partSide is what the limits between two cuts depend on, of either: its motif and its part.
type partSide struct {
	motif int
	part  string
}

func (c *Cut) side() partSide { return partSide{c.Motif, c.Part} }

// landOf and clearOf return the limits between two cuts. Within a part or a motif its own
// limit holds, between two the stricter.
func (p *Plan) landOf(a, b partSide) float64 {
	own := func(s partSide) float64 { return or(p.Job.Motifs[s.motif].LandOf(s.part), p.Job.Limits.Land) }
	return max(own(a), own(b))
}

func (p *Plan) clearOf(a, b partSide) float64 {
	own := func(s partSide) float64 { return or(p.Job.Motifs[s.motif].ClearOf(s.part), p.Job.Limits.Clear) }
	return max(own(a), own(b))
}

func or(own *float64, otherwise float64) float64 {
	if own != nil {
		return *own
	}
	return otherwise
}

// crowding checks pairs of cuts. It keeps the grooves it has turned round the glass.
type crowding struct {
	plan   *Plan
	turned map[[2]int]*groove.Groove
	alike  map[alike]verdict
}

// alike is what pairs have in common whose lands are the same: their cuts, in whichever
// copies of their motifs, and how many repeats the second stands to the right of the first.
type alike struct {
	first, second           ofMotif
	firstShape, secondShape int
	apart                   int
}

// check checks a pair. In a period of several repeats the same pairs come again.
func (c *crowding) check(q pair) (Finding, bool) {
	p := c.plan
	if p.Period == 1 {
		return c.measure(q)
	}
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	key := alike{
		ofMotif{first.Motif, first.twin.number}, ofMotif{second.Motif, second.twin.number},
		first.twin.shape, second.twin.shape, second.Repeat - first.Repeat + q.turns*p.Period,
	}
	v, known := c.alike[key]
	if !known {
		v.finding, v.bad = c.measure(q)
		c.alike[key] = v
		return v.finding, v.bad
	}
	f := v.finding
	if v.bad {
		f.Theta += float64(first.Repeat-f.Repeat) * p.PitchAngle()
		f.Cuts, f.Repeat = []int{first.ID, p.id(second.ID, q.turns)}, first.Repeat
	}
	return f, v.bad
}

// measure measures a pair.
func (c *crowding) measure(q pair) (Finding, bool) {
	p := c.plan
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	land := p.landOf(first.side(), second.side())
	if land == 0 && (p.sameRepeat(q) || first.Motif != second.Motif) {
		return Finding{}, false // the job asks for no land here
	}
	other := c.standing(q)
	within := max(land, touching)
	near, on, off := distance(first.Groove, other, within)
	if near >= within {
		return Finding{}, false
	}
	ids := []int{first.ID, p.id(second.ID, q.turns)}
	f := Finding{Cuts: ids, Repeat: first.Repeat, Measured: near, Wanted: land, betweenCopies: !p.sameRepeat(q)}
	f.Theta, f.Height = p.Surface.Reverse(middle(on, off))
	joined := c.joined(q, other)
	if near == 0 && !joined && first.Motif == second.Motif && !p.sameRepeat(q) && !p.runTogether(first.Groove, other) {
		f.Kind = Off // the motif's next copy lies on top of this one
		return f, true
	}
	if near >= land || !joined {
		return f, near < land
	}
	f.Share, f.Wanted = true, p.clearOf(first.side(), second.side())
	shorter, longer := first.Groove, other
	if other.Length < first.Length {
		shorter, longer = other, first.Groove
	}
	f.Measured = p.clearShare(shorter, longer, land)
	return f, f.Measured < f.Wanted
}

// standing returns a pair's second groove, turned round the glass to where it stands.
func (c *crowding) standing(q pair) *groove.Groove {
	second := c.plan.Cuts[q.second].Groove
	if q.turns == 0 {
		return second
	}
	key := [2]int{q.second, q.turns}
	g, ok := c.turned[key]
	if !ok {
		turned := second.Turned(&c.plan.Surface, float64(q.turns*c.plan.Period)*c.plan.PitchAngle())
		g = &turned
		c.turned[key] = g
	}
	return g
}

// joined reports whether a pair meets by design: in one repeat where the motif says so,
// from one copy of a motif to the next where the cuts meet end to end.
func (c *crowding) joined(q pair, other *groove.Groove) bool {
	p := c.plan
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	if p.sameRepeat(q) {
		return slices.Contains(first.Joins, p.id(second.ID, q.turns))
	}
	return first.Motif == second.Motif && meet(first.Groove, other)
}

// distance returns the land between two grooves and the two places it is measured
// between, if it is below within; otherwise it returns within.
func distance(a, b *groove.Groove, within float64) (land float64, on, off geometry.Point) {
	land = within
	for _, x := range a.Outlines {
		for _, y := range b.Outlines {
			if d, p, q := x.Distance(y, land); d < land {
				land, on, off = d, p, q
			}
		}
	}
	return land, on, off
}

// clearShare returns the share of a groove's length along which the land to another
// groove is at least the given one.
func (p *Plan) clearShare(g, other *groove.Groove, land float64) float64 {
	b := beside{&p.Surface, other.Outlines, land}
	isClear := 0.0
	last := b.flank(g.Samples[0].LeftEdge, g.Samples[0].RightEdge)
	for i, s := range g.Samples[1:] {
		next := b.flank(s.LeftEdge, s.RightEdge)
		isClear += (s.Along - g.Samples[i].Along) * b.clear(last, next)
		last = next
	}
	return isClear / (g.Samples[len(g.Samples)-1].Along - g.Samples[0].Along)
}

// beside measures the land beside one groove to the outlines of another.
type beside struct {
	outside *geometry.Surface
	other   []geometry.Outline
	land    float64
}

// flank is the two edges of a groove at one place along it. spare is the distance to the
// other groove, less the land wanted, at the edge that has less.
type flank struct {
	left, right     geometry.Point
	leftAt, rightAt r3.Vec // in space, on curved glass
	spare           float64
}

func (b beside) flank(left, right geometry.Point) flank {
	const enough = 1 // mm: the distance between samples
	f := flank{left: left, right: right, spare: math.Inf(1)}
	if !b.outside.Flat() {
		f.leftAt, f.rightAt = b.outside.Space(left), b.outside.Space(right)
	}
	for _, o := range b.other {
		f.spare = min(f.spare, o.DistanceToPlace(left, f.leftAt, b.land+enough)-b.land, o.DistanceToPlace(right, f.rightAt, b.land+enough)-b.land)
	}
	return f
}

// clear returns the share of the way from one flank to the next that is clear. It bisects:
// spare changes by no more than the edges move.
func (b beside) clear(from, to flank) float64 {
	const fine = 0.01 // mm
	moved := max(r2.Norm(r2.Sub(to.left, from.left)), r2.Norm(r2.Sub(to.right, from.right)))
	if !b.outside.Flat() {
		moved = max(r3.Norm(r3.Sub(to.leftAt, from.leftAt)), r3.Norm(r3.Sub(to.rightAt, from.rightAt)))
	}
	switch {
	case from.spare+to.spare >= moved:
		return 1
	case -from.spare-to.spare >= moved:
		return 0
	case moved < fine || r2.Norm(r2.Sub(to.left, from.left))+r2.Norm(r2.Sub(to.right, from.right)) < fine:
		return 0.5 // the second where the chart runs out: past its apex places share a point
	}
	half := b.flank(middle(from.left, to.left), middle(from.right, to.right))
	return (b.clear(from, half) + b.clear(half, to)) / 2
}

func middle(a, b geometry.Point) geometry.Point { return r2.Scale(0.5, r2.Add(a, b)) }
