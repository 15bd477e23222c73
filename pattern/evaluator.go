package pattern

import (
	"context"
	"errors"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Evaluator checks many jobs that differ little from one another. It finds what a check
// of the whole plan would: the findings of each motif alone, and those between two. Each
// result is kept, so what a change leaves as it was is neither laid out nor measured
// again.
//
//	e := pattern.NewEvaluator()
//	d, err := e.TryOn(ctx, j, j.Blanks[0], job.Side) // nothing is cut yet
//	isClear := d.Clears()                            // cuts only what it needs
//
// All of its jobs must have the same blanks, rack and limits. It is for one goroutine at
// a time.
type Evaluator struct {
	stages map[stage]*Plan
	ids    map[string]int
	placed []*placedMotif // by id
	pairs  map[[2]int]bool
	found  map[[2]int]Problems // between two motifs, by their ids
	bands  map[string]chosen
	spent  *expense
	cut    *Evaluator // has cut some of the same motifs; may be nil
}

// expense is the work done so far by an evaluator and those made from it.
type expense struct {
	grooves int // cut so far, which takes nearly all of the time
	work    int // see MaxTried
}

func (e *expense) add(more expense) {
	e.grooves += more.grooves
	e.work += more.work
}

// MaxTried is the most work that an evaluator does, as Plan.Work counts it. After that it
// tries nothing more. It counts work, not time, so that results are the same on every
// machine.
const MaxTried = 4_000_000

// ErrSpent is returned once an evaluator has reached MaxTried.
var ErrSpent = errors.New("the search has reached its limit")

// NewEvaluator returns an evaluator without any results yet.
func NewEvaluator() *Evaluator { return evaluator(new(expense)) }

func evaluator(spent *expense) *Evaluator {
	return &Evaluator{
		stages: map[stage]*Plan{}, ids: map[string]int{}, pairs: map[[2]int]bool{}, found: map[[2]int]Problems{},
		bands: map[string]chosen{}, spent: spent,
	}
}

// Afresh returns an evaluator without any results, for jobs with another rack or other
// limits. Its work counts towards the MaxTried of this one.
func (e *Evaluator) Afresh() *Evaluator { return evaluator(e.spent) }

// Relimited returns an evaluator without any results, for jobs with other limits of what
// is found: nothing of how they are cut may differ, polish neither. What this evaluator
// has cut is not cut again, though its work counts towards MaxTried once more: a bound
// that depends on what happens to be kept would be hard to reproduce.
func (e *Evaluator) Relimited() *Evaluator {
	fresh := e.Afresh()
	fresh.cut = e
	return fresh
}

// Spent reports whether the evaluator has reached MaxTried.
func (e *Evaluator) Spent() bool { return e.spent.work > MaxTried }

// Spend counts work that was done elsewhere.
func (e *Evaluator) Spend(work int) { e.spent.work += work }

// Grooves returns the number of grooves cut so far, a bent one counted as several.
func (e *Evaluator) Grooves() int { return e.spent.grooves }

// TryOn drafts a job on a face of one of its blanks. Ask for a base only where the job has
// one. It returns ErrSpent once MaxTried is reached.
func (e *Evaluator) TryOn(ctx context.Context, j *job.Job, blank *glass.Blank, face job.Face) (*Draft, error) {
	if e.Spent() {
		return nil, ErrSpent
	}
	return e.DraftOn(ctx, j, blank, face)
}

// DraftOn is TryOn even past MaxTried. The error says why the job can't be laid out, or is the
// context's.
func (e *Evaluator) DraftOn(ctx context.Context, j *job.Job, blank *glass.Blank, face job.Face) (*Draft, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	// Every motif is sized on every blank, and looked up together with every other.
	e.spent.work += len(j.Motifs) * (len(j.Blanks) + len(j.Motifs)/8 + 8) / 4
	at := faceOf{blank, face}
	a, err := e.arrange(j, at)
	if err != nil {
		return nil, err
	}
	p, err := e.bare(j, at, a.band)
	if err != nil {
		return nil, err
	}
	d := e.draft(ctx, p, a.sized(j))
	return d, d.drawable()
}

// Clears reports whether nothing is found on any of a job's blanks. It says no once the
// context is done or MaxTried is reached: see Spent.
func (e *Evaluator) Clears(ctx context.Context, j *job.Job) bool {
	for _, blank := range j.Blanks {
		for _, face := range j.Cut() {
			d, err := e.TryOn(ctx, j, blank, face)
			if err != nil || !d.Clears() {
				return false
			}
		}
	}
	return true
}

// ClearsMotif is Clears for the findings that concern one motif.
func (e *Evaluator) ClearsMotif(ctx context.Context, j *job.Job, i int) bool {
	for _, blank := range j.Blanks {
		d, err := e.TryOn(ctx, j, blank, j.Motifs[i].Face)
		if err != nil || !d.ClearsAlone(i) {
			return false
		}
		for k := range d.Motifs {
			if ctx.Err() != nil || !d.ClearsPair(i, k) {
				return false
			}
		}
	}
	return true
}

// stage is what all the motifs of a draft stand on: a band of a blank, divided.
type stage struct {
	faceOf
	band            job.Band
	repeats, period int
}

// bare returns a job's plan without cuts. Surface and paper are computed once for each
// stage.
func (e *Evaluator) bare(j *job.Job, face faceOf, band job.Band) (*Plan, error) {
	at := stage{face, band, j.LayoutOf(face.face).Repeats, period(j, face.face)}
	base, ok := e.stages[at]
	if !ok {
		var err error
		if base, err = bare(j, face, band); err != nil {
			return nil, err
		}
		const fitted = 80 // for a cone; gores, where needed, take little more
		e.spent.work += fitted
		e.stages[at] = base
	}
	p := *base
	p.Job, p.sized = j, j.Motifs
	return &p, nil
}

// placedMotif is a motif on a stage: its toll, or why it can't be drawn there; its cuts in
// one period once they are cut; and the results of checking it alone.
type placedMotif struct {
	toll         toll
	wrong        error
	figure       *figure // placed, before it is cut; may be nil
	cuts         []Cut
	price        expense      // of cutting them
	like         *placedMotif // the same motif, of another evaluator; may be nil
	clear, known bool
	kinds        []Kind   // nil until they are looked for
	problems     Problems // likewise
}

// isCut reports whether the motif's cuts are there, here or at the motif that it is like.
func (s *placedMotif) isCut() bool { return s.cuts != nil || s.like != nil && s.like.cuts != nil }

// draft makes a draft of a plan. The same motif on the same stage gets the same id.
func (e *Evaluator) draft(ctx context.Context, p *Plan, sized []job.Motif) *Draft {
	p.sized = sized
	d := &Draft{ctx: ctx, of: e, Plan: p, Motifs: sized, ids: make([]int, len(sized))}
	stage := keyOf(slices.Index(p.Job.Blanks, p.Blank), int(p.Face), p.Repeats, p.layout().Bare, p.Period, p.Band)
	for i, m := range sized {
		k := stage.and(i, m)
		for m.Inside > 0 {
			m = sized[m.Inside-1]
			k = k.and(m)
		}
		id, ok := e.ids[string(k)]
		if !ok {
			id = len(e.placed)
			e.ids[string(k)] = id
			s := e.stands(p, i)
			if e.cut != nil {
				if at, ok := e.cut.ids[string(k)]; ok {
					s.like = e.cut.placed[at]
				}
			}
			e.placed = append(e.placed, s)
		}
		d.ids[i] = id
	}
	return d
}

// stands draws a motif to see whether that is possible, and what its toll is.
func (e *Evaluator) stands(p *Plan, i int) *placedMotif {
	if !p.carries(i) { // it has no cuts here, so nothing is found on it
		return &placedMotif{cuts: []Cut{}, known: true, clear: true, problems: Problems{}}
	}
	d, err := p.drawing(i)
	e.spent.work += 2 + len(d.cuts)
	if err != nil {
		return &placedMotif{wrong: err}
	}
	return &placedMotif{toll: p.toll(i, d)}
}

// LayOn lays a job out on a face of a blank, with all of its cuts, without checking it.
func (e *Evaluator) LayOn(ctx context.Context, j *job.Job, blank *glass.Blank, face job.Face) (*Plan, error) {
	p, _, err := new(Editor).lay(ctx, j, faceOf{blank, face}, 0)
	if err == nil {
		e.Spend(int(p.Work()))
	}
	return p, err
}
