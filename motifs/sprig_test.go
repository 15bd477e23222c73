package motifs_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

// bearing returns the true angle of a line to the right of upright, in degrees.
func bearing(from, to geometry.Point, aspect float64) float64 {
	d := r2.Sub(to, from)
	return math.Atan2(d.X*aspect, d.Y) * 180 / math.Pi
}

func TestSprigStem(t *testing.T) {
	for _, test := range []struct {
		bend, aspect float64
		aside, over  float64 // what the tip is beside the foot, in heights; its bearing
	}{
		{0, 1, 0, 0},
		{60, 2, 1 / math.Sqrt(3), 60}, // tan 30°
		{-60, 2, -1 / math.Sqrt(3), -60},
		// At most half the width: tan of half of 53.13° is 1/2, of 11.42° 1/10.
		{70, 1, 0.5, 53.13010235},
		{-70, 0.2, -0.1, -11.42118627},
	} {
		stem := draw(motifs.Sprig(), motifs.Values{"bend": test.bend}, test.aspect)[0].Path
		foot, tip := stem[0], stem[3]
		if !near(r2.Add(foot, tip), geometry.Point{Y: 1}) || math.Abs((tip.X-foot.X)*test.aspect-test.aside) > exact {
			t.Errorf("bend %g, aspect %g: from %v to %v, want the tip %g aside", test.bend, test.aspect, foot, tip, test.aside)
		}
		if b := bearing(stem[0], stem[1], test.aspect); math.Abs(b) > 1e-6 {
			t.Errorf("bend %g, aspect %g: it starts at %g°", test.bend, test.aspect, b)
		}
		if b := bearing(stem[2], stem[3], test.aspect); math.Abs(b-test.over) > 1e-6 {
			t.Errorf("bend %g, aspect %g: it ends at %g°, want %g°", test.bend, test.aspect, b, test.over)
		}
	}
}

func TestSprigLeaves(t *testing.T) {
	// Three leaves on an upright stem from 0.24 to 0.84, so 0.3 apart, of
	// 1 - 0.4 y of the greatest length.
	cuts := draw(motifs.Sprig(), motifs.Values{"leaves": 3, "bend": 0, "lean": 30, "long": 0.1, "stalk": 0.24}, 2)
	for i, want := range []struct{ y, bearing, long float64 }{
		{0.24, -30, 0.0904}, {0.54, 30, 0.0784}, {0.84, -30, 0.0664},
	} {
		leaf := cuts[i+1].Path
		d := r2.Sub(leaf[3], leaf[0])
		if !near(leaf[0], geometry.Point{Y: want.y}) || math.Abs(math.Hypot(d.X*2, d.Y)-want.long) > exact ||
			math.Abs(bearing(leaf[0], leaf[3], 2)-want.bearing) > 1e-6 {
			t.Errorf("leaf %d from %v to %v, want it at %g, %g° over, %g long", i, leaf[0], leaf[3], want.y, want.bearing, want.long)
		}
	}
}

// A leaf keeps its angle to the stem where it leaves it, however that bends.
func TestSprigLean(t *testing.T) {
	for _, bend := range []float64{-70, 20, 70} {
		for _, aspect := range aspects {
			cuts := draw(motifs.Sprig(), motifs.Values{"bend": bend, "lean": 40, "leaves": 6}, aspect)
			for i, c := range cuts[1:] {
				up := 0.16 + 0.68*float64(i)/5
				const h = 1e-4
				stem := bearing(cuts[0].Path.At(up-h), cuts[0].Path.At(up+h), aspect)
				want := 40.0
				if i%2 == 0 {
					want = -want
				}
				// The cubic turns as an arc of 70° does within a fifth of a degree.
				if got := bearing(c.Path[0], c.Path[3], aspect) - stem; math.Abs(got-want) > 0.2 {
					t.Errorf("bend %g, aspect %g: leaf %d leans %g°, want %g°", bend, aspect, i, got, want)
				}
			}
		}
	}
}
