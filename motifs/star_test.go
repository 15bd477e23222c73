package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

// polar returns a place by its distance from the middle of the box, in heights,
// and its angle to the right of upright in degrees.
func polar(p geometry.Point, aspect float64) (radius, angle float64) {
	x, y := p.X*aspect, p.Y-0.5
	return math.Hypot(x, y), math.Mod(math.Atan2(x, y)*180/math.Pi+360, 360)
}

func TestStarRays(t *testing.T) {
	for _, test := range []struct {
		name   string
		values motifs.Values
		aspect float64
		hub    float64
		tips   []float64 // radii, from the top to the right
	}{
		{"round in a wide box", motifs.Values{"points": 4, "hub": 0, "double": 0}, 2, 0, []float64{0.5, 0.5, 0.5, 0.5}},
		{"round in a narrow box", motifs.Values{"points": 3, "hub": 0.5, "double": 0}, 0.4, 0.1, []float64{0.2, 0.2, 0.2}},
		{"stretched", motifs.Values{"points": 4, "hub": 0.2, "double": 0, "stretch": 1}, 2, 0.1, []float64{0.5, 1, 0.5, 1}},
		{"half stretched", motifs.Values{"points": 4, "hub": 0, "double": 0, "stretch": 0.5}, 2, 0, []float64{0.5, 0.75, 0.5, 0.75}},
		// At 45° an ellipse of half axes 1 and 1/2 is √(2/5) from its middle.
		{"an ellipse", motifs.Values{"points": 8, "hub": 0, "double": 0, "stretch": 1}, 2, 0,
			[]float64{0.5, 0.6324555320, 1, 0.6324555320, 0.5, 0.6324555320, 1, 0.6324555320}},
		// A quarter of what the hub of 0.1 leaves of 1/2 is 0.1 too.
		{"double", motifs.Values{"points": 3, "hub": 0.2, "double": 1, "short": 0.25}, 1, 0.1,
			[]float64{0.5, 0.2, 0.5, 0.2, 0.5, 0.2}},
	} {
		cuts := draw(motifs.Star(), test.values, test.aspect)
		if len(cuts) != len(test.tips) {
			t.Errorf("%s: %d rays", test.name, len(cuts))
			continue
		}
		for i, c := range cuts {
			from, _ := polar(c.Path[0], test.aspect)
			to, angle := polar(c.Path[3], test.aspect)
			if math.Abs(from-test.hub) > exact || math.Abs(to-test.tips[i]) > exact {
				t.Errorf("%s: ray %d from %g to %g, want %g to %g", test.name, i, from, to, test.hub, test.tips[i])
			}
			if want := 360 * float64(i) / float64(len(cuts)); math.Abs(angle-want) > 1e-6 {
				t.Errorf("%s: ray %d points to %g°, want %g°", test.name, i, angle, want)
			}
			if !c.Path.Straight() || len(c.Joins) != len(cuts)-1 {
				t.Errorf("%s: ray %d is straight: %v, joins %v", test.name, i, c.Path.Straight(), c.Joins)
			}
		}
	}
}
