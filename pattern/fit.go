package pattern

import (
	"cmp"
	"fmt"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Fit is what can be done about a job that doesn't clear; or, of one that
// clears, what it has room for.
type Fit struct {
	Job   *job.Job
	Clear bool
	// Offers are the changes, the one that costs the look least first; of a job
	// that clears, the one that adds most. With each the whole job clears.
	Offers []Offer
}

// mostOffers is how many offers are made: as many as can be compared at a glance.
const mostOffers = 9

// NewFit looks for the changes that make a job clear on all of its blanks, or
// for what there is room for.
func NewFit(j *job.Job) (*Fit, error) {
	j = Resolve(j)
	f := &fitter{job: j, trials: newTrials()}
	for _, b := range j.Blanks {
		tr, err := f.trials.on(j, b)
		if err != nil {
			return nil, err
		}
		f.before = append(f.before, look(tr))
	}
	troubles := f.troubles(j)
	if f.clear = len(troubles) == 0; f.clear {
		f.room()
	} else {
		f.singles(troubles)
		f.combined()
	}
	fit := &Fit{Job: j, Clear: f.clear, Offers: f.offers}
	slices.SortStableFunc(fit.Offers, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(a.Score, b.Score), cmp.Compare(len(a.Changes), len(b.Changes)))
	})
	fit.Offers = fit.Offers[:min(len(fit.Offers), mostOffers)]
	return fit, nil
}

// mostEffort is how many grooves are cut in search of alternatives to what was
// found: what takes about a fifth of a second.
const mostEffort = 2500

// fitter looks for what makes one job clear.
type fitter struct {
	job    *job.Job
	trials *trials
	before []looks // on each blank
	clear  bool    // whether the job clears as it is
	offers []Offer
}

// trouble is a motif that doesn't clear by itself, or two that don't clear one
// another; {-1, -1} is the glass, which leaves the cone of its band.
type trouble [2]int

// has reports whether a trouble has to do with a motif.
func (t trouble) has(i int) bool { return t[0] == i || t[1] == i }

// troubles lists what stands in a job's way on any of its blanks, and the glass
// where it can't be laid out at all.
func (f *fitter) troubles(j *job.Job) []trouble {
	var all []trouble
	add := func(t trouble, clear bool) {
		if !clear && !slices.Contains(all, t) {
			all = append(all, t)
		}
	}
	for _, b := range j.Blanks {
		tr, err := f.trials.on(j, b)
		if err != nil {
			add(trouble{-1, -1}, false)
			continue
		}
		add(trouble{-1, -1}, len(tr.plan.uneven()) == 0)
		for i := range tr.motifs {
			add(trouble{i, i}, tr.alone(i))
			for k := range i {
				add(trouble{k, i}, tr.pair(k, i))
			}
		}
	}
	return all
}

// offer adds an offer if with it the job clears, and reports whether it does.
// Counts that are to be the most are found anew with it, as they will be when it
// is read from a file.
func (f *fitter) offer(changes ...Change) bool {
	changes = merged(f.job, changes)
	after := changedBy(f.job, changes...)
	if asksMost(after) {
		for i := range after.Motifs {
			after.Motifs[i].Found = false
		}
		after = Resolve(after)
	}
	if len(changes) == 0 || !f.trials.clears(after) {
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

func asksMost(j *job.Job) bool {
	return slices.ContainsFunc(j.Motifs, func(m job.Motif) bool { return len(m.Most) > 0 })
}

// merged returns changes with only the last for each value, and without those
// that change nothing.
func merged(j *job.Job, changes []Change) []Change {
	var all []Change
	for n, c := range changes {
		later := slices.ContainsFunc(changes[n+1:], func(d Change) bool { return d.Motif == c.Motif && d.Key == c.Key })
		if !later && c.Says(j) != c.Says(changedBy(j, c)) {
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b Change) int { return cmp.Compare(a.Motif, b.Motif) })
	return all
}

// singles offers from each row the mildest step that clears everything: of a
// motif that has to do with every trouble, and of the layout.
func (f *fitter) singles(troubles []trouble) {
	for i := range f.job.Motifs {
		if slices.ContainsFunc(troubles, func(t trouble) bool { return !t.has(i) }) {
			continue
		}
		for _, r := range rows(f.job, i) {
			f.first(r)
		}
	}
	for _, r := range f.layoutRows() {
		f.first(r)
	}
}

// layoutRows returns the layout's rows about the band the first blank is given.
func (f *fitter) layoutRows() []row {
	band, _, err := share(f.job, f.job.Blanks[0])
	if err != nil {
		return nil
	}
	return layoutRows(f.job, band)
}

// first offers the first step of a row that clears everything.
func (f *fitter) first(r row) {
	for _, step := range r {
		if f.trials.clears(changedBy(f.job, step...)) && f.offer(step...) {
			return
		}
	}
}

// combined offers sets of changes, each found by mending one motif after the
// other: with one kind of change as far as it serves, or with what costs least;
// then with another step than the cheapest for one of the motifs; and on a
// layout that already has fewer troubles.
func (f *fitter) combined() {
	had := len(f.troubles(f.job))
	if !f.uneven(f.job) {
		for _, kind := range []string{"", "count", "depth", "wheel", "size"} {
			f.mend(f.job, nil, kind, -1, 0)
		}
		for turn := range min(had, 4) {
			for other := 1; f.trials.effort < mostEffort && f.mend(f.job, nil, "", turn, other); other++ {
			}
		}
	}
	for _, r := range f.layoutRows() {
		even := slices.IndexFunc(r, func(s []Change) bool { return !f.uneven(changedBy(f.job, s...)) })
		for n, step := range r {
			if n != even && n%5 != 1 { // neighbours lead to much the same
				continue
			}
			j := changedBy(f.job, step...)
			if n != even && f.uneven(j) || f.trials.effort > mostEffort && len(f.offers) > 0 {
				continue
			}
			if left := len(f.troubles(j)); left > 0 && left < had {
				f.mend(j, step, "", -1, 0)
			}
		}
	}
}

// uneven reports whether a blank of a job leaves the cone of its band, or can't
// be laid out at all: no change to a motif mends that.
func (f *fitter) uneven(j *job.Job) bool {
	return slices.ContainsFunc(j.Blanks, func(b *glass.Blank) bool {
		tr, err := f.trials.on(j, b)
		return err != nil || len(tr.plan.uneven()) > 0
	})
}

// mend mends a job's motifs one after the other, the one with most troubles
// first, and offers what it comes to. In one of its turns it takes another step
// than the best: the next best, and so on; it reports whether there is such a one.
func (f *fitter) mend(j *job.Job, changes []Change, kind string, turn, other int) bool {
	changes = slices.Clone(changes)
	for n := range 2*len(f.job.Motifs) + 2 { // a motif may need to be mended twice
		troubles := f.troubles(j)
		if len(troubles) == 0 {
			f.offer(changes...)
			return n > turn
		}
		steps := f.steps(j, troubles, kind)
		take := 0
		if n == turn {
			take = other
		}
		if take >= len(steps) {
			return n > turn
		}
		j = changedBy(j, steps[take].Changes...)
		changes = append(changes, steps[take].Changes...)
	}
	return true
}

// steps returns the steps that clear the motif with most troubles of all of
// them, from each row the mildest, and the cheapest first, but those of the kind
// asked for before the others. If no step does, it returns those that leave the
// fewest troubles on the glass.
func (f *fitter) steps(j *job.Job, troubles []trouble, kind string) []Offer {
	worst, most := -1, 0
	for i := range j.Motifs {
		n := 0
		for _, t := range troubles {
			if t.has(i) {
				n++
			}
		}
		if n > most {
			worst, most = i, n
		}
	}
	if worst < 0 {
		return nil
	}
	var clear, fewer []Offer
	fewest := len(troubles)
	for _, r := range rows(j, worst) {
		n := slices.IndexFunc(r, func(s []Change) bool { return f.trials.clearsMotif(changedBy(j, s...), worst) })
		if n >= 0 {
			clear = append(clear, f.weighed(j, r[n]))
			continue
		}
		if len(clear) > 0 || len(r) == 0 {
			continue
		}
		o := f.weighed(j, r[len(r)-1])
		if left := len(f.troubles(o.Job)); left < fewest {
			fewer, fewest = nil, left
		} else if left > fewest || left == len(troubles) {
			continue
		}
		fewer = append(fewer, o)
	}
	if len(clear) == 0 {
		clear = fewer
	}
	slices.SortStableFunc(clear, func(a, b Offer) int {
		if kind != "" && (kindOf(a) == kind) != (kindOf(b) == kind) {
			if kindOf(a) == kind {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.Score, b.Score)
	})
	return clear
}

// weighed returns a step from a job, and what the whole of it then costs.
func (f *fitter) weighed(j *job.Job, step []Change) Offer {
	o := Offer{Changes: step, Job: changedBy(j, step...)}
	f.weigh(&o)
	return o
}

// kindOf returns what kind of change a step is.
func kindOf(o Offer) string {
	switch key := o.Changes[0].Key; key {
	case "depth", "wheel":
		return key
	case "width", "height":
		return "size"
	}
	return "count"
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
