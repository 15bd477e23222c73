package search

import (
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// Of offers that change the same values the same way only the first is shown; what
// goes the other way, or takes another wheel, is another.
func TestNoTwins(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", motifs.Values{"fronds": 9}), motif(t, "fan", nil))
	fronds := func(n float64) job.Change { return job.Change{Key: "fronds", Value: n} }
	width := func(w float64) job.Change { return job.Change{Key: "width", Value: w, Fraction: true} }
	up := func(x, y float64) job.Change { return job.Change{Key: "at", At: [2]job.Measure{of(x), of(y)}} }
	wheel := func(w float64) job.Change { return job.Change{Key: "wheel", Value: w} }
	band := func(foot, top float64) job.Change {
		return job.Change{Motif: job.OfLayout, Key: "band", Band: job.Band{Foot: foot, Top: top}}
	}
	given := [][]job.Change{
		{fronds(7)}, {fronds(6)}, {fronds(12)}, {fronds(7), width(0.9)}, {width(0.95), fronds(8)},
		{up(0, 0.55)}, {up(0, 0.6)}, {up(0, 0.45)}, {up(0.1, 0.55)}, {wheel(1)}, {wheel(2)}, {wheel(1)},
		{band(20, 70)}, {band(20.1, 60)}, {band(30, 80)},
		{{Motif: 1, Key: "width", Value: 0.9, Fraction: true}}, {width(0.9)},
	}
	var offers []Offer
	for _, c := range given {
		offers = append(offers, Offer{Changes: c})
	}
	var kept []int
	for _, o := range withoutTwins(j, *j.Layout.Band, offers) {
		kept = append(kept, slices.IndexFunc(given, func(c []job.Change) bool { return slices.Equal(c, o.Changes) }))
	}
	if want := []int{0, 2, 3, 5, 7, 8, 9, 10, 12, 14, 15, 16}; !slices.Equal(kept, want) {
		t.Errorf("kept %v, wanted %v", kept, want)
	}
}

// What check offers as a cure and what fit offers as a single change of the same
// sort are the same value, where there is just one trouble; and a person sees no two
// offers of one sort.
func TestCuresAndFitAgree(t *testing.T) {
	leaf := func(values motifs.Values, change ...func(*job.Motif)) *job.Job {
		j := jobOn(straight(t), 6, motif(t, "leaf", values, change...))
		j.Limits.Clear = 0.2
		return j
	}
	jobs := map[string]*job.Job{
		"crowded":   leaf(motifs.Values{"fronds": 20, "lean": 90, "arch": 0, "crown": 0.22, "stalk": 0.1}, size(0.8, 1), depth(1)),
		"short top": leaf(motifs.Values{"fronds": 4, "arch": 0, "crown": 0.16}, size(0.8, 1), depth(0.8)),
		"tight":     jobOn(straight(t), 4, motif(t, "swag", motifs.Values{"rows": 1, "sag": 0.3}, depth(0.4))),
		"above":     jobOn(straight(t), 4, motif(t, "fan", motifs.Values{"rays": 3}, at(0, 0.77), size(0.5, 0.5), depth(0.3))),
		"two bars":  jobOn(straight(t), 4, bar(t, 0, 30, 20), bar(t, 1.3, 30, 20)),
	}
	jobs["crowded"].Limits.Reach = 0
	chevron := motif(t, "chevron", motifs.Values{"rows": 2}, depth(0.3))
	chevron.Shape = job.True
	jobs["true"] = jobOn(blankOf(t, 32, 42), 5, chevron)
	agreed := 0
	for name, j := range jobs {
		p := planned(t, j)
		groups := mergedGroups(p)
		if len(groups) != 1 {
			t.Fatalf("%s: %d troubles", name, len(groups))
		}
		cures := [][]job.Change{groups[0].Worst().Cure.Changes}
		for _, or := range groups[0].Worst().Cure.Or {
			cures = append(cures, or.Changes)
		}
		f, err := NewFit(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		sorts := map[string]bool{}
		for _, o := range f.Offers {
			sort := sortOf(j, *j.Layout.Band, o.Changes)
			if sorts[sort] {
				t.Errorf("%s: %q is a twin", name, offered(f.Job, o))
			}
			sorts[sort] = true
			for _, c := range cures {
				switch {
				case sortOf(j, *j.Layout.Band, c) != sort:
				case slices.Equal(c, o.Changes):
					agreed++
				default:
					t.Errorf("%s: check says %q, fit %q", name, changesOf(j, c), changesOf(j, o.Changes))
				}
			}
		}
	}
	if agreed < len(jobs) {
		t.Errorf("only %d cures are offered too", agreed)
	}
}
