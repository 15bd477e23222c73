package pattern

import (
	"context"
	"encoding/binary"
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// trials answers, of many jobs that differ little from one another, whether they
// clear. It finds what a check of the whole plan would find: what one motif does
// alone, and what two do to one another. Each of these is looked for once, and
// kept: what a change leaves as it was is neither laid out nor measured again.
//
// All of its jobs have the same rack and the same limits.
type trials struct {
	stages map[stage]*Plan
	ids    map[string]int
	stood  []*stand // by id
	pairs  map[[2]int]bool
	bands  map[string]chosen
	effort int // the grooves that were cut: nearly all of the time goes there
	toil   int // what was measured: see mostTried
}

// mostTried bounds what trials may measure, in toil: see Plan.toils. What is past it
// is not tried. It counts work and not time, so that the answers are the same
// everywhere.
const mostTried = 5_000_000

// errSpent says that trials have measured all they may.
var errSpent = errors.New("more has been tried than a search may")

// spent reports whether they have.
func (t *trials) spent() bool { return t.toil > mostTried }

// stage is what all the motifs of a trial stand on.
type stage struct {
	blank           *glass.Blank
	band            job.Band
	repeats, period int
}

// stand is a motif on a stage: what it comes to, or why it can't be drawn there;
// its cuts in one period once they are cut, and whether they clear by themselves
// once that is known.
type stand struct {
	toll         toll
	wrong        error
	cuts         []Cut
	clear, known bool
}

func newTrials() *trials {
	return &trials{stages: map[stage]*Plan{}, ids: map[string]int{}, pairs: map[[2]int]bool{}, bands: map[string]chosen{}}
}

// trial is one job on one blank.
type trial struct {
	of     *trials
	plan   *Plan // without cuts
	motifs []job.Motif
	ids    []int
}

// on sets a job on one of its blanks, unless too much has been tried already.
func (t *trials) on(j *job.Job, blank *glass.Blank) (*trial, error) {
	if t.spent() {
		return nil, errSpent
	}
	return t.set(j, blank)
}

// set sets a job on one of its blanks.
func (t *trials) set(j *job.Job, blank *glass.Blank) (*trial, error) {
	// Every motif is sized on every blank, and looked up beside every other.
	t.toil += len(j.Motifs) * (len(j.Blanks) + len(j.Motifs)/8 + 8) / 4
	band, sized, err := t.share(j, blank)
	if err != nil {
		return nil, err
	}
	p, err := t.bare(j, blank, band)
	if err != nil {
		return nil, err
	}
	tr := t.stand(p, sized)
	return tr, tr.drawable()
}

// drawable returns an error if a motif of the trial can't be drawn, or if all of
// them come to more than is cut.
func (tr *trial) drawable() error {
	all := bill{plan: tr.plan, each: make([]toll, len(tr.ids))}
	for i, id := range tr.ids {
		s := tr.of.stood[id]
		if s.wrong != nil {
			return s.wrong
		}
		all.each[i] = s.toll
	}
	return all.within()
}

// bare returns a job's plan without a cut, whose surface and paper are reckoned
// once for each stage.
func (t *trials) bare(j *job.Job, blank *glass.Blank, band job.Band) (*Plan, error) {
	at := stage{blank, band, j.Layout.Repeats, period(j)}
	base, ok := t.stages[at]
	if !ok {
		var err error
		if base, err = bare(j, blank, band); err != nil {
			return nil, err
		}
		const fitted = 80 // a cone; its gores, where they are asked for, not much more
		t.toil += fitted
		t.stages[at] = base
	}
	p := *base
	p.Job, p.sized = j, j.Motifs
	return &p, nil
}

// stand finds the ids of a plan's motifs: the same for the same motif on the
// same stage.
func (t *trials) stand(p *Plan, sized []job.Motif) *trial {
	p.sized = sized
	tr := &trial{of: t, plan: p, motifs: sized, ids: make([]int, len(sized))}
	b := number(nil, float64(slices.Index(p.Job.Blanks, p.Blank)), float64(p.Repeats), float64(p.Period), p.Band.Foot, p.Band.Top)
	for i, m := range sized {
		about := describe(slices.Clone(b), i, m)
		for m.Inside > 0 {
			m = sized[m.Inside-1]
			about = describe(about, -1, m)
		}
		key := string(about)
		id, ok := t.ids[key]
		if !ok {
			id = len(t.stood)
			t.ids[key] = id
			t.stood = append(t.stood, t.stands(p, i))
		}
		tr.ids[i] = id
	}
	return tr
}

// stands draws a motif to see whether it can be, and what it comes to.
func (t *trials) stands(p *Plan, i int) *stand {
	d, err := p.drawing(i)
	t.toil += 2 + len(d.cuts)
	if err != nil {
		return &stand{wrong: err}
	}
	return &stand{toll: p.toll(i, d)}
}

// describe writes all that a motif's cuts depend on.
func describe(b []byte, i int, m job.Motif) []byte {
	b = append(number(b, float64(i)), m.Kind.Name...)
	for _, p := range m.Kind.Params {
		b = number(b, m.Values[p.Name])
	}
	return describePlace(b, m)
}

// describePlace writes of that what says where a motif stands, and how deep.
func describePlace(b []byte, m job.Motif) []byte {
	for _, s := range []job.Measure{m.Across, m.Up, m.Width, m.Height} {
		fraction := 0.0
		if s.Fraction {
			fraction = 1
		}
		b = number(b, s.Value, fraction)
	}
	mirror := 0.0
	if m.Mirror {
		mirror = 1
	}
	return number(b, float64(m.Wheel), m.Depth, m.Turn, mirror, float64(m.On), float64(m.Shape), float64(m.Inside))
}

func number(b []byte, all ...float64) []byte {
	for _, x := range all {
		b = binary.NativeEndian.AppendUint64(b, math.Float64bits(x))
	}
	return b
}

// clears reports whether nothing is found on any of a job's blanks.
func (t *trials) clears(j *job.Job) bool {
	for _, blank := range j.Blanks {
		tr, err := t.on(j, blank)
		if err != nil || !tr.clears() {
			return false
		}
	}
	return true
}

// clearsMotif reports whether nothing is found that has to do with one motif.
func (t *trials) clearsMotif(j *job.Job, i int) bool {
	for _, blank := range j.Blanks {
		tr, err := t.on(j, blank)
		if err != nil || !tr.alone(i) {
			return false
		}
		for k := range tr.motifs {
			if !tr.pair(i, k) {
				return false
			}
		}
	}
	return true
}

func (tr *trial) clears() bool {
	if len(tr.plan.uneven()) > 0 {
		return false
	}
	for i := range tr.motifs {
		if !tr.alone(i) {
			return false
		}
	}
	for i := range tr.motifs {
		for k := range i {
			if !tr.pair(i, k) {
				return false
			}
		}
	}
	return true
}

// alone reports whether a motif clears by itself, and beside its own copies.
func (tr *trial) alone(i int) bool {
	s := tr.of.stood[tr.ids[i]]
	if s.known {
		return s.clear
	}
	s.known = true
	if s.cuts == nil && tr.plan.closeLines(i) {
		return false
	}
	p := *tr.plan
	p.Cuts = tr.cuts(i)
	for _, find := range []func() []Finding{p.thin, p.margins, p.buried, p.tight, p.shallow, p.bridged} {
		if len(find()) > 0 {
			return false
		}
	}
	for range p.crowd(i) {
		return false
	}
	tr.measured(i)
	s.clear = true
	return true
}

// measured counts what it takes to measure the cuts of a motif against one another.
func (tr *trial) measured(i int) { tr.of.toil += int(2 * tr.of.stood[tr.ids[i]].toll.beside) }

// cuts returns the cuts of a motif in one period. Their ids and joins hold where
// no other motif stands.
func (tr *trial) cuts(i int) []Cut {
	s := tr.of.stood[tr.ids[i]]
	if s.cuts == nil {
		p := *tr.plan
		all := make([]*figure, len(tr.motifs))
		d, _ := p.drawing(i) // it can be drawn: set has tried
		all[i] = &figure{cuts: d.cuts, lines: p.lines(d)}
		_ = p.cutAll(context.Background(), all) // one motif: soon done
		const longer = 3                        // times, that bent lines take
		for n, c := range p.Cuts[:len(all[i].cuts)] {
			tr.of.effort++
			if c.Length > r2.Norm(r2.Sub(c.Ends[1], c.Ends[0]))+touching {
				tr.of.effort += longer
			}
			tr.of.toil += int(p.toils(p.Job.Rack[c.Wheel], !all[i].lines[n].Straight()) * float64(len(c.Samples)))
		}
		s.cuts = p.Cuts
	}
	return s.cuts
}

// pair reports whether two motifs clear one another.
func (tr *trial) pair(a, b int) bool {
	if a == b || tr.plan.land(a, b) == 0 {
		return true
	}
	a, b = min(a, b), max(a, b)
	key := [2]int{tr.ids[a], tr.ids[b]}
	if clear, ok := tr.of.pairs[key]; ok {
		return clear
	}
	p := *tr.plan
	p.Cuts = tr.both(a, b)
	tr.of.paired(p.Cuts)
	clear := true
	for range p.crowd(a, b) {
		clear = false
		break
	}
	tr.of.pairs[key] = clear
	return clear
}

// paired counts what it takes to look among cuts for two that come near.
func (t *trials) paired(cuts []Cut) { t.toil += 4 + len(cuts) }

// both returns the cuts of two motifs in one period.
func (tr *trial) both(a, b int) []Cut {
	cuts := slices.Concat(tr.cuts(a), tr.cuts(b))
	for i := range cuts {
		cuts[i].ID, cuts[i].Joins = i+1, nil // motifs don't join one another
	}
	return cuts
}
