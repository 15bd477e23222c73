package search

import (
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// hatched returns a field of diamonds with flat tops, and its hatching alone, in the
// same place or inside it.
func hatched(t *testing.T, inside bool) *job.Job {
	t.Helper()
	field := motif(t, "diamond", motifs.Values{"across": 5, "up": 7, "mitres": 2}, depth(0.4))
	hatch := motif(t, "diamond", motifs.Values{"across": 5, "up": 7, "mitres": 2, "hatch": 2, "alone": 1}, depth(0.3), with(fine))
	none := 0.0
	field.Land, field.Clear, hatch.Land, hatch.Clear = &none, &none, &none, &none
	if inside {
		hatch.Inside = 1
	}
	j := jobOn(straight(t), 4, field, hatch)
	j.Limits.Reach = 0.5
	return j
}

// The lines of the hatching are too short for their depth: with fewer diamonds they are
// longer. What cures that keeps the two in step: as many diamonds, in the same place.
func TestHatchingGoesWithItsField(t *testing.T) {
	for _, inside := range []bool{false, true} {
		j := hatched(t, inside)
		p := planned(t, j)
		if len(p.Findings) == 0 {
			t.Fatal("nothing found")
		}
		divided := 0
		inStep := func(what string, after *job.Job, changes []job.Change) {
			a, b := after.Motifs[0], after.Motifs[1]
			for _, key := range []string{"across", "up", "mitres", "flat"} {
				if a.Values[key] != b.Values[key] {
					t.Errorf("inside %v: %s %q puts %s out of step", inside, what, changesOf(j, changes), key)
				}
			}
			if !inside && !samePlace(a, b) || inside && !fills(b) {
				t.Errorf("inside %v: %s %q moves the hatching out of its field", inside, what, changesOf(j, changes))
			}
			if slices.ContainsFunc(changes, func(c job.Change) bool { return c.Key == "across" || c.Key == "up" }) {
				divided++
			}
		}
		for _, g := range mergedGroups(p) {
			cure := g.Worst().Cure
			inStep("the cure", changed(j, cure), cure.Changes)
			for _, or := range cure.Or {
				inStep("else", j.With(or.Changes...), or.Changes)
			}
		}
		f, err := NewFit(t.Context(), j)
		if err != nil || len(f.Offers) == 0 {
			t.Fatalf("%v, no offers", err)
		}
		for _, o := range f.Offers {
			inStep("the offer", o.Job, o.Changes)
		}
		if divided == 0 {
			t.Errorf("inside %v: neither a cure nor an offer has fewer diamonds", inside)
		}
	}
}
