package motifs_test

import (
	"math"
	"testing"

	"roundlay/motifs"
)

func TestLatticeBars(t *testing.T) {
	for _, test := range []struct {
		name   string
		values motifs.Values
		aspect float64
		y, x   []float64 // of the level and of the upright mitres
	}{
		{"single", motifs.Values{"across": 2, "up": 1, "lines": 1}, 1, []float64{0.5}, []float64{-0.25, 0.25}},
		// Uprights are 1 apart, levels 1/2: a fifth of that is 1/10 of the height,
		// and 1/20 of the width.
		{"double", motifs.Values{"across": 2, "up": 2, "lines": 2, "gap": 0.2}, 2,
			[]float64{0.2, 0.3, 0.7, 0.8}, []float64{-0.275, -0.225, 0.225, 0.275}},
		// Uprights 1/5 apart, levels 1: a quarter of the former.
		{"narrow", motifs.Values{"across": 1, "up": 1, "lines": 3, "gap": 0.25}, 0.2,
			[]float64{0.45, 0.5, 0.55}, []float64{-0.25, 0, 0.25}},
	} {
		cuts := draw(motifs.Lattice(), test.values, test.aspect)
		if len(cuts) != len(test.y)+len(test.x) {
			t.Errorf("%s: %d cuts", test.name, len(cuts))
			continue
		}
		for i, y := range test.y {
			from, to := cuts[i].Path[0], cuts[i].Path[3]
			if from.X != -0.5 || to.X != 0.5 || from.Y != to.Y || math.Abs(from.Y-y) > exact {
				t.Errorf("%s: level %d from %v to %v, want it at %g from edge to edge", test.name, i, from, to, y)
			}
			if len(cuts[i].Joins) != len(test.x) {
				t.Errorf("%s: level %d joins %v, want every upright", test.name, i, cuts[i].Joins)
			}
		}
		for i, x := range test.x {
			foot, top := cuts[len(test.y)+i].Path[0], cuts[len(test.y)+i].Path[3]
			if foot.Y != 0 || top.Y != 1 || foot.X != top.X || math.Abs(foot.X-x) > exact {
				t.Errorf("%s: upright %d from %v to %v, want it at %g", test.name, i, foot, top, x)
			}
		}
	}
}
