package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestRingHeights(t *testing.T) {
	for _, test := range []struct {
		values  motifs.Values
		heights []float64
	}{
		{motifs.Values{"rings": 1, "lines": 1}, []float64{0.5}},
		{motifs.Values{"rings": 2, "lines": 1}, []float64{0.25, 0.75}},
		// A fifth of the half box between rings is 0.1.
		{motifs.Values{"rings": 2, "lines": 2, "gap": 0.2}, []float64{0.2, 0.3, 0.7, 0.8}},
		{motifs.Values{"rings": 2, "lines": 3, "gap": 0.2}, []float64{0.15, 0.25, 0.35, 0.65, 0.75, 0.85}},
		// At 1/4 and 3/4 the grade lifts by half of 3/16.
		{motifs.Values{"rings": 2, "lines": 1, "grade": 0.5}, []float64{0.34375, 0.84375}},
		{motifs.Values{"rings": 2, "lines": 1, "grade": -0.5}, []float64{0.15625, 0.65625}},
		// Rings as close as half a step of 1/2 have a fifth of that.
		{motifs.Values{"rings": 2, "lines": 2, "gap": 0.2, "grade": 0.5}, []float64{0.31875, 0.36875, 0.81875, 0.86875}},
	} {
		cuts := draw(motifs.Ring(), test.values, 1)
		if len(cuts) != len(test.heights) {
			t.Errorf("%v: %d cuts", test.values, len(cuts))
			continue
		}
		for i, c := range cuts {
			from, to := c.Path[0], c.Path[3]
			if from.Y != to.Y || math.Abs(from.Y-test.heights[i]) > exact {
				t.Errorf("%v: ring %d at %g and %g, want %g", test.values, i, from.Y, to.Y, test.heights[i])
			}
		}
	}
}

// Every ring ends where its next copy starts, and rings never change places.
func TestRingRound(t *testing.T) {
	for _, v := range trials(motifs.Ring()) {
		last := 0.0
		for i, c := range motifs.Ring().Draw(v, 1) {
			if c.Path[0] != (geometry.Point{X: -0.5, Y: c.Path[3].Y}) || c.Path[3].X != 0.5 {
				t.Errorf("%v: ring %d from %v to %v", v, i, c.Path[0], c.Path[3])
			}
			if c.Path[0].Y <= last {
				t.Errorf("%v: ring %d at %g is no higher than %g", v, i, c.Path[0].Y, last)
			}
			last = c.Path[0].Y
		}
	}
}
