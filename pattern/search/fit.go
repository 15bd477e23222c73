package search

import (
	"cmp"
	"context"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Fit is what can be done about a job that doesn't clear; or, of one that
// clears, what it has room for.
type Fit struct {
	Job   *job.Job
	Clear bool
	// Short says that the search came to its end before all was tried.
	Short bool
	// Offers are the changes, the one that costs the look least first; of a job
	// that clears, the one that adds most. With each the whole job clears.
	Offers []Offer
	// Wheels are wheels to buy: with all of them the job clears. They are sought where
	// there is nothing to offer.
	Wheels []NewWheel
}

// Offer is changes with which a job clears, and what they do to its look.
type Offer struct {
	Changes []job.Change
	Job     *job.Job // with the changes made
	Cost
}

// maxOffers is how many offers are made: as many as can be compared at a glance.
const maxOffers = 9

// NewFit looks for the changes that make a job clear on all of its blanks, or
// for what there is room for. The error says why the job can't be laid out, or is
// the context's.
func NewFit(ctx context.Context, j *job.Job) (*Fit, error) {
	r, err := Resolve(ctx, j)
	if err != nil {
		return nil, err
	}
	j = r.Job
	f := newFitSearch(ctx, j)
	for _, b := range j.Blanks {
		seen, band, err := f.look(j, b)
		if err != nil {
			return nil, err
		}
		f.before = append(f.before, seen)
		if b == j.Blanks[0] {
			f.band = band
		}
	}
	problems := f.problemsOn(j, f.DraftOn) // however much it takes to see
	if f.clear = len(problems) == 0; f.clear {
		f.room()
	} else {
		f.mend(problems)
	}
	var wheels []NewWheel
	if !f.clear && len(f.offers) == 0 {
		wheels = f.newWheels()
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	fit := &Fit{Job: j, Clear: f.clear, Short: f.Spent(), Offers: f.offers, Wheels: wheels}
	slices.SortStableFunc(fit.Offers, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(a.Score, b.Score), cmp.Compare(len(a.Changes), len(b.Changes)))
	})
	fit.Offers = withoutTwins(j, f.band, fit.Offers)
	fit.Offers = fit.Offers[:min(len(fit.Offers), maxOffers)]
	return fit, nil
}

// fitSearch looks for what makes one job clear. It lasts as long as one call that a
// context was given to.
type fitSearch struct {
	*pattern.Evaluator
	ctx    context.Context
	job    *job.Job
	before []looks  // on each blank
	band   job.Band // of the first
	clear  bool     // whether the job clears as it is
	offers []Offer
}

func newFitSearch(ctx context.Context, j *job.Job) *fitSearch {
	return &fitSearch{Evaluator: pattern.NewEvaluator(), ctx: ctx, job: j}
}

// clears reports whether a job clears on all of its blanks.
func (f *fitSearch) clears(j *job.Job) bool { return f.Clears(f.ctx, j) }

// offer adds an offer if with it the job clears, and reports whether it does.
// Counts that are to be the most are found anew with it, as they will be when it
// is read from a file.
func (f *fitSearch) offer(changes ...job.Change) bool {
	changes = merged(f.job, changes)
	after := f.job.With(changes...)
	if asksMost(after) {
		r, err := resolve(f.ctx, f.Afresh(), after)
		if err != nil {
			return false
		}
		after = r.Job
	}
	if len(changes) == 0 || !f.clears(after) {
		return false
	}
	o := Offer{Changes: changes, Job: after}
	for _, known := range f.offers {
		if slices.Equal(known.Changes, changes) {
			return true
		}
	}
	f.weigh(&o)
	f.offers = append(f.offers, o)
	return true
}

// merged returns changes with only the last for each value, and without those
// that change nothing.
func merged(j *job.Job, changes []job.Change) []job.Change {
	var all []job.Change
	for n, c := range changes {
		later := slices.ContainsFunc(changes[n+1:], func(d job.Change) bool { return d.Motif == c.Motif && d.Key == c.Key })
		if !later && c.Says(j) != c.Says(j.With(c)) {
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b job.Change) int { return cmp.Compare(a.Motif, b.Motif) })
	return all
}
