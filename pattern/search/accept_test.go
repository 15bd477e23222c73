package search

import (
	"math"
	"slices"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// The top fronds of a leaf alone are too short for their depth: a longer crown is what
// changes least; and they may be accepted as they come out.
func TestShortTopFronds(t *testing.T) {
	j := jobOn(straight(t), 6, motif(t, "leaf", motifs.Values{"fronds": 4, "arch": 0, "crown": 0.16}, size(0.8, 1), depth(0.8)))
	j.Limits.Clear = 0.2
	p := planned(t, j)
	if len(p.Findings) != 2 || p.Findings[0].Kind != pattern.Shallow {
		t.Fatalf("found %+v", p.Findings)
	}
	cure := p.Findings[0].Cure
	if len(cure.Changes) != 1 || cure.Changes[0].Key != "crown" || len(cure.Brings) > 0 {
		t.Errorf("the cure is %q", said(j, cure))
	}
	least, most := math.Inf(1), 0.0
	for _, f := range p.Findings {
		least, most = min(least, f.Measured), max(most, f.Measured)
	}
	keys := map[string]bool{}
	for _, or := range cure.Or {
		key := or.Changes[0].Key
		if keys[key] || key == "crown" {
			t.Errorf("%s is offered twice", key)
		}
		keys[key] = true
		if key == "reach" && or.Depths != [2]float64{least, most} {
			t.Errorf("the marks come out %g to %g mm deep, and not %v", least, most, or.Depths)
		}
		if found := checked(t, j.With(or.Changes...)).Findings; len(found) > 0 {
			t.Errorf("with %q it finds %+v", changesOf(j, or.Changes), found)
		}
	}
	if !keys["depth"] || !keys["reach"] || len(keys) != 2 {
		t.Errorf("what else would do is %q", said(j, cure))
	}
	// Two hundredths more, and they are not: one may be as little as no hand holds.
	reach := cure.Or[len(cure.Or)-1].Changes[0]
	reach.Value += 0.02
	if reach.Motif != job.OfLimits || len(checked(t, j.With(reach)).Findings) == 0 {
		t.Errorf("%+v accepts them too", reach)
	}
}

// Marks that hardly touch the glass are not offered to be accepted: a bar 6 mm long
// under a wheel of radius 50 mm is 3²/100 mm deep, of the 1 mm it is asked for.
func TestHardlyAMark(t *testing.T) {
	p := planned(t, jobOn(straight(t), 4, bar(t, 0, 30, 6, depth(1))))
	if len(p.Findings) != 1 || p.Findings[0].Kind != pattern.Shallow || !near(p.Findings[0].Measured, 0.09, 0.01) {
		t.Fatalf("found %+v", p.Findings)
	}
	for _, or := range p.Findings[0].Cure.Or {
		if len(or.Changes) > 0 && or.Changes[0].Motif == job.OfLimits {
			t.Errorf("%q is offered", changesOf(p.Job, or.Changes))
		}
	}
}

// Where even a caliper's step is too deep for marks so short, a depth between the steps
// is offered. A bar 8 mm long under a wheel of radius 50 mm is 0.16026 mm deep, less than
// half of 1/64 in. It is half of 0.01262 in, and so 0.012 in is the most that clears.
func TestShallowBelowAStep(t *testing.T) {
	j := jobOn(straight(t), 4, bar(t, 0, 30, 8, depth(geometry.MillimetresPerInch/64)))
	j.Length = geometry.Inch
	p := planned(t, j)
	if len(p.Findings) != 1 || p.Findings[0].Kind != pattern.Shallow {
		t.Fatalf("found %+v", p.Findings)
	}
	cure, offered := p.Findings[0].Cure, 0.0
	for _, ways := range append([]pattern.Alternative{{Changes: cure.Changes}}, cure.Or...) {
		if c := ways.Changes; len(c) == 1 && c[0].Key == "depth" {
			offered = c[0].Value
		}
	}
	if !near(offered, 0.012*geometry.MillimetresPerInch, 1e-9) {
		t.Errorf("the cure is %q", said(j, cure))
	}
	f, err := NewFit(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(f.Offers, func(o Offer) bool { return changesOf(j, o.Changes) == `motif 1 (fan): depth = "0.012 in"` }) {
		t.Errorf("fit offers:\n%s", offersOf(t, j))
	}
}
