package search

import (
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
)

// Numbers are tried on round steps, from the next one on to the end of the range.
func TestNumbersInSteps(t *testing.T) {
	for _, c := range []struct {
		kind, name string
		from       float64
		first      string
		tries      int
	}{
		{"swag", "sag", 0.14, "0.135", 24},  // by 0.005, down to 0.02
		{"swag", "sag", 0.0321, "0.03", 3},  // 0.03, 0.025, 0.02
		{"leaf", "arch", -0.3, "-0.29", 30}, // up to 0, by a hundredth
		{"sprig", "bend", 2, "1", 2},        // a degree
	} {
		j := jobOn(straight(t), 4, motif(t, c.kind, motifs.Values{c.name: c.from}))
		all := straighter(j, 0)
		if len(all) != 1 || len(all[0]) != c.tries || all[0][0][0].Says(j.With(all[0][0]...)) != c.first {
			t.Errorf("%s of %g: tried %+v", c.name, c.from, all)
		}
	}
}

// A swag that is tight hangs a little less, and neither the repeats nor its width are
// touched. An arc of width w that sags by the share s has the radius w (1 + 4s²) / 8s:
// on four repeats of a glass 80 mm across w is 62.8 mm, and s = 0.14 gives 60.5 mm.
func TestTightSwagHangsLess(t *testing.T) {
	swag := motif(t, "swag", motifs.Values{"rows": 1, "sag": 0.3}, depth(0.4))
	j := jobOn(straight(t), 4, swag)
	p := planned(t, j)
	if len(p.Findings) == 0 || p.Findings[0].Kind != pattern.Tight {
		t.Fatalf("found %+v", p.Findings)
	}
	cure := p.Findings[0].Cure
	if len(cure.Changes) != 1 || cure.Changes[0].Key != "sag" {
		t.Fatalf("the cure is %q", said(j, cure))
	}
	sag := cure.Changes[0].Value
	if found := checked(t, changed(j, cure)).Findings; len(found) > 0 {
		t.Errorf("with a sag of %g it finds %+v", sag, found)
	}
	j.Motifs[0].Values["sag"] = sag + 0.005
	if len(checked(t, j).Findings) == 0 {
		t.Errorf("a sag of %g clears too", sag+0.005)
	}
	j.Motifs[0].Values["sag"] = 0.3
	f, err := NewFit(t.Context(), j)
	if err != nil || len(f.Offers) == 0 {
		t.Fatalf("%v, %+v", err, f)
	}
	if c := f.Offers[0].Changes; len(c) != 1 || c[0].Key != "sag" || c[0].Value != sag {
		t.Errorf("the first offer is %q, and the cure %q", offered(f.Job, f.Offers[0]), said(j, cure))
	}
}
