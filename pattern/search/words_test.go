package search

import (
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Two leaves left on the odd repeats lie on one another. Neither has room to be moved
// clear there: each is as high as the band, and so wide that two don't stand side by
// side. The even repeats are empty.
func TestLeftOnOdd(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 3, "arch": 0}, size(0.8, 0.9), depth(0.2), with(fine))
	leaf.On = job.Odd
	j := jobOn(straight(t), 6, leaf, leaf)
	j.Motifs[1].Values = motif(t, "leaf", motifs.Values{"fronds": 3, "arch": 0}).Values
	j.Limits.Clear, j.Limits.Reach = 0.1, 0.1
	cure := planned(t, j).Findings[0].Cure
	if text := said(j, cure); text != `motif 1 (leaf): on = "even"` {
		t.Errorf("the cure is %q", text)
	}
	if found := checked(t, changed(j, cure)).Findings; len(found) > 0 {
		t.Errorf("cured, it finds %+v", found)
	}
	offersOne(t, j, `motif 1 (leaf): on = "even", now "odd"`)
}

// A short slip aside is less than another repeat: two bars on the odd repeats, 0.5 mm
// too near one another.
func TestSlipOnOdd(t *testing.T) {
	left, right := bar(t, 0, 30, 30, depth(0.5), with(fine)), bar(t, 1.3, 30, 30, depth(0.5), with(fine))
	left.On, right.On = job.Odd, job.Odd
	left.X, left.Width, right.Width = mm(0), mm(1), mm(1)
	p := planned(t, jobOn(straight(t), 6, left, right))
	if len(p.Findings) != 1 || p.Findings[0].Kind != pattern.Crowded {
		t.Fatalf("found %+v", p.Findings)
	}
	if c := p.Findings[0].Cure.Changes; len(c) != 1 || c[0].Key != "at" {
		t.Errorf("the cure is %q", said(p.Job, p.Findings[0].Cure))
	}
}

// A motif as wide as its repeat that keeps its own shape lies on its next copy below
// its middle, where the glass is narrower. A little narrower it clears, or when it
// narrows with the glass.
func TestTrueOnATaper(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 3, "arch": 0, "fullest": 0.2, "stalk": 0.02, "lean": 90}, depth(0.2), with(fine))
	leaf.Shape = job.True
	b := blank(t, glass.Station{Height: 0, Radius: 32, Wall: 7}, glass.Station{Height: 100, Radius: 42, Wall: 4})
	j := jobOn(b, 5, leaf)
	j.Limits.Clear, j.Limits.Reach = 0.1, 0.1
	p := planned(t, j)
	if len(p.Findings) == 0 {
		t.Fatal("nothing found")
	}
	cure := p.Findings[0].Cure
	if len(cure.Changes) != 1 || cure.Changes[0].Key != "width" || cure.Changes[0].Value < 0.9 {
		t.Errorf("%v is cured by %q", p.Findings[0].Kind, said(j, cure))
	}
	f, err := NewFit(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"width", "shape"} {
		if !slices.ContainsFunc(f.Offers, func(o Offer) bool { return len(o.Changes) == 1 && o.Changes[0].Key == key }) {
			t.Errorf("no offer changes %s alone: %+v", key, f.Offers)
		}
	}
}

// offersOne reports where no offer is just one change that reads so.
func offersOne(t *testing.T, j *job.Job, change string) {
	t.Helper()
	f, err := NewFit(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	var all [][]string
	for _, o := range f.Offers {
		all = append(all, offered(f.Job, o))
	}
	if !slices.ContainsFunc(all, func(o []string) bool { return slices.Equal(o, []string{change}) }) {
		t.Errorf("%q is not offered, but %q", change, all)
	}
}
