package pattern

import (
	"context"
	"errors"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Evaluator answers, of many jobs that differ little from one another, what is
// found on them. It finds what a check of the whole plan would find: what one motif
// does alone, and what two do to one another. Each of these is looked for once, and
// kept: what a change leaves as it was is neither laid out nor measured again.
//
//	e := pattern.NewEvaluator()
//	d, err := e.Try(ctx, j, j.Blanks[0]) // nothing is cut yet
//	clear := d.Clears()             // cuts what it has to
//
// All of its jobs have the same blanks, the same rack and the same limits. It is for
// one goroutine at a time.
type Evaluator struct {
	stages map[stage]*Plan
	ids    map[string]int
	placed []*placedMotif // by id
	pairs  map[[2]int]bool
	found  map[[2]int]Problems // between two motifs, by their ids
	bands  map[string]chosen
	spent  *expense
}

// expense is what has been tried, by an evaluator and those made from it.
type expense struct {
	grooves int // that were cut: nearly all of the time goes there
	work    int // what was measured: see MaxTried
}

// MaxTried bounds what an evaluator may measure, in work: see Plan.Work. What is past
// it is not tried. It counts work and not time, so that the answers are the same
// everywhere.
const MaxTried = 5_000_000

// ErrSpent says that an evaluator has measured all it may.
var ErrSpent = errors.New("more has been tried than a search may")

// NewEvaluator returns an evaluator that knows of nothing yet.
func NewEvaluator() *Evaluator { return evaluator(new(expense)) }

func evaluator(spent *expense) *Evaluator {
	return &Evaluator{
		stages: map[stage]*Plan{}, ids: map[string]int{}, pairs: map[[2]int]bool{}, found: map[[2]int]Problems{},
		bands: map[string]chosen{}, spent: spent,
	}
}

// Afresh returns an evaluator that knows of nothing yet, for jobs with another rack
// or other limits. What is tried on it counts as tried on this one.
func (e *Evaluator) Afresh() *Evaluator { return evaluator(e.spent) }

// Spent reports whether all has been measured that may be.
func (e *Evaluator) Spent() bool { return e.spent.work > MaxTried }

// Spend counts work that was done elsewhere.
func (e *Evaluator) Spend(work int) { e.spent.work += work }

// Grooves returns how many grooves were cut so far, a bent one counted as several.
func (e *Evaluator) Grooves() int { return e.spent.grooves }

// Try drafts a job on one of its blanks, unless too much has been tried already.
func (e *Evaluator) Try(ctx context.Context, j *job.Job, blank *glass.Blank) (*Draft, error) {
	if e.Spent() {
		return nil, ErrSpent
	}
	return e.Draft(ctx, j, blank)
}

// Draft drafts a job on one of its blanks, whatever was tried. The error says why it
// can't be laid out, or is the context's.
func (e *Evaluator) Draft(ctx context.Context, j *job.Job, blank *glass.Blank) (*Draft, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	// Every motif is sized on every blank, and looked up beside every other.
	e.spent.work += len(j.Motifs) * (len(j.Blanks) + len(j.Motifs)/8 + 8) / 4
	band, sized, err := e.share(j, blank)
	if err != nil {
		return nil, err
	}
	p, err := e.bare(j, blank, band)
	if err != nil {
		return nil, err
	}
	d := e.draft(ctx, p, sized)
	return d, d.drawable()
}

// Clears reports whether nothing is found on any of a job's blanks. Where the context
// is done, or too much has been tried, it says no: see Spent.
func (e *Evaluator) Clears(ctx context.Context, j *job.Job) bool {
	for _, blank := range j.Blanks {
		d, err := e.Try(ctx, j, blank)
		if err != nil || !d.Clears() {
			return false
		}
	}
	return true
}

// ClearsMotif is Clears of all that has to do with one motif.
func (e *Evaluator) ClearsMotif(ctx context.Context, j *job.Job, i int) bool {
	for _, blank := range j.Blanks {
		d, err := e.Try(ctx, j, blank)
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

// stage is what all the motifs of a draft stand on.
type stage struct {
	blank           *glass.Blank
	band            job.Band
	repeats, period int
}

// bare returns a job's plan without a cut, whose surface and paper are reckoned
// once for each stage.
func (e *Evaluator) bare(j *job.Job, blank *glass.Blank, band job.Band) (*Plan, error) {
	at := stage{blank, band, j.Layout.Repeats, period(j)}
	base, ok := e.stages[at]
	if !ok {
		var err error
		if base, err = bare(j, blank, band); err != nil {
			return nil, err
		}
		const fitted = 80 // a cone; its gores, where they are asked for, not much more
		e.spent.work += fitted
		e.stages[at] = base
	}
	p := *base
	p.Job, p.sized = j, j.Motifs
	return &p, nil
}

// placedMotif is a motif on a stage: what it comes to, or why it can't be drawn there;
// its cuts in one period once they are cut, and what is known of them by themselves.
type placedMotif struct {
	toll         toll
	wrong        error
	cuts         []Cut
	clear, known bool
	kinds        []Kind   // nil until they are looked for
	problems     Problems // likewise
}

// draft finds the ids of a plan's motifs: the same for the same motif on the
// same stage.
func (e *Evaluator) draft(ctx context.Context, p *Plan, sized []job.Motif) *Draft {
	p.sized = sized
	d := &Draft{ctx: ctx, of: e, Plan: p, Motifs: sized, ids: make([]int, len(sized))}
	b := number(nil, float64(slices.Index(p.Job.Blanks, p.Blank)), float64(p.Repeats), float64(p.Period), p.Band.Foot, p.Band.Top)
	for i, m := range sized {
		about := describe(slices.Clone(b), i, m)
		for m.Inside > 0 {
			m = sized[m.Inside-1]
			about = describe(about, -1, m)
		}
		key := string(about)
		id, ok := e.ids[key]
		if !ok {
			id = len(e.placed)
			e.ids[key] = id
			e.placed = append(e.placed, e.stands(p, i))
		}
		d.ids[i] = id
	}
	return d
}

// stands draws a motif to see whether it can be, and what it comes to.
func (e *Evaluator) stands(p *Plan, i int) *placedMotif {
	d, err := p.drawing(i)
	e.spent.work += 2 + len(d.cuts)
	if err != nil {
		return &placedMotif{wrong: err}
	}
	return &placedMotif{toll: p.toll(i, d)}
}

// Lay lays a job out on a blank, with all of its cuts, but does not check it.
func (e *Evaluator) Lay(ctx context.Context, j *job.Job, blank *glass.Blank) (*Plan, error) {
	p, err := lay(ctx, j, blank)
	if err == nil {
		e.Spend(int(p.Work()))
	}
	return p, err
}
