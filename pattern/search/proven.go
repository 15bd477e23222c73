package search

import (
	"cmp"
	"math"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// proven is a candidate that clears, what it costs, and what it brings with it.
type proven struct {
	candidate
	cost   float64
	brings []pattern.Brought
}

// mildest returns from each series the mildest candidate that clears, the cheapest
// first.
func (s *cureSearch) mildest(g pattern.Group, list []series) []proven {
	var all []proven
	for _, one := range together(s.Job, list) {
		if r, ok := s.gentlest(g, one); ok {
			all = append(all, r)
		}
	}
	other := func(r proven) int { // a wheel with another edge is the last to take
		if pattern.OtherEdge(s.Job, r.candidate) {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(all, func(a, b proven) int { return cmp.Or(cmp.Compare(other(a), other(b)), cmp.Compare(a.cost, b.cost)) })
	return all
}

// gentlest returns the mildest candidate of a series that clears a group, or where that
// brings something with it, one further on that doesn't.
func (s *cureSearch) gentlest(g pattern.Group, all series) (proven, bool) {
	high := gallop(len(all), func(n int) bool { return s.clears(g, all[n]) })
	if high == len(all) {
		return proven{}, false
	}
	best, found := s.prove(g, all[high])
	clean := func() bool { return found && len(best.brings) == 0 }
	try := func(n int) bool {
		if s.clears(g, all[n]) {
			if r, ok := s.prove(g, all[n]); ok && (!found || len(r.brings) == 0) {
				best, found = r, true
			}
		}
		return clean()
	}
	// In longer and longer strides, and then between the last two.
	last := high
	for _, further := range []int{1, 2, 3, 6, 12, 16, 24} {
		n := high + further
		if n >= len(all) || clean() {
			break
		}
		if try(n) {
			mildest := best
			for between := last + 1; between < n; between++ {
				if best, found = (proven{}), false; try(between) {
					return best, true
				}
			}
			return mildest, true
		}
		last = n
	}
	return best, found
}

// prove finds what a candidate that clears a group brings with it. It is none where
// another blank of the set can't be laid out then.
func (s *cureSearch) prove(g pattern.Group, c candidate) (proven, bool) {
	brings, ok := s.brings(g, s.Evaluator, s.Job.With(c...))
	return proven{c, s.cost(c), brings}, ok
}

// brings returns what is found on a changed job that isn't on this one, here and
// on the other blanks of the set: there, the group's own kind counts too. What is new
// comes before what there is more of.
func (s *cureSearch) brings(g pattern.Group, e *pattern.Evaluator, after *job.Job) ([]pattern.Brought, bool) {
	others := slices.DeleteFunc(slices.Clone(s.Job.Blanks), func(b *glass.Blank) bool { return b == s.Blank })
	var all []pattern.Brought
	for _, b := range append([]*glass.Blank{s.Blank}, others...) {
		d, err := e.TryOn(s.ctx, after, b, s.Face)
		if err != nil {
			return nil, false
		}
		had, own, name := s.had, g, ""
		if b != s.Blank {
			had, own, name = pattern.Problems{}, pattern.Group{Kind: -1}, b.Name
			if before, err := s.TryOn(s.ctx, s.Job, b, s.Face); err == nil {
				had = before.Problems()
			}
		}
		for _, brought := range d.Problems().Beyond(had, own.Kind, own.Motifs) {
			brought.Blank = name
			all = append(all, brought)
		}
	}
	slices.SortStableFunc(all, func(a, b pattern.Brought) int {
		switch {
		case a.More == b.More:
			return 0
		case b.More:
			return -1
		}
		return 1
	})
	return all, true
}

// cost returns what a candidate takes from the look: the sum of the shares it
// changes, where a move is a share of the band or the repeat, and another wheel
// or word has a price of its own.
func (s *cureSearch) cost(c candidate) float64 {
	const wheel, word = 0.25, 0.2
	total := 0.0
	for _, change := range c {
		has, _ := change.Has(s.Job)
		part := 1.0
		if change.Part != "" {
			part = owner{change.Motif, change.Part}.share(s.before.Cuts(change.Motif))
		}
		switch change.Price(s.Job) {
		case job.ByShare:
			total += part * math.Abs(change.Value-has.Value) / max(has.Value, 1e-9)
		case job.ByHeight:
			total += 1 - (change.Band.Top-change.Band.Foot)/(s.Band.Top-s.Band.Foot)
		case job.ByMove:
			to := s.before.Motifs[change.Motif]
			was := s.Box(to)
			to.X, to.Y = change.At[0], change.At[1]
			is := s.Box(to)
			total += math.Abs(is.Middle.X-was.Middle.X)/is.Repeat + math.Abs(is.Middle.Y-was.Middle.Y)/is.Band
		case job.ByRange:
			p, _ := s.Job.Motifs[change.Motif].Kind.Param(change.Key)
			total += math.Abs(change.Value-has.Value) / (p.Max - p.Min)
		case job.ByWheel:
			total += part * wheel
		case job.ByWord:
			total += word
		}
	}
	return total
}
