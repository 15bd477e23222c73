package geometry

import (
	"errors"
	"math"
	"testing"
)

func profileOf(t *testing.T, heights, radii []float64) *Profile {
	t.Helper()
	p, err := NewProfile(circles(heights, radii))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// circles puts the radii of a table beside its heights.
func circles(heights, radii []float64) []Circle {
	all := make([]Circle, len(heights))
	for i := range all {
		all[i] = Circle{radii[i], heights[i]}
	}
	return all
}

// Between two stations the curve never leaves the range they span.
func TestProfileDoesNotOvershoot(t *testing.T) {
	heights := []float64{0, 10, 20, 22, 60, 61, 100}
	radii := []float64{40, 40, 55, 30, 30, 48, 47}
	p := profileOf(t, heights, radii)
	for i := 1; i < len(heights); i++ {
		low, high := min(radii[i-1], radii[i]), max(radii[i-1], radii[i])
		for k := 0.0; k <= 1; k += 1.0 / 512 {
			if r := p.Radius(heights[i-1] + k*(heights[i]-heights[i-1])); r < low-1e-9 || r > high+1e-9 {
				t.Fatalf("between stations %d and %d the radius is %g, beyond %g to %g", i, i+1, r, low, high)
			}
		}
	}
	for i, z := range heights {
		if r := p.Radius(z); math.Abs(r-radii[i]) > 1e-9 {
			t.Errorf("the profile passes station %d at radius %g, not %g", i+1, r, radii[i])
		}
	}
}

// Stations on one line make that line: radius 30 + z/10, whose length up to z is
// z √1.01.
func TestStraightProfile(t *testing.T) {
	p := profileOf(t, []float64{0, 7, 50, 93, 100}, []float64{30, 30.7, 35, 39.3, 40})
	for z := 0.0; z <= 100; z += 3.7 {
		if math.Abs(p.Radius(z)-(30+z/10)) > 1e-9 || math.Abs(p.Slope(z)-0.1) > 1e-9 ||
			math.Abs(p.Along(z)-z*math.Sqrt(1.01)) > 1e-8 || math.Abs(p.Curvature(z)) > 1e-9 {
			t.Errorf("at %g: radius %g, slope %g, along %g, curvature %g", z, p.Radius(z), p.Slope(z), p.Along(z), p.Curvature(z))
		}
	}
	cone, worst := p.FitCone(20, 80)
	if worst > 1e-9 || math.Abs(math.Tan(cone.HalfAngle.Radians())-0.1) > 1e-12 || math.Abs(cone.AlongAt(60)-60*math.Sqrt(1.01)) > 1e-8 {
		t.Errorf("the cone of a straight profile: %+v, worst error %g", cone, worst)
	}
}

// A sphere of radius 50 measured every 2 mm: the length of its profile from the
// equator up to latitude φ is 50 φ, and it bulges with a curvature of 1/50.
func TestRoundProfile(t *testing.T) {
	var heights, radii []float64
	for z := 0.0; z <= 40; z += 2 {
		heights, radii = append(heights, z), append(radii, math.Sqrt(2500-z*z))
	}
	p := profileOf(t, heights, radii)
	for z := 4.0; z <= 36; z += 4 {
		if want := 50 * math.Asin(z/50); math.Abs(p.Along(z)-want) > 0.01 {
			t.Errorf("along the sphere to %g: %g, wanted %g", z, p.Along(z), want)
		}
		if back := p.HeightAt(p.Along(z)); math.Abs(back-z) > 1e-9 {
			t.Errorf("height %g comes back as %g", z, back)
		}
		if k := p.Curvature(z + 1); math.Abs(k-0.02) > 0.004 {
			t.Errorf("curvature at %g: %g, wanted 0.02", z+1, k)
		}
	}
	// The worst error of the fitted cone, by a walk over the band in fine steps;
	// and no other line does better in the sum of squares.
	cone, worst := p.FitCone(5, 35)
	sum := func(slope, at20 float64) (squares, most float64) {
		for z := 5.0; z <= 35; z += 0.01 {
			e := at20 + slope*(z-20) - p.Radius(z)
			squares, most = squares+e*e, max(most, math.Abs(e))
		}
		return squares, most
	}
	slope, middle := math.Tan(cone.HalfAngle.Radians()), cone.RadiusAt(20)
	best, most := sum(slope, middle)
	if math.Abs(most-worst) > 0.02 {
		t.Errorf("worst error %g, walked %g", worst, most)
	}
	for _, d := range []float64{-0.01, 0.01} {
		if a, _ := sum(slope+d, middle); a <= best {
			t.Errorf("a slope %g off fits better", d)
		}
		if a, _ := sum(slope, middle+10*d); a <= best {
			t.Errorf("a radius %g off fits better", 10*d)
		}
	}
}

func TestProfileRefuses(t *testing.T) {
	for _, c := range [][2][]float64{
		{{}, {}}, {{0}, {40}}, {{0, 0}, {40, 40}}, {{10, 0}, {40, 40}}, {{0, 10}, {40, 0}}, {{0, 10}, {40, math.NaN()}}, {{0, math.NaN()}, {40, 40}},
	} {
		if _, err := NewProfile(circles(c[0], c[1])); !errors.Is(err, ErrProfile) {
			t.Errorf("heights %v, radii %v: %v", c[0], c[1], err)
		}
	}
}

// Beyond its ends a profile runs on straight, as steep as it ends.
func TestProfileRunsOn(t *testing.T) {
	// The radius is 30 + z/10: 29 at -10, 41.5 at 115.
	p := profileOf(t, []float64{0, 100}, []float64{30, 40})
	for z, want := range map[float64]float64{-10: 29, 0: 30, 100: 40, 115: 41.5} {
		if r := p.Radius(z); math.Abs(r-want) > 1e-12 {
			t.Errorf("of the taper the radius at %g is %g, not %g", z, r, want)
		}
	}
	// A ball of radius 50 from its equator to 30 mm above, where its radius
	// is 40 and its tangent, square to the way (40, 30), loses 3 for every 4 up.
	var heights, radii []float64
	for z := 0.0; z <= 30; z += 2 {
		heights, radii = append(heights, z), append(radii, math.Sqrt(2500-z*z))
	}
	p = profileOf(t, heights, radii)
	for z, want := range map[float64]float64{-8: 50, 30: 40, 34: 37, 50: 25} {
		if r := p.Radius(z); math.Abs(r-want) > 0.02 {
			t.Errorf("of the ball the radius at %g is %g, not %g", z, r, want)
		}
	}
	if k := p.Curvature(40); k != 0 {
		t.Errorf("beyond the ball's end the curvature is %g", k)
	}
}
