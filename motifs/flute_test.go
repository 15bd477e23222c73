package motifs_test

import (
	"math"
	"testing"

	"roundlay/motifs"
)

func TestFlutePanels(t *testing.T) {
	for _, test := range []struct {
		panels    int
		gap, arch float64
		x, tops   []float64
	}{
		{1, 0, 0.5, []float64{0}, []float64{1}},
		{2, 0, 0, []float64{-0.25, 0.25}, []float64{1, 1}},
		// Half of a fifth is bare on either side.
		{4, 0.2, 0, []float64{-0.3, -0.1, 0.1, 0.3}, []float64{1, 1, 1, 1}},
		// The outer ones stand 2/3 of the way to the side, 4/9 of the arch lower.
		{3, 0, 0.45, []float64{-1.0 / 3, 0, 1.0 / 3}, []float64{0.8, 1, 0.8}},
		{3, 0.4, 0.45, []float64{-0.2, 0, 0.2}, []float64{0.8, 1, 0.8}},
	} {
		cuts := draw(motifs.Flute(), motifs.Values{"panels": float64(test.panels), "gap": test.gap, "arch": test.arch}, 0.7)
		if len(cuts) != test.panels {
			t.Errorf("%d panels of %d", len(cuts), test.panels)
			continue
		}
		for i, c := range cuts {
			foot, top := c.Path[0], c.Path[3]
			if foot.X != top.X || foot.Y != 0 || math.Abs(top.X-test.x[i]) > exact || math.Abs(top.Y-test.tops[i]) > exact {
				t.Errorf("%d panels: panel %d from %v to %v, want it upright at %g from 0 to %g",
					test.panels, i, foot, top, test.x[i], test.tops[i])
			}
		}
	}
}

// All round the glass each panel is as far from the next.
func TestFluteRound(t *testing.T) {
	for _, panels := range []int{1, 2, 5, 40} {
		cuts := draw(motifs.Flute(), motifs.Values{"panels": float64(panels), "gap": 0}, 1)
		for i, c := range cuts {
			next := cuts[(i+1)%panels].Path[0].X
			if i+1 == panels {
				next++ // in the next box
			}
			if got := next - c.Path[0].X; math.Abs(got-1/float64(panels)) > exact {
				t.Errorf("%d panels: %g from panel %d to the next", panels, got, i)
			}
		}
	}
}
