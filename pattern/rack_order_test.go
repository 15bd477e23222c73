package pattern

import (
	"slices"
	"testing"
)

// A rack whose wheels change places gives the same grooves, which plans share. The plan from
// before still says which wheel cuts them in its own rack.
func TestRackOrder(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", nil, with(fine)))
	e := new(Editor)
	before, err := e.Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	was := before[0].Cuts[0].Wheel
	turned := j.Clone()
	turned.Rack = slices.Clone(j.Rack)
	slices.Reverse(turned.Rack)
	turned.Motifs[0].Wheel = len(j.Rack) - 1 - was
	after, err := e.Lay(t.Context(), turned)
	if err != nil {
		t.Fatal(err)
	}
	if before[0].Cuts[0].Groove != after[0].Cuts[0].Groove {
		t.Error("the grooves were cut again")
	}
	for i := range before[0].Cuts {
		if got := before[0].Cuts[i].Wheel; got != was {
			t.Fatalf("cut %d of the plan from before: wheel %d, was %d", i+1, got, was)
		}
		if got := after[0].Cuts[i].Wheel; got != turned.Motifs[0].Wheel {
			t.Fatalf("cut %d of the plan after: wheel %d, wanted %d", i+1, got, turned.Motifs[0].Wheel)
		}
	}
}
