package search

import (
	"cmp"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// What a search may take: straight grooves that are cut, a thousand of which
// take about a tenth of a second.
const maxEffort = 2000

// widths is how many jobs a search follows up beside one another: only the best
// at first, so that it comes to something, and then more.
func widths() []int { return []int{1, 3, 8} }

// attempt is a job with some of its problems mended.
type attempt struct {
	Offer
	problems []pattern.Problem
}

// mend looks for sets of changes that leave no problem. It mends one problem
// after the other, each in every way there is, by the mildest candidate that does; of
// all that it comes to it follows up what costs least. So what is mild for one
// motif meets what is mild for the others. The layout stays as it is at first;
// then it is tried whether all clears on another and, if nothing was found yet,
// what is left to mend there.
func (f *fitSearch) mend(problems []pattern.Problem) {
	for _, kept := range widths() {
		f.follow([]attempt{{Offer{Job: f.job}, problems}}, kept, maxEffort)
	}
	var begun []attempt
	for _, r := range f.layoutSeries() {
		cleared, even := false, false
		for n, c := range r {
			if len(f.offers) > 0 && f.Grooves() > 2*maxEffort {
				return
			}
			j := f.job.With(c...)
			if !cleared && f.clears(j) {
				cleared = f.offer(c...)
			}
			first := !even && !f.uneven(j)
			even = even || first
			if !first && n%5 != 1 || cleared || f.uneven(j) { // neighbours lead to much the same
				continue
			}
			if left := f.problems(j); len(left) < len(problems) {
				begun = append(begun, attempt{f.weighed(f.job, c), left})
			}
		}
	}
	effort := f.Grooves() + maxEffort
	for _, kept := range widths() {
		if len(f.offers) == 0 {
			f.follow(best(begun, kept), kept, effort)
		}
	}
}

// layoutSeries returns the layout's series about the band the first blank is given.
func (f *fitSearch) layoutSeries() []series {
	var all []series
	for _, face := range f.job.Cut() {
		d, err := f.DraftOn(f.ctx, f.job, f.job.Blanks[0], face)
		if err != nil {
			return nil
		}
		all = append(all, layoutSeries(d.Plan)...)
	}
	return all
}

// follow mends one problem more of each attempt, over and over, until none has
// any left or the search has taken all it may, keeping to the best of them. One mended may bring another: so
// it goes on for a while longer than there are problems.
func (f *fitSearch) follow(all []attempt, kept, effort int) {
	longest := 0
	for _, a := range all {
		longest = max(longest, len(a.problems))
	}
	for range longest + 3 {
		var next []attempt
		for _, a := range all {
			if f.ctx.Err() != nil || f.Grooves() > effort && len(f.offers) > 0 || f.Grooves() > 2*effort {
				return
			}
			for _, b := range f.ways(a) {
				if len(b.problems) == 0 {
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
func (f *fitSearch) needed(changes []job.Change) []job.Change {
	for n := 0; n < len(changes); {
		one := changes[n]
		fewer := slices.DeleteFunc(slices.Clone(changes), func(c job.Change) bool {
			return c.Key == one.Key && c.Part == one.Part && (c.Motif == one.Motif || common(f.job, c) && partners(f.job, c.Motif, one.Motif))
		})
		if f.clears(f.job.With(fewer...)) {
			changes = fewer
		} else {
			n++
		}
	}
	return changes
}

// best returns the attempts to follow up, no more than so many: those that cost
// least, where each problem that is left is taken to cost something still.
func best(all []attempt, kept int) []attempt {
	const each = 0.02
	cost := func(a attempt) float64 { return a.Score + each*float64(len(a.problems)) }
	slices.SortStableFunc(all, func(a, b attempt) int { return cmp.Compare(cost(a), cost(b)) })
	return all[:min(len(all), kept)]
}

// ways returns what mends the first problem of an attempt: from each series of the
// motifs it has to do with the mildest candidate that leaves no more problems than
// there were without it.
func (f *fitSearch) ways(a attempt) []attempt {
	p := a.problems[0]
	var all []attempt
	for _, i := range p.Motifs {
		if i < 0 {
			continue
		}
		for _, r := range f.seriesFor(a.Job, i, p) {
			n := gallop(len(r), func(n int) bool { return f.without(a.Job.With(r[n]...), p) })
			// The mildest may bring a problem that the next ones don't.
			const further = 2
			for m := n; m < min(n+further, len(r)); m++ {
				j := a.Job.With(r[m]...)
				if left := f.problems(j); len(left) <= len(a.problems) && !slices.Contains(left, p) {
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

// seriesFor returns the series of candidates that may rid a motif of a problem, as it
// stands on the first blank.
func (f *fitSearch) seriesFor(j *job.Job, i int, p pattern.Problem) []series {
	d, err := f.TryOn(f.ctx, j, j.Blanks[0], j.Motifs[i].Face)
	if err != nil {
		return nil
	}
	return together(j, seriesFor(d, i, p))
}

// weighed returns a candidate for a job, and what the whole of it then costs.
func (f *fitSearch) weighed(j *job.Job, c candidate) Offer {
	o := Offer{Changes: c, Job: j.With(c...)}
	f.weigh(&o)
	return o
}
