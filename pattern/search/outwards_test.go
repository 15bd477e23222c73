package search

import (
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// star is rays of a fan that run together in the middle of a base 70 mm across.
func star(t testing.TB) *job.Job {
	b, err := glass.NewBlank("trial", 9, []glass.Station{{Height: 0, Radius: 40, Wall: 7}, {Height: 100, Radius: 40, Wall: 3}})
	if err != nil {
		t.Fatal(err)
	}
	b.BaseAcross = 70
	j := jobOn(b, 3, bar(t, 0, 20, 30))
	j.Rack[fine].Radius = 3
	j.Base = &job.Layout{Repeats: 16}
	m := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, depth(1.2), with(fine))
	m.Face = job.Base
	j.Motifs = append(j.Motifs, m)
	return j
}

// What has the rays begin farther out comes first, and each way told clears by itself.
func TestCuresOfRays(t *testing.T) {
	j := star(t)
	found := planned(t, j).Base.Findings
	if len(found) == 0 || found[0].Kind != pattern.Crowded || found[0].Cure == nil {
		t.Fatalf("%+v", found)
	}
	cure := found[0].Cure
	words := said(j, cure)
	for _, way := range []string{"band", "hub", "height"} {
		if !strings.Contains(words, way) {
			t.Errorf("no %s: %s", way, words)
		}
	}
	ways := [][]job.Change{cure.Changes}
	for _, or := range cure.Or {
		ways = append(ways, or.Changes)
	}
	for _, changes := range ways {
		if p := checked(t, j.With(changes...)); len(p.Base.Findings) > 0 {
			t.Errorf("%s: %+v", changesOf(j, changes), p.Base.Findings)
		}
	}
}

// A shorter ray costs what it loses, whether its band or its box is made shorter: none is
// dearer for the repeat being wider farther out.
func TestFitOfRays(t *testing.T) {
	fit, err := NewFit(t.Context(), star(t))
	if err != nil {
		t.Fatal(err)
	}
	place := map[string]int{}
	for i, o := range fit.Offers {
		if len(o.Changes) == 1 {
			place[o.Changes[0].Key] = i + 1
		}
	}
	if place["band"] == 0 || place["hub"] == 0 || place["height"] == 0 || place["band"] > place["height"] {
		t.Errorf("%v", place)
	}
}

// A base that can't be laid out is no nearer to clearing for having no findings.
func TestBaseNotLaidOut(t *testing.T) {
	j := star(t)
	if newFitSearch(t.Context(), j).uneven(j) {
		t.Error("it can be laid out")
	}
	j.Limits.Edge = 34 // of a base of 35 mm radius
	if !newFitSearch(t.Context(), j).uneven(j) {
		t.Error("no glass of its base can be cut")
	}
}
