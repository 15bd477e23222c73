package search

import (
	"math"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// What an offer costs, by hand. Of eight cuts round the glass, a fan has three in
// each of two repeats and a bar one, so that what the bar loses counts a quarter.
// The bar is 30 mm long and 0.5 mm deep under a right-angled mitre on a radius of
// 40 mm: b mm to either side the glass has fallen by b²/80, where the groove's
// half width is b = 0.5 - b²/80.
func TestOfferCosts(t *testing.T) {
	fan := motif(t, "fan", motifs.Values{"rays": 3, "spread": 10, "hub": 0}, size(0.4, 0.6))
	j := jobOn(straight(t), 2, fan, bar(t, 30, 30, 30))
	halfWidth := func(h float64) float64 { return 40 * (math.Sqrt(1+h/20) - 1) }
	narrower := math.Log(halfWidth(0.5)/halfWidth(0.4)) / 4
	for name, test := range map[string]struct {
		change func(j *job.Job)
		lost   float64 // by the motif, of what it was
		part   float64 // of the cuts that are the motif's
	}{
		"a bar of 24 mm":       {func(j *job.Job) { j.Motifs[1].Height = mm(24) }, 0.2, 0.25},
		"a bar of 36 mm":       {func(j *job.Job) { j.Motifs[1].Height = mm(36) }, -0.2, 0.25},
		"half the bar's width": {func(j *job.Job) { j.Motifs[1].Width = of(0.5) }, 0.5, 0.25},
		"a bar 0.4 mm deep":    {func(j *job.Job) { j.Motifs[1].Depth = 0.4 }, 0.2 + narrower, 0.25},
		"two rays":             {func(j *job.Job) { j.Motifs[0].Values["rays"] = 2 }, 1.0 / 3, 0.75},
		"the bar 6 mm up":      {func(j *job.Job) { j.Motifs[1].Y = mm(36) }, 6.0 / 60, 0.25},
		"and 20 mm aside":      {func(j *job.Job) { j.Motifs[1].X = mm(10) }, 20 / (40 * math.Pi), 0.25},
		"the bar's arch":       {func(j *job.Job) { j.Motifs[1].Values["scallop"] = 0.3 }, 0.7, 0.25},
	} {
		for _, isClear := range []bool{false, true} {
			f := newFitSearch(t.Context(), j)
			seen, _, err := f.look(j, j.Blanks[0])
			if err != nil {
				t.Fatal(err)
			}
			f.before, f.clear = []looks{seen}, isClear
			o := Offer{Job: j.Clone()}
			test.change(o.Job)
			f.weigh(&o)
			// A job that clears gains by what grows; of one that doesn't, any change
			// takes it from what was asked for.
			want := test.part * test.lost
			if !isClear {
				want = math.Abs(want)
			}
			if !near(o.Score, want, 2e-4) { // rays lean a little, and are wider by a thousandth of their share
				t.Errorf("%s, clear %v: a score of %.5f, by hand %.5f", name, isClear, o.Score, want)
			}
		}
	}
}
