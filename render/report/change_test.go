package report

import (
	"context"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Every key that may be changed has its sentence, and so has a parameter of each sort. The
// glass is straight and 80 mm across: a repeat is 62.8 mm wide, the band 60 mm high.
func TestChangeWords(t *testing.T) {
	leaf := jobtest.Motif(t, "leaf", motifs.Values{"fronds": 20}, jobtest.Wheel(jobtest.Fine))
	fan := jobtest.Motif(t, "fan", nil)
	roll := func(left, right float64) [2]geometry.Angle {
		return [2]geometry.Angle{geometry.Degrees(left), geometry.Degrees(right)}
	}
	rock := roll(0, 12)
	fan.Rock, fan.Swell = &rock, []float64{0.5, 1, 0.6}
	j := jobtest.On(jobtest.Straight(t), 4, leaf, fan)
	p, err := pattern.New(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	share := func(x float64) job.Measure { return job.Measure{Value: x, Fraction: true} }
	length := func(x float64) job.Measure { return job.Measure{Value: x} }
	at := func(x, y job.Measure) job.Change { return job.Change{Key: "at", At: [2]job.Measure{x, y}} }
	for _, c := range []struct {
		changes []job.Change
		want    string
	}{
		{[]job.Change{{Motif: job.OfLayout, Key: "repeats", Value: 3}}, "Let the design go round 3 times, now 4"},
		{[]job.Change{{Motif: job.OfLayout, Key: "band", Band: job.Band{Foot: 22, Top: 75.5}}}, "Keep the design between 22.0 and 75.5 mm, now 20.0 and 80.0"},
		{[]job.Change{{Motif: job.OfLimits, Key: "reach", Value: 0.15}}, "Accept marks that come to 0.15 of their depth, now 0.5"},
		{[]job.Change{{Key: "depth", Value: 0.4}}, "Leaf (motif 1): cut it 0.4 mm deep, now 0.5"},
		{[]job.Change{{Key: "wheel", Value: jobtest.Mitre}}, "Leaf (motif 1): cut it with the wheel mitre, now fine"},
		{[]job.Change{{Key: "on", Value: float64(job.Even)}}, "Leaf (motif 1): let it stand in the even repeats, now each repeat"},
		{[]job.Change{{Key: "shape", Value: float64(job.True)}}, "Leaf (motif 1): let it keep its own shape"},
		{[]job.Change{{Key: "width", Value: 0.9, Fraction: true}, {Key: "height", Value: 40}}, "Leaf (motif 1): width 0.9 of the repeat (about 56.5 mm), now 1, and height 40.0 mm, now 1 of the band"},
		{[]job.Change{{Motif: 1, Key: "height", Value: 0.55, Fraction: true}}, "Fan (motif 2): height 0.55 of the band (about 33.0 mm), now 1"},
		{[]job.Change{{Motif: 1, Key: "height", Value: 0.55, Fraction: true}, {Motif: job.OfLayout, Key: "repeats", Value: 3}}, "Fan (motif 2): height 0.55 of the band, now 1; let the design go round 3 times, now 4"},
		{[]job.Change{at(share(0), share(0.4))}, "Leaf (motif 1): move its middle to the repeat's middle and 0.4 of the band up, now the repeat's middle and 0.5 of the band up"},
		{[]job.Change{at(share(-0.1), length(12))}, "Leaf (motif 1): move its middle to 0.1 of a repeat left of the repeat's middle and 12.0 mm up, now the repeat's middle and 0.5 of the band up"},
		{[]job.Change{at(length(3), share(0.5))}, "Leaf (motif 1): move its middle to 3.0 mm right of the repeat's middle and 0.5 of the band up, now the repeat's middle and 0.5 of the band up"},
		{[]job.Change{{Key: "fronds", Value: 15}}, "Leaf (motif 1): fronds 15, now 20 (how many pairs of fronds)"},
		{[]job.Change{{Key: "crown", Value: 0.235}}, "Leaf (motif 1): crown 0.235, now 0.22 (how much of the leaf stands above the top pair's roots)"},
		{[]job.Change{{Key: "terminal", Value: 0}}, "Leaf (motif 1): terminal no, now yes (whether the stem runs on past the top pair to the tip)"},
		{[]job.Change{{Part: "frond", Key: "depth", Value: 0.4}}, "Leaf (motif 1), frond: cut it 0.4 mm deep, now 0.5"},
		{[]job.Change{{Key: "wheel", Value: jobtest.Olive}}, "Leaf (motif 1): cut it with the wheel olive, now fine (another edge: the cut will look different)"},
		{[]job.Change{{Part: "stem", Key: "wheel", Value: jobtest.Mitre}}, "Leaf (motif 1), stem: cut it with the wheel mitre, now fine"},
		{[]job.Change{job.NewRock(1, "", roll(0, 6))}, "Fan (motif 2): roll it 6° to the right, now 12°"},
		{[]job.Change{job.NewRock(1, "", roll(0, 0))}, "Fan (motif 2): roll it to neither side, now 12° to the right"},
		{[]job.Change{job.NewRock(0, "frond", roll(2.5, 2.5))}, "Leaf (motif 1), frond: roll it 2.5° to both sides"},
		{[]job.Change{job.NewSwell(1, "", []float64{0.3, 1, 0.6})}, "Fan (motif 2): let its depth go 0.3–1–0.6 from root to tip, now 0.5–1–0.6"},
		{[]job.Change{{Key: "depth", Value: 0.4}, {Motif: 1, Key: "depth", Value: 0.4}}, "Leaf (motif 1) and fan (motif 2): cut it 0.4 mm deep, now 0.5"},
	} {
		if got := ChangeWords(p, c.changes); got != c.want {
			t.Errorf("%v:\n%q, wanted\n%q", c.changes, got, c.want)
		}
	}
}
