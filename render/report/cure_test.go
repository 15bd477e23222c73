package report

import (
	"context"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Every shape of a cure has its words.
func TestCureWords(t *testing.T) {
	leaf := jobtest.Motif(t, "leaf", motifs.Values{"fronds": 20}, jobtest.Wheel(jobtest.Fine))
	fan := jobtest.Motif(t, "fan", nil)
	j := jobtest.On(jobtest.Straight(t), 4, leaf, fan)
	p, err := pattern.New(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	p.Cuts = []pattern.Cut{{ID: 1, Motif: 0}, {ID: 2, Motif: 1}}
	fewer := []job.Change{{Key: "fronds", Value: 15}}
	band := func(foot, top float64) []job.Change {
		return []job.Change{{Motif: -1, Key: "band", Band: job.Band{Foot: foot, Top: top}}}
	}
	brought := func(kind pattern.Kind, more bool, blank string, motifs ...int) pattern.Brought {
		return pattern.Brought{Problem: pattern.Problem{Kind: kind, Motifs: pattern.MotifPair(motifs), Blank: blank}, More: more}
	}
	for _, c := range []struct {
		kind pattern.Kind
		cure *pattern.Cure
		want string
	}{
		{pattern.Crowded, nil, ""},
		{pattern.Crowded, &pattern.Cure{Changes: fewer}, "motif 1 (leaf): fronds = 15"},
		{pattern.Off, &pattern.Cure{Changes: []job.Change{{Key: "width", Value: 0.9, Fraction: true}, {Key: "height", Value: 40}}},
			`motif 1 (leaf): width = 0.9 and height = "40.0 mm"`},
		{pattern.Tight, &pattern.Cure{Changes: []job.Change{{Key: "wheel", Value: jobtest.Mitre}}, Or: []pattern.Alternative{{Diameter: 46.9}}},
			`motif 1 (leaf): wheel "mitre", or a wheel up to 46.9 mm across`},
		{pattern.Tight, &pattern.Cure{Changes: []job.Change{{Key: "wheel", Value: jobtest.Olive}}, Or: []pattern.Alternative{{Diameter: 46.9}}},
			`a wheel up to 46.9 mm across, or motif 1 (leaf): wheel "olive" (another edge: the cut will look different)`},
		{pattern.Thin, &pattern.Cure{Changes: []job.Change{{Key: "wheel", Value: jobtest.Olive}}, Brings: []pattern.Brought{brought(pattern.Rim, false, "", 0)}, Or: []pattern.Alternative{{Changes: fewer}}},
			`motif 1 (leaf): wheel "olive" (another edge: the cut will look different); then it is RIM, or fronds = 15`},
		{pattern.Tight, &pattern.Cure{Or: []pattern.Alternative{{Diameter: 46.9}}, Known: []pattern.Fact{{Kind: pattern.CurveRadius, Length: 45}}},
			"a wheel up to 46.9 mm across"},
		{pattern.Shallow, &pattern.Cure{Changes: []job.Change{{Key: "crown", Value: 0.3}}, Or: []pattern.Alternative{
			{Changes: fewer}, {Changes: []job.Change{{Motif: 1, Key: "rays", Value: 3}}},
			{Changes: []job.Change{{Motif: job.OfLimits, Key: "reach", Value: 0.15}}, Depths: [2]float64{0.151, 0.182}},
		}}, "motif 1 (leaf): crown = 0.3, or fronds = 15, or motif 2 (fan): rays = 3, or accept it: limits.reach = 0.15 (they stay 0.15 mm to 0.18 mm deep)"},
		{pattern.Shallow, &pattern.Cure{Or: []pattern.Alternative{
			{Changes: []job.Change{{Motif: job.OfLimits, Key: "reach", Value: 0.15}}, Depths: [2]float64{0.151, 0.152}},
		}}, "accept it: limits.reach = 0.15 (they stay 0.15 mm deep)"},
		{pattern.Crowded, &pattern.Cure{Changes: []job.Change{{Key: "on", Value: float64(job.Even)}}}, `motif 1 (leaf): on = "even"`},
		{pattern.Thin, &pattern.Cure{Changes: []job.Change{{Key: "depth", Value: 0.4}}, Or: []pattern.Alternative{{Changes: band(20, 75)}}},
			"motif 1 (leaf): depth 0.4 mm, or keep it below 75.0 mm"},
		{pattern.Thin, &pattern.Cure{Changes: []job.Change{{Key: "depth", Value: 0.4}}, Or: []pattern.Alternative{{Changes: band(20, 75), Brings: true}}},
			"motif 1 (leaf): depth 0.4 mm, or keep it below 75.0 mm (which brings other findings)"},
		{pattern.Thin, &pattern.Cure{Changes: band(20, 75)}, `keep it below 75.0 mm: band = ["20.0 mm", "75.0 mm"]`},
		{pattern.Rim, &pattern.Cure{Changes: band(20, 75)}, `lower the band's top 5.0 mm, to 75.0 mm: band = ["20.0 mm", "75.0 mm"]`},
		{pattern.Foot, &pattern.Cure{Changes: band(22, 80)}, `raise the band's foot 2.0 mm, to 22.0 mm: band = ["22.0 mm", "80.0 mm"]`},
		{pattern.Uneven, &pattern.Cure{Changes: band(22, 80)}, `band = ["22.0 mm", "80.0 mm"]`},
		{pattern.Crowded, &pattern.Cure{Changes: []job.Change{{Motif: -1, Key: "repeats", Value: 3}}}, "repeats = 3"},
		{pattern.Off, &pattern.Cure{Changes: []job.Change{
			{Key: "width", Value: 0.9, Fraction: true}, {Key: "height", Value: 40}, {Motif: 1, Key: "width", Value: 0.9, Fraction: true}, {Motif: 1, Key: "height", Value: 40},
		}}, `motif 1 (leaf) and motif 2 (fan): width = 0.9 and height = "40.0 mm"`},
		{pattern.Off, &pattern.Cure{Changes: []job.Change{{Key: "depth", Value: 0.4}, {Motif: 1, Key: "rays", Value: 3}}},
			"motif 1 (leaf): depth 0.4 mm; motif 2 (fan): rays = 3"},
		{pattern.Crowded, &pattern.Cure{Changes: fewer, Or: []pattern.Alternative{{Diameter: 40}}, Brings: []pattern.Brought{
			brought(pattern.Off, false, "", 0), brought(pattern.Rim, false, "", 1), brought(pattern.Crowded, false, "", 0, 1),
			brought(pattern.Uneven, false, ""), brought(pattern.Rim, false, "", 1), brought(pattern.Thin, true, "low", 1),
		}}, `motif 1 (leaf): fronds = 15; then it is OFF, and motif 2 (fan) is RIM, and motif 1 (leaf) and motif 2 (fan) are CROWDED, ` +
			`and the glass is UNEVEN, and motif 2 (fan) is more THIN on blank "low", or a wheel up to 40.0 mm across`},
		{pattern.Shallow, &pattern.Cure{Known: []pattern.Fact{{Kind: pattern.MarkLength, Length: 12}}},
			"no single change was found that clears it (fit tries several together); marks of 12.0 mm would reach it"},
		{pattern.Tight, &pattern.Cure{Tried: pattern.TriedSome, Known: []pattern.Fact{{Kind: pattern.CurveRadius, Length: 45}}},
			"no single change was found that clears it, and with so many cuts not all were tried; this wheel follows curves of radius 45.0 mm and more"},
		{pattern.Tight, &pattern.Cure{Tried: pattern.TriedNone}, "none was looked for: there are too many cuts to try changes on"},
		{pattern.Unseen, &pattern.Cure{Tried: pattern.NothingToTry}, "no single change known"},
		{pattern.Unseen, &pattern.Cure{Advice: pattern.MorePaper}, "ask for more paper (blank.paper)"},
		{pattern.Unseen, &pattern.Cure{Advice: pattern.Patches}, "print them as patches"},
		{pattern.Unseen, &pattern.Cure{Advice: pattern.ByHand}, "mark them by hand"},
	} {
		if got := Cure(p, pattern.Finding{Kind: c.kind, Cuts: []int{1}, Cure: c.cure}); got != c.want {
			t.Errorf("%v: %q, wanted %q", c.kind, got, c.want)
		}
	}
}
