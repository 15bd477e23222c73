package motifs_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestFanSpread(t *testing.T) {
	for _, spread := range []float64{10, 80, 133, 180} {
		for _, aspect := range aspects {
			cuts := draw(motifs.Fan(), motifs.Values{"spread": spread, "rays": 6}, aspect)
			for i := range 5 {
				a, b := cuts[i].Path[3], cuts[i+1].Path[3]
				angle := math.Atan2(a.Y, a.X*aspect) - math.Atan2(b.Y, b.X*aspect)
				if got := angle * 180 / math.Pi; math.Abs(got-spread/5) > 1e-6 {
					t.Errorf("spread %g, aspect %g: %g° between two rays of six, want %g°", spread, aspect, got, spread/5)
				}
			}
		}
	}
}

func TestFanTips(t *testing.T) {
	half := math.Sqrt2 / 2 // sine and cosine of 45°
	for _, test := range []struct {
		name                  string
		rays, spread, scallop float64
		aspect                float64
		tips                  []geometry.Point
	}{
		{"one ray", 1, 80, 1, 0.7, []geometry.Point{{X: 0, Y: 1}}},
		// A box twice as wide as high holds half a circle.
		{"half circle", 5, 180, 1, 2,
			[]geometry.Point{{X: -0.5, Y: 0}, {X: -half / 2, Y: half}, {X: 0, Y: 1}, {X: half / 2, Y: half}, {X: 0.5, Y: 0}}},
		// In a wider one the circle is still as high as the box.
		{"quarter circle", 3, 90, 1, 4,
			[]geometry.Point{{X: -half / 4, Y: half}, {X: 0, Y: 1}, {X: half / 4, Y: half}}},
		// Half as wide as high, the rays at 45° reach the sides at a quarter of
		// the height. On the arch x² + y² + c x² = 1 there: c = 14. A ray whose
		// slope is tan 22.5° = √2 - 1 ends where y² (1 + 15 (3 - 2√2)) = 1.
		{"narrow arch", 5, 90, 1, 0.5, []geometry.Point{
			{X: -0.5, Y: 0.25}, {X: -0.4382297, Y: 0.5289900}, {X: 0, Y: 1}, {X: 0.4382297, Y: 0.5289900}, {X: 0.5, Y: 0.25}}},
		{"box, to the sides", 3, 90, 0, 0.5,
			[]geometry.Point{{X: -0.5, Y: 0.25}, {X: 0, Y: 1}, {X: 0.5, Y: 0.25}}},
		{"box, to the top", 3, 90, 0, 4,
			[]geometry.Point{{X: -0.25, Y: 1}, {X: 0, Y: 1}, {X: 0.25, Y: 1}}},
		// Halfway from the quarter circle to the top.
		{"between", 3, 90, 0.5, 4,
			[]geometry.Point{{X: -(half + 1) / 8, Y: (half + 1) / 2}, {X: 0, Y: 1}, {X: (half + 1) / 8, Y: (half + 1) / 2}}},
	} {
		cuts := draw(motifs.Fan(), motifs.Values{
			"rays": test.rays, "spread": test.spread, "scallop": test.scallop}, test.aspect)
		if len(cuts) != len(test.tips) {
			t.Errorf("%s: %d rays", test.name, len(cuts))
			continue
		}
		for i, c := range cuts {
			if r2.Norm(r2.Sub(c.Path[3], test.tips[i])) > 1e-7 {
				t.Errorf("%s: tip %d at %v, want %v", test.name, i, c.Path[3], test.tips[i])
			}
		}
	}
}

func TestFanRays(t *testing.T) {
	// In half a circle every full ray is as long as the box is high.
	for _, test := range []struct {
		hub, short float64
		ends       []float64 // distances from the hub
	}{
		{0, 1, []float64{1, 1, 1, 1, 1}},
		{0, 0.5, []float64{1, 0.5, 1, 0.5, 1}},
		{0, 0.5, []float64{0.5, 1, 0.5, 1, 0.5, 1, 0.5}},
		{0, 0.5, []float64{0.5, 1, 1, 0.5}}, // an even count has two in the middle
		{0.2, 0.5, []float64{1, 0.6, 1, 0.6, 1}},
		{0.8, 0.1, []float64{1, 0.82, 1, 0.82, 1}},
	} {
		cuts := draw(motifs.Fan(), motifs.Values{
			"rays": float64(len(test.ends)), "spread": 180, "hub": test.hub, "short": test.short}, 2)
		for i, c := range cuts {
			from, to := math.Hypot(2*c.Path[0].X, c.Path[0].Y), math.Hypot(2*c.Path[3].X, c.Path[3].Y)
			if math.Abs(from-test.hub) > exact || math.Abs(to-test.ends[i]) > exact {
				t.Errorf("hub %g, short %g: ray %d runs from %g to %g, want %g to %g",
					test.hub, test.short, i, from, to, test.hub, test.ends[i])
			}
			if !c.Path.Straight() {
				t.Errorf("ray %d is not straight", i)
			}
		}
	}
}

// The hub is round in a box of any shape, and smaller than the shortest ray.
func TestFanHub(t *testing.T) {
	// At 45° a ray reaches the side of a box half as wide as high at √2/4.
	cuts := draw(motifs.Fan(), motifs.Values{"rays": 7, "spread": 90, "hub": 0.4}, 0.5)
	for i, c := range cuts {
		if got, want := math.Hypot(0.5*c.Path[0].X, c.Path[0].Y), 0.1*math.Sqrt2; math.Abs(got-want) > exact {
			t.Errorf("ray %d starts %g from the hub, want %g", i, got, want)
		}
	}
}

func TestFanJoins(t *testing.T) {
	for _, hub := range []float64{0, 0.3} {
		for i, c := range draw(motifs.Fan(), motifs.Values{"rays": 8, "hub": hub}, 1) {
			if len(c.Joins) != 7 {
				t.Errorf("hub %g: ray %d joins %v, want all the seven others", hub, i, c.Joins)
			}
		}
	}
}
