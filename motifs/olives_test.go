package motifs_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestOlivesFigure(t *testing.T) {
	for _, test := range []struct {
		name   string
		values motifs.Values
		aspect float64
		half   geometry.Point // from the middle of an olive to its end, in heights
	}{
		// Four in a width of 2 are 1/2 apart.
		{"upright", motifs.Values{"olives": 4, "rows": 1, "long": 1, "stagger": 0}, 2, geometry.Point{Y: 0.25}},
		{"leaning", motifs.Values{"olives": 4, "rows": 1, "long": 1, "stagger": 0, "lean": 30}, 2,
			geometry.Point{X: 0.125, Y: 0.125 * math.Sqrt(3)}},
		// Where the row is too low, or the next olive too near, 9/10 of the room.
		{"low", motifs.Values{"olives": 1, "rows": 2, "long": 4, "stagger": 0}, 1, geometry.Point{Y: 0.225}},
		{"lying", motifs.Values{"olives": 4, "rows": 1, "long": 4, "stagger": 0, "lean": 90}, 2, geometry.Point{X: 0.225}},
		// Those that stagger stand half as far from the edge.
		{"level, staggered", motifs.Values{"olives": 4, "rows": 2, "long": 4, "stagger": 1, "lean": 90}, 2, geometry.Point{X: 0.1125}},
	} {
		for i, c := range draw(motifs.Olives(), test.values, test.aspect) {
			half := r2.Scale(0.5, r2.Sub(c.Path[3], c.Path[0]))
			half.X *= test.aspect
			if !near(half, test.half) || !c.Path.Straight() {
				t.Errorf("%s: half of olive %d is %v, want %v", test.name, i, half, test.half)
			}
		}
	}
}

func TestOlivesPlaces(t *testing.T) {
	for _, test := range []struct {
		stagger float64
		x       []float64
	}{
		{0, []float64{-0.25, 0.25, -0.25, 0.25, -0.25, 0.25}},
		// A quarter of 1/2 to the right, to the left, to the right.
		{1, []float64{-0.125, 0.375, -0.375, 0.125, -0.125, 0.375}},
	} {
		for i, c := range draw(motifs.Olives(), motifs.Values{"olives": 2, "rows": 3, "stagger": test.stagger}, 0.6) {
			want := geometry.Point{X: test.x[i], Y: float64(i/2*2+1) / 6}
			if got := c.Path.At(0.5); !near(got, want) {
				t.Errorf("stagger %g: olive %d stands at %v, want %v", test.stagger, i, got, want)
			}
		}
	}
}
