package search

import (
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// stemOnly is a leaf on a wall of 3.4 mm with its stem too deep for that: fronds of 12 mm
// and less come out far shallower than 2 mm under a wheel of 50 mm in radius.
func stemOnly(t *testing.T) *job.Job {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 3, "arch": 0}, depth(2))
	leaf.Width, leaf.Height = mm(14), mm(50)
	j := jobOn(blank(t, glass.Station{Height: 0, Radius: 40, Wall: 3.4}, glass.Station{Height: 100, Radius: 40, Wall: 3.4}), 4, leaf)
	j.Limits.Reach, j.Limits.Land, j.Limits.Clear = 0, 0, 0
	return j
}

// A part that has a depth of its own is cured by itself, and fit offers that.
func TestPartCures(t *testing.T) {
	j := stemOnly(t)
	deep := 2.0
	j.Motifs[0].Depth, j.Motifs[0].Parts = 0.3, []job.Part{{Name: "stem", Depth: &deep}}
	curesAll(t, j, pattern.Thin, `motif 1 (leaf), stem: depth = "1.8 mm"`)
	f, err := NewFit(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Offers) == 0 || len(f.Offers[0].Changes) != 1 || f.Offers[0].Changes[0].Part != "stem" {
		t.Fatalf("offers %+v", f.Offers)
	}
	for _, p := range laidAll(t, f.Offers[0].Job) {
		if len(p.Findings) > 0 {
			t.Errorf("with the offer it finds %+v", p.Findings)
		}
	}
}

// What a motif without parts of its own has to lose is less where one part alone changes.
func TestByPart(t *testing.T) {
	j := stemOnly(t)
	p := planned(t, j)
	s := &cureSearch{Plan: p, cures: newCures(t.Context())}
	if err := s.begin(); err != nil {
		t.Fatal(err)
	}
	groups := mergedGroups(p)
	if len(groups) != 1 || groups[0].Kind != pattern.Thin {
		t.Fatalf("found %+v", p.Findings)
	}
	part, whole := s.mildest(groups[0], s.byPart(groups[0])), s.mildest(groups[0], s.lighter(groups[0]))
	if len(part) == 0 || len(whole) == 0 {
		t.Fatalf("%d by part, %d of the whole", len(part), len(whole))
	}
	for _, r := range part {
		if r.candidate[0].Part != "stem" {
			t.Errorf("changes %+v", r.candidate)
		}
	}
	if part[0].cost >= whole[0].cost {
		t.Errorf("the stem alone costs %g, all of the leaf %g", part[0].cost, whole[0].cost)
	}
}

// A design is put on each wheel with all of its parts.
func TestWheelsOfParts(t *testing.T) {
	j := stemOnly(t)
	deep, own := 2.0, fine
	j.Motifs[0].Depth, j.Motifs[0].Parts = 0.3, []job.Part{{Name: "stem", Depth: &deep, Wheel: &own}}
	all, err := Wheels(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range all {
		if w.Against == nil {
			continue
		}
		for _, c := range w.Against.Cuts {
			if c.Wheel != w.Wheel {
				t.Fatalf("a %s on wheel %d is cut with wheel %d", c.Part, w.Wheel, c.Wheel)
			}
		}
	}
	if *j.Motifs[0].Parts[0].Wheel != fine || *j.Motifs[0].Parts[0].Depth != 2 {
		t.Error("the job has changed")
	}
}

// No depth is offered that polishing takes off, in inches or in millimetres, for a motif
// asked far deeper than its marks can be.
func TestDepthsOfferedCanBeHeld(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		j := stemOnly(t)
		j.Length, j.Motifs[0].Depth = unit, 0.5
		all := append(depths(j, owner{0, ""}, smallStep(unit)), fineDepths(j, owner{0, ""})...)
		if len(all) < 4 {
			t.Fatalf("%v: only %d depths", unit, len(all))
		}
		for _, c := range all {
			if got := c[0].Value; got < 0.1-1e-9 {
				t.Errorf("%v: %g mm is offered", unit, got)
			}
		}
	}
}
