package pattern

import (
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

func TestRoundness(t *testing.T) {
	b := blank(t,
		glass.Station{Height: 0, Radius: 40, Wall: 6},
		glass.Station{Height: 50, Radius: 40, Wall: 4, Min: 79.5, Max: 80.5},
		glass.Station{Height: 90, Radius: 40, Wall: 3, Min: 80, Max: 80},
		glass.Station{Height: 100, Radius: 40.2, Wall: 3, Min: 80.2, Max: 80.6},
	)
	p := laid(t, jobOn(b, 6, bar(t, 0, 20, 30)))
	got := p.Roundness()
	if len(got) != 2 || got[0].Height != 50 || got[1].Height != 100 {
		t.Fatalf("%+v", got)
	}
	r := got[0]
	if r.Chord != (geometry.Division{Radius: 40, Parts: 6}).Chord() || r.Parts != 6 {
		t.Errorf("%+v", r)
	}
	// Half axes of 40.25 and 39.75: by the ellipse's own arithmetic, tested there.
	if want := (geometry.Oval{Wide: 40.25, Narrow: 39.75}).Step(40, 6); !near(r.Off, want.Off, 1e-9) || !near(r.Gap, want.Gap, 1e-9) {
		t.Errorf("%+v, wanted %+v", r.Stepping, want)
	}
	if !(r.Shortest < 40 && 40 < r.Longest) || !(r.Off > 0.01) {
		t.Errorf("nothing is off: %+v", r)
	}
	// Less out of round, less off.
	if got[1].Off >= r.Off {
		t.Errorf("%g off where it is rounder, %g where it isn't", got[1].Off, r.Off)
	}
}
