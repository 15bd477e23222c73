package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestLadderRungs(t *testing.T) {
	for _, test := range []struct {
		taper, short float64
		half         []float64 // of the rungs at 1/6, 1/2 and 5/6
	}{
		{1, 1, []float64{0.5, 0.5, 0.5}},
		{0.4, 1, []float64{0.45, 0.35, 0.25}}, // a sixth of 3/5 is 1/10 of the whole
		{0.4, 0.4, []float64{0.45, 0.14, 0.25}},
	} {
		cuts := draw(motifs.Ladder(), motifs.Values{"rungs": 3, "taper": test.taper, "short": test.short}, 1)
		for i, c := range cuts {
			y := float64(2*i+1) / 6
			from, to := geometry.Point{X: -test.half[i], Y: y}, geometry.Point{X: test.half[i], Y: y}
			if !near(c.Path[0], from) || !near(c.Path[3], to) || c.Path[0].Y != c.Path[3].Y {
				t.Errorf("taper %g, short %g: rung %d from %v to %v, want %v to %v",
					test.taper, test.short, i, c.Path[0], c.Path[3], from, to)
			}
		}
	}
}

// The rails go through the ends of the full rungs, and join no others.
func TestLadderRails(t *testing.T) {
	for _, test := range []struct {
		short float64
		joins int
	}{{1, 5}, {0.99, 3}, {0.2, 3}} {
		cuts := draw(motifs.Ladder(), motifs.Values{"rungs": 5, "taper": 0.3, "short": test.short, "rails": 1}, 1)
		for side, rail := range cuts[5:] {
			x := []float64{-0.5, 0.5}[side]
			if rail.Part != "rail" || math.Abs(rail.Path[0].X-x) > exact || math.Abs(rail.Path[3].X-0.3*x) > exact {
				t.Errorf("%s from %v to %v", rail.Part, rail.Path[0], rail.Path[3])
			}
			if len(rail.Joins) != test.joins {
				t.Errorf("short %g: a rail joins %v, want %d rungs", test.short, rail.Joins, test.joins)
			}
		}
	}
}
