package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestSwagArc(t *testing.T) {
	// A quarter of a circle on a chord of 1 has the radius 1/√2; it sags by what
	// that exceeds 1/2. Alone it hangs in the middle of the box's height.
	sag := math.Sqrt2/2 - 0.5
	cuts := draw(motifs.Swag(), motifs.Values{"rows": 1, "sag": sag}, 1)
	centre := geometry.Point{Y: (1+sag)/2 + 0.5}
	for s := range 11 {
		p := cuts[0].Path.At(float64(s) / 10)
		// A cubic deviates from a quarter of a circle by 0.03 % of its radius.
		if r := math.Hypot(p.X, p.Y-centre.Y); math.Abs(r-math.Sqrt2/2) > 3e-4 {
			t.Errorf("at %v the arc is %g from its centre", p, r)
		}
	}
}

func TestSwagRows(t *testing.T) {
	for _, test := range []struct {
		name         string
		values       motifs.Values
		aspect       float64
		hang, lowest []float64
	}{
		{"alone", motifs.Values{"rows": 1, "sag": 0.2}, 1, []float64{0.6}, []float64{0.4}},
		{"narrow ones", motifs.Values{"rows": 1, "sag": 0.2, "swags": 4}, 2, []float64{0.55}, []float64{0.45}},
		{"alike", motifs.Values{"rows": 2, "sag": 0.2, "ease": 1}, 1, []float64{0.4, 0.8}, []float64{0.2, 0.6}},
		{"eased", motifs.Values{"rows": 3, "sag": 0.4, "ease": 0.5}, 1, []float64{0.5, 0.7, 0.9}, []float64{0.1, 0.4, 0.7}},
		// Half of the width would be more than the box is high: 4/5 of it.
		{"too wide", motifs.Values{"rows": 1, "sag": 0.5}, 5, []float64{0.9}, []float64{0.1}},
	} {
		cuts := draw(motifs.Swag(), test.values, test.aspect)
		each := max(int(test.values["swags"]), 1)
		if len(cuts) != each*len(test.hang) {
			t.Errorf("%s: %d cuts", test.name, len(cuts))
			continue
		}
		for i, c := range cuts {
			hang, lowest := c.Path[0].Y, c.Path.At(0.5).Y
			if row := i / each; math.Abs(hang-test.hang[row]) > exact || math.Abs(lowest-test.lowest[row]) > exact {
				t.Errorf("%s: row %d hangs at %g down to %g, want %g, %g", test.name, row, hang, lowest, test.hang[row], test.lowest[row])
			}
		}
	}
}

// Each arc starts where the one before it ends, and the first where the last
// one of the box before does.
func TestSwagRound(t *testing.T) {
	cuts := draw(motifs.Swag(), motifs.Values{"swags": 3, "rows": 2}, 0.8)
	for i, c := range cuts {
		before := geometry.Point{X: -0.5, Y: cuts[i/3*3+2].Path[3].Y}
		if i%3 > 0 {
			before = cuts[i-1].Path[3]
		}
		if !near(c.Path[0], before) {
			t.Errorf("swag %d starts at %v, want %v", i, c.Path[0], before)
		}
		if i%3 == 2 && !near(c.Path[3], geometry.Point{X: 0.5, Y: c.Path[0].Y}) {
			t.Errorf("row %d ends at %v", i/3, c.Path[3])
		}
	}
}
