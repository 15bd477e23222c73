package search

import (
	"context"
	"errors"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// A job so heavy that hardly a change could be tried gets no cure, and is told so;
// and fit says that it came to its end.
func TestHeavy(t *testing.T) {
	barrel := blank(t, glass.Station{Height: 0, Radius: 36, Wall: 8}, glass.Station{Height: 50, Radius: 42, Wall: 6}, glass.Station{Height: 100, Radius: 38, Wall: 5})
	j := jobOn(barrel, 1, motif(t, "ring", motifs.Values{"rings": 12, "lines": 2}, depth(0.3)))
	j.Rack = []groove.Wheel{{Name: "broad", Edge: groove.Flat, Radius: 40, Thick: 6}}
	p := planned(t, j)
	if !heavy(p) || len(p.Findings) == 0 {
		t.Fatalf("%d findings, heavy %v: the rings are too light for this test", len(p.Findings), heavy(p))
	}
	for _, f := range p.Findings {
		if f.Cure.Changes != nil || f.Cure.Tried != pattern.TriedNone {
			t.Fatalf("%+v", f.Cure)
		}
	}
}

// Once a search has measured all it may it ends, whatever is left to try.
func TestSpent(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", motifs.Values{"fronds": 30}, with(fine)))
	p := checked(t, j)
	s := newCures(t.Context())
	if err := s.of(p); err != nil || len(p.Findings) == 0 || s.Spent() {
		t.Fatalf("%d findings, spent %v", len(p.Findings), s.Spent())
	}
	p = checked(t, j)
	s = newCures(t.Context())
	s.Spend(pattern.MaxTried + 1)
	if err := s.of(p); err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Findings {
		if f.Cure.Tried != pattern.TriedNone {
			t.Errorf("tried still: %+v", f.Cure)
		}
	}
	// No count is taken for the most that clears that was not tried.
	j = jobOn(straight(t), 4, motif(t, "leaf", nil, with(fine)))
	j.Motifs[0].Most = []string{"fronds"}
	e := pattern.NewEvaluator()
	e.Spend(pattern.MaxTried + 1)
	var wrong *job.Error
	if _, err := resolve(t.Context(), e, j); !errors.As(err, &wrong) || wrong.Key != "motif[1].fronds" {
		t.Errorf("resolved: %v", err)
	}
}

// What cured a blank of a set before the search ended is told of its sisters, if it
// cures them: each told change is tried here by laying out the changed job.
func TestToldBefore(t *testing.T) {
	j := jobOn(nil, 4, motif(t, "leaf", motifs.Values{"fronds": 30}, with(fine)))
	j.Blanks = []*glass.Blank{blankOf(t, 40, 40), blankOf(t, 40.5, 40.5), blankOf(t, 41, 41)}
	s, cured, told := newCures(t.Context()), map[pattern.Kind]bool{}, 0
	for i, b := range j.Blanks {
		p, err := pattern.New(context.Background(), j, b)
		if err != nil || len(p.Findings) == 0 {
			t.Fatalf("%v, no findings", err)
		}
		if err := s.of(p); err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Findings {
			if i == 0 {
				cured[f.Kind] = f.Cure.Changes != nil
			}
			if f.Cure.Changes == nil {
				if cured[f.Kind] {
					t.Errorf("blank %d, %v: %+v", i+1, f.Kind, f.Cure)
				}
				continue
			}
			told++
			after, err := pattern.New(context.Background(), j.With(f.Cure.Changes...), b)
			if err != nil {
				t.Fatal(err)
			}
			for _, left := range after.Findings {
				if left.Kind == f.Kind {
					t.Errorf("blank %d: after %q there is still %v", i+1, said(j, f.Cure), left.Kind)
				}
			}
		}
		s.Spend(pattern.MaxTried + 1) // nothing more is tried on the others
	}
	if told < 3 {
		t.Errorf("only %d cures", told)
	}
}
