package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestChevronArms(t *testing.T) {
	slope := math.Atan(0.5) * 180 / math.Pi // rises half as far as it goes
	for _, test := range []struct {
		name   string
		values motifs.Values
		aspect float64
		ends   []geometry.Point // of each arm, from and to
	}{
		// An arm is half of the width of 2, so it rises 1/2; half of what is left is below.
		{"one", motifs.Values{"rows": 1, "rise": slope}, 2,
			[]geometry.Point{{X: -0.5, Y: 0.25}, {Y: 0.75}, {Y: 0.75}, {X: 0.5, Y: 0.25}}},
		{"two points", motifs.Values{"rows": 1, "rise": slope, "points": 2}, 2,
			[]geometry.Point{{X: -0.5, Y: 0.375}, {X: -0.25, Y: 0.625}, {X: -0.25, Y: 0.625}, {Y: 0.375},
				{Y: 0.375}, {X: 0.25, Y: 0.625}, {X: 0.25, Y: 0.625}, {X: 0.5, Y: 0.375}}},
		{"two rows", motifs.Values{"rows": 2, "rise": slope}, 2,
			[]geometry.Point{{X: -0.5, Y: 0.125}, {Y: 0.625}, {Y: 0.625}, {X: 0.5, Y: 0.125},
				{X: -0.5, Y: 0.375}, {Y: 0.875}, {Y: 0.875}, {X: 0.5, Y: 0.375}}},
		// A fifth of 1/2 and of 1/2 at either end.
		{"gap", motifs.Values{"rows": 1, "rise": slope, "gap": 0.2}, 2,
			[]geometry.Point{{X: -0.4, Y: 0.35}, {X: -0.1, Y: 0.65}, {X: 0.1, Y: 0.65}, {X: 0.4, Y: 0.35}}},
		{"too steep", motifs.Values{"rows": 1, "rise": 75}, 2,
			[]geometry.Point{{X: -0.5, Y: 0.1}, {Y: 0.9}, {Y: 0.9}, {X: 0.5, Y: 0.1}}},
	} {
		cuts := draw(motifs.Chevron(), test.values, test.aspect)
		if len(cuts) != len(test.ends)/2 {
			t.Errorf("%s: %d arms", test.name, len(cuts))
			continue
		}
		for i, c := range cuts {
			if from, to := test.ends[2*i], test.ends[2*i+1]; !near(c.Path[0], from) || !near(c.Path[3], to) {
				t.Errorf("%s: arm %d from %v to %v, want %v to %v", test.name, i, c.Path[0], c.Path[3], from, to)
			}
		}
	}
}

func TestChevronJoins(t *testing.T) {
	for _, test := range []struct {
		gap   float64
		joins int
	}{{0, 2 * 3}, {0.01, 0}} {
		joins := 0
		for _, c := range draw(motifs.Chevron(), motifs.Values{"rows": 2, "points": 2, "gap": test.gap}, 1) {
			joins += len(c.Joins)
		}
		if joins != 2*test.joins {
			t.Errorf("gap %g: %d joins, want %d", test.gap, joins/2, test.joins)
		}
	}
}
