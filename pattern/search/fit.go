package search

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/glass"
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
}

// mostOffers is how many offers are made: as many as can be compared at a glance.
const mostOffers = 9

// NewFit looks for the changes that make a job clear on all of its blanks, or
// for what there is room for.
func NewFit(ctx context.Context, j *job.Job) (*Fit, error) {
	r, err := Resolve(ctx, j)
	if err != nil {
		return nil, err
	}
	j = r.Job
	f := newFitter(ctx, j)
	for _, b := range j.Blanks {
		d, err := f.Draft(j, b)
		if err != nil {
			return nil, err
		}
		f.before = append(f.before, look(d))
	}
	troubles := f.troublesOn(j, f.Draft) // however much it takes to see
	if f.clear = len(troubles) == 0; f.clear {
		f.room()
	} else {
		f.mend(troubles)
	}
	if err := f.Err(); err != nil {
		return nil, fmt.Errorf("looking for changes: %w", err)
	}
	fit := &Fit{Job: j, Clear: f.clear, Short: f.Spent(), Offers: f.offers}
	slices.SortStableFunc(fit.Offers, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(a.Score, b.Score), cmp.Compare(len(a.Changes), len(b.Changes)))
	})
	fit.Offers = fit.Offers[:min(len(fit.Offers), mostOffers)]
	return fit, nil
}

// What a search may take: straight grooves that are cut, a thousand of which
// take about a tenth of a second.
const mostEffort = 2000

// widths is how many jobs a search follows up beside one another: only the best
// at first, so that it comes to something, and then more.
func widths() []int { return []int{1, 3, 8} }

// fitter looks for what makes one job clear.
type fitter struct {
	job *job.Job
	*pattern.Evaluator
	before []looks // on each blank
	clear  bool    // whether the job clears as it is
	offers []Offer
}

func newFitter(ctx context.Context, j *job.Job) *fitter {
	return &fitter{job: j, Evaluator: pattern.NewEvaluator(ctx)}
}

// trouble is a kind of finding on a motif by itself, or two motifs that don't
// clear one another; of the motifs {-1, -1} it is the glass, for which no paper
// can be made.
type trouble struct {
	motifs [2]int
	kind   pattern.Kind
}

// has reports whether a trouble has to do with a motif.
func (t trouble) has(i int) bool { return t.motifs[0] == i || t.motifs[1] == i }

// troubles lists what stands in a job's way on any of its blanks, and the glass
// where it can't be laid out at all.
func (f *fitter) troubles(j *job.Job) []trouble { return f.troublesOn(j, f.Try) }

func (f *fitter) troublesOn(j *job.Job, set func(*job.Job, *glass.Blank) (*pattern.Draft, error)) []trouble {
	var all []trouble
	add := func(a, b int, kinds ...pattern.Kind) {
		for _, k := range kinds {
			if t := (trouble{[2]int{a, b}, k}); !slices.Contains(all, t) {
				all = append(all, t)
			}
		}
	}
	for _, b := range j.Blanks {
		d, err := set(j, b)
		if err != nil || d.Plan.Ungored() {
			add(-1, -1, pattern.Uneven)
		}
		if err != nil {
			continue
		}
		for i := range d.Motifs {
			add(i, i, d.Kinds(i)...)
			for k := range i {
				if !d.ClearsPair(k, i) {
					add(k, i, pattern.Crowded)
				}
			}
		}
	}
	return all
}

// offer adds an offer if with it the job clears, and reports whether it does.
// Counts that are to be the most are found anew with it, as they will be when it
// is read from a file.
func (f *fitter) offer(changes ...job.Change) bool {
	changes = merged(f.job, changes)
	after := f.job.With(changes...)
	if asksMost(after) {
		r, err := resolve(f.Afresh(), after)
		if err != nil {
			return false
		}
		after = r.Job
	}
	if len(changes) == 0 || !f.Clears(after) {
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

// attempt is a job with some of its troubles mended.
type attempt struct {
	Offer
	troubles []trouble
}

// mend looks for sets of changes that leave no trouble. It mends one trouble
// after the other, each in every way there is, by the mildest step that does; of
// all that it comes to it follows up what costs least. So what is mild for one
// motif meets what is mild for the others. The layout stays as it is at first;
// then it is tried whether all clears on another and, if nothing was found yet,
// what is left to mend there.
func (f *fitter) mend(troubles []trouble) {
	for _, kept := range widths() {
		f.follow([]attempt{{Offer{Job: f.job}, troubles}}, kept, mostEffort)
	}
	var begun []attempt
	for _, r := range f.layoutRows() {
		cleared, even := false, false
		for n, step := range r {
			if len(f.offers) > 0 && f.Grooves() > 2*mostEffort {
				return
			}
			j := f.job.With(step...)
			if !cleared && f.Clears(j) {
				cleared = f.offer(step...)
			}
			first := !even && !f.uneven(j)
			even = even || first
			if !first && n%5 != 1 || cleared || f.uneven(j) { // neighbours lead to much the same
				continue
			}
			if left := f.troubles(j); len(left) < len(troubles) {
				begun = append(begun, attempt{f.weighed(f.job, step), left})
			}
		}
	}
	effort := f.Grooves() + mostEffort
	for _, kept := range widths() {
		if len(f.offers) == 0 {
			f.follow(best(begun, kept), kept, effort)
		}
	}
}

// layoutRows returns the layout's rows about the band the first blank is given.
func (f *fitter) layoutRows() []row {
	d, err := f.Draft(f.job, f.job.Blanks[0])
	if err != nil {
		return nil
	}
	return layoutRows(d.Plan)
}

// follow mends one trouble more of each attempt, over and over, until none has
// any left or the search has taken all it may, keeping to the best of them. One mended may bring another: so
// it goes on for a while longer than there are troubles.
func (f *fitter) follow(all []attempt, kept, effort int) {
	longest := 0
	for _, a := range all {
		longest = max(longest, len(a.troubles))
	}
	for range longest + 3 {
		var next []attempt
		for _, a := range all {
			if f.Grooves() > effort && len(f.offers) > 0 || f.Grooves() > 2*effort {
				return
			}
			for _, b := range f.ways(a) {
				if len(b.troubles) == 0 {
					f.offer(f.needed(b.Changes)...)
				} else {
					next = append(next, b)
				}
			}
		}
		all = best(next, kept)
	}
}

// needed returns of changes with which a job clears those without which it
// doesn't: a later one may have mended what an earlier one was for.
func (f *fitter) needed(changes []job.Change) []job.Change {
	for n := 0; n < len(changes); {
		if fewer := slices.Delete(slices.Clone(changes), n, n+1); f.Clears(f.job.With(fewer...)) {
			changes = fewer
		} else {
			n++
		}
	}
	return changes
}

// best returns the attempts to follow up, no more than so many: those that cost
// least, where each trouble that is left is taken to cost something still.
func best(all []attempt, kept int) []attempt {
	const each = 0.02
	cost := func(a attempt) float64 { return a.Score + each*float64(len(a.troubles)) }
	slices.SortStableFunc(all, func(a, b attempt) int { return cmp.Compare(cost(a), cost(b)) })
	return all[:min(len(all), kept)]
}

// ways returns what mends the first trouble of an attempt: from each row of the
// motifs it has to do with the mildest step that leaves no more troubles than
// there were without it.
func (f *fitter) ways(a attempt) []attempt {
	t := a.troubles[0]
	var all []attempt
	for k, i := range t.motifs {
		if i < 0 || k == 1 && t.motifs[0] == t.motifs[1] {
			continue
		}
		for _, r := range f.rows(a.Job, i, t) {
			n := gallop(len(r), func(n int) bool { return f.clearsTrouble(a.Job.With(r[n]...), t) })
			// The mildest may bring a trouble that the next ones don't.
			const further = 2
			for m := n; m < min(n+further, len(r)); m++ {
				j := a.Job.With(r[m]...)
				if left := f.troubles(j); len(left) <= len(a.troubles) && !slices.Contains(left, t) {
					b := attempt{f.weighed(a.Job, r[m]), left}
					b.Changes = merged(f.job, slices.Concat(a.Changes, r[m]))
					all = append(all, b)
					break
				}
			}
		}
	}
	return all
}

// rows returns the rows of a motif that may mend a trouble, as it stands on the
// first blank.
func (f *fitter) rows(j *job.Job, i int, t trouble) []row {
	d, err := f.Try(j, j.Blanks[0])
	if err != nil {
		return nil
	}
	return rows(d, i, t)
}

// clearsTrouble reports whether a job is without one trouble on all of its blanks.
func (f *fitter) clearsTrouble(j *job.Job, t trouble) bool {
	a, b := t.motifs[0], t.motifs[1]
	return !slices.ContainsFunc(j.Blanks, func(blank *glass.Blank) bool {
		d, err := f.Try(j, blank)
		return err != nil || a == b && slices.Contains(d.Kinds(a), t.kind) || !d.ClearsPair(a, b)
	})
}

// gallop looks for the first of n for which something holds: ahead by twice as
// far each time, and then back. It takes it that from the first on it holds for
// all; what it returns is one for which it holds, and doesn't for the one before.
// It returns n where it finds none.
func gallop(n int, holds func(int) bool) int {
	low, high := -1, n
	for ahead := 1; low < n-1; ahead *= 2 {
		at := min(low+ahead, n-1)
		if holds(at) {
			high = at
			break
		}
		low = at
	}
	if high == n {
		return n
	}
	for high-low > 1 {
		if at := (low + high) / 2; holds(at) {
			high = at
		} else {
			low = at
		}
	}
	return high
}

// uneven reports whether a blank of a job leaves the cone of its band, or can't
// be laid out at all: no change to a motif mends that.
func (f *fitter) uneven(j *job.Job) bool {
	return slices.ContainsFunc(j.Blanks, func(b *glass.Blank) bool {
		d, err := f.Try(j, b)
		return err != nil || d.Plan.Ungored()
	})
}

// weighed returns a step from a job, and what the whole of it then costs.
func (f *fitter) weighed(j *job.Job, step []job.Change) Offer {
	o := Offer{Changes: step, Job: j.With(step...)}
	f.weigh(&o)
	return o
}

// Text says what an offer changes, one change an item: "motif 1 (leaf): fronds = 15, now 20".
func (o Offer) Text(j *job.Job) []string {
	words := make([]string, len(o.Changes))
	for i, c := range o.Changes {
		was := ""
		if now := c.Says(j); now != "" {
			was = ", now " + now
		}
		words[i] = fmt.Sprintf("%s: %s = %s%s", c.Name(j), c.Key, c.Says(o.Job), was)
	}
	return words
}
