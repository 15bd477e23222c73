package pattern

import (
	"cmp"
	"slices"
)

// spot is what findings have in common that are the same: their kind and their
// cuts, the lower id first, and none in the second place where there is one.
type spot struct {
	kind  Kind
	share bool
	cuts  [2]int
}

func newSpot(kind Kind, share bool, ids ...int) spot {
	s := spot{kind: kind, share: share}
	copy(s.cuts[:], ids)
	if len(ids) == 2 && ids[1] < ids[0] {
		s.cuts = [2]int{ids[1], ids[0]}
	}
	return s
}

// reading is what was measured at a spot. A close one may be missing on the
// other side: the limit lies within its tolerance.
type reading struct {
	measured, tolerance float64
	close               bool
	across              bool // between two copies of a motif
}

// tally holds the readings of each spot. One has several where two cuts come
// near one another on both sides of the glass.
type tally map[spot][]reading

// add notes what was measured, if it misses what is wanted or nearly does.
func (t tally) add(s spot, measured, miss, tolerance float64) {
	if miss > -tolerance {
		t[s] = append(t[s], reading{measured: measured, tolerance: tolerance, close: miss < tolerance})
	}
}

// addAcross adds what lies between two copies of a motif, if it is.
func (t tally) addAcross(across bool, s spot, measured, miss, tolerance float64) {
	n := len(t[s])
	t.add(s, measured, miss, tolerance)
	if len(t[s]) > n {
		t[s][n].across = across
	}
}

// once removes what is reported already: of two lines that crowd within a motif's
// copy, and run on, that they do so across the repeat's edge; and it calls all
// off that is too near between two copies of which some cuts touch.
func (t tally) once(p *Plan) {
	cut := func(id int) Cut { return p.Cuts[(id-1)%len(p.Cuts)] }
	// The two cuts by their motifs and their numbers there, in whichever repeat.
	two := func(a, b Cut) [4]int {
		number := func(c Cut) int {
			return c.ID - slices.IndexFunc(p.Cuts, func(o Cut) bool { return o.Motif == c.Motif && o.Repeat == c.Repeat })
		}
		if b.Motif < a.Motif || b.Motif == a.Motif && number(b) < number(a) {
			a, b = b, a
		}
		return [4]int{a.Motif, number(a), b.Motif, number(b)}
	}
	within, off := map[[4]int]bool{}, map[int]bool{}
	for s, all := range t {
		if s.cuts[1] == 0 || s.share {
			continue
		}
		for _, r := range all {
			a, b := cut(s.cuts[0]), cut(s.cuts[1])
			if s.kind == Off {
				off[a.Motif] = true
			} else if !r.across && !r.close {
				within[two(a, b)] = true
			}
		}
	}
	for _, s := range spots(t) {
		if s.cuts[1] == 0 || s.share {
			continue
		}
		a, b := cut(s.cuts[0]), cut(s.cuts[1])
		told := within[two(a, b)] && a.RunsOn && b.RunsOn
		all := t[s]
		delete(t, s)
		for _, r := range all {
			to := s
			if r.across && a.Motif == b.Motif && off[a.Motif] {
				to.kind = Off
			}
			if !r.across || !told {
				t[to] = append(t[to], r)
			}
		}
	}
}

func spots(tallies ...tally) []spot {
	var all []spot
	for _, t := range tallies {
		for s := range t {
			all = append(all, s)
		}
	}
	slices.SortFunc(all, func(a, b spot) int {
		kind := cmp.Compare(a.kind, b.kind)
		if kind == 0 && a.share != b.share {
			kind = 1
			if b.share {
				kind = -1
			}
		}
		return cmp.Or(kind, slices.Compare(a.cuts[:], b.cuts[:]))
	})
	return slices.Compact(all)
}

// agree compares the readings of a spot with those wanted there.
func agree(got, want []reading) bool {
	byMeasure := func(a, b reading) int { return cmp.Compare(a.measured, b.measured) }
	slices.SortFunc(got, byMeasure)
	slices.SortFunc(want, byMeasure)
	want = slices.Clone(want)
	for len(want) > len(got) {
		i := slices.IndexFunc(want, func(r reading) bool { return r.close })
		if i < 0 {
			return false
		}
		want = slices.Delete(want, i, i+1)
	}
	return slices.EqualFunc(got, want, func(a, b reading) bool {
		return near(a.measured, b.measured, b.tolerance)
	})
}

// roundGlass carries the plan's findings round the glass.
func roundGlass(p *Plan) tally {
	all := tally{}
	turns := p.Repeats / p.Period
	for _, f := range p.Findings {
		recurs := turns
		if len(f.Cuts) == 0 {
			recurs = 1 // it is the glass that is wrong
		}
		for turn := range recurs {
			ids := slices.Clone(f.Cuts)
			for i := range ids {
				ids[i] = (ids[i]-1+turn*len(p.Cuts))%(turns*len(p.Cuts)) + 1
			}
			s := newSpot(f.Kind, f.Share, ids...)
			all[s] = append(all[s], reading{measured: f.Measured})
		}
	}
	return all
}
