package geometry

import (
	"math"
	"testing"
)

// Barrels and waists whose profile is an arc of a circle, measured every few
// millimetres: the curvature is one by the circle's radius, and the radius its
// own. The fewest are five stations.
func TestProfileOfAnArc(t *testing.T) {
	for _, radius := range []float64{15, 30, 60, 80, 100, 250, 400} {
		for _, spacing := range []float64{2.5, 5, 10, 25} {
			n := math.Floor(min(55, 0.8*radius) / spacing)
			if n < 2 {
				continue
			}
			for _, bulge := range []float64{1, -1} {
				arc := func(z float64) float64 { return 200 + bulge*(math.Sqrt(radius*radius-z*z)-radius) }
				var heights, radii []float64
				for k := -n; k <= n; k++ {
					heights, radii = append(heights, k*spacing), append(radii, arc(k*spacing))
				}
				p := profile(t, heights, radii)
				for z := -n * spacing; z <= n*spacing; z += 0.05 {
					if k := p.Curvature(z); math.Abs(k*radius*bulge-1) > 0.01 {
						t.Fatalf("arc of %g, stations %g apart, at %g: a curvature of 1/%g", radius, spacing, z, 1/k)
					}
					if r := p.Radius(z); math.Abs(r-arc(z)) > 0.005 {
						t.Fatalf("arc of %g, stations %g apart, at %g: %g across the radius, not %g", radius, spacing, z, r, arc(z))
					}
				}
			}
		}
	}
}

// Stations an uneven way apart make the arc as well, if one stands at its widest.
func TestProfileOfAnArcMeasuredUnevenly(t *testing.T) {
	heights, radii := []float64{-50, -38, -31, -17, -12, 0, 9, 14, 30, 44, 55}, []float64{}
	for _, z := range heights {
		radii = append(radii, math.Sqrt(6400-z*z)-40)
	}
	p := profile(t, heights, radii)
	for z := -50.0; z <= 55; z += 0.1 {
		if k := p.Curvature(z); math.Abs(k*80-1) > 0.01 {
			t.Errorf("at %g: a curvature of 1/%g, not 1/80", z, 1/k)
		}
	}
}

// r = 40 + 5 sin(2πz/100), stations on its widest and narrowest places: the error
// of the curvature falls with the square of the spacing, that of the radius
// with its fourth power, between the second station and the last but one.
func TestProfileOfAWave(t *testing.T) {
	const k = 2 * math.Pi / 100
	errors := func(spacing float64) (radius, curvature float64) {
		var heights, radii []float64
		for z := 0.0; z <= 200; z += spacing {
			heights, radii = append(heights, z), append(radii, 40+5*math.Sin(k*z))
		}
		p := profile(t, heights, radii)
		for z := 25.0; z <= 175; z += 0.05 {
			slope, bend := 5*k*math.Cos(k*z), -5*k*k*math.Sin(k*z)
			radius = max(radius, math.Abs(p.Radius(z)-40-5*math.Sin(k*z)))
			curvature = max(curvature, math.Abs(p.Curvature(z)+bend/math.Pow(1+slope*slope, 1.5))/(5*k*k))
		}
		return radius, curvature
	}
	radius, curvature := errors(5)
	if curvature > 0.02 || radius > 0.001 {
		t.Errorf("stations 5 mm apart: the curvature is off by %.4f of its greatest, the radius by %.5f mm", curvature, radius)
	}
	finerRadius, finer := errors(2.5)
	if curvature/finer < 3.5 || radius/finerRadius < 12 {
		t.Errorf("stations half as far apart leave %.5f of %.5f and %.7f of %.7f mm", finer, curvature, finerRadius, radius)
	}
}

// Stations on one line, read in 64ths of an inch or exactly: no curvature at
// all, one slope, and lengths by Pythagoras.
func TestStraightIsExactlyStraight(t *testing.T) {
	for name, stations := range map[string][2][]float64{
		"cylinder":  {{0, 13, 40, 110}, {42, 42, 42, 42}},
		"two":       {{0, 96}, {31, 40}},
		"in inches": {{0, 1 * 25.4, 2.5 * 25.4, 3.5 * 25.4}, {25.4 * 100 / 128, 25.4 * 104 / 128, 25.4 * 110 / 128, 25.4 * 114 / 128}},
		"thirds":    {{0, 1.0 / 3, 10.0 / 3, 70}, {30, 30 + 1.0/9, 30 + 10.0/9, 30 + 70.0/3}},
	} {
		p := profile(t, stations[0], stations[1])
		if !p.Straight() {
			t.Errorf("%s: not straight", name)
		}
		last := len(stations[0]) - 1
		rate := (stations[1][last] - stations[1][0]) / stations[0][last]
		for z := -10.0; z < 130; z += 0.7 {
			if p.Slope(z) != p.Slope(0) || math.Abs(p.Slope(z)-rate) > 1e-15 || p.Curvature(z) != 0 {
				t.Fatalf("%s at %g: slope %v, curvature %v", name, z, p.Slope(z), p.Curvature(z))
			}
			if want := z * math.Sqrt(1+rate*rate); math.Abs(p.Along(z)-want) > 1e-12 || math.Abs(p.HeightAt(want)-z) > 1e-12 {
				t.Fatalf("%s at %g: along %v, not %v, and back %v", name, z, p.Along(z), want, p.HeightAt(want))
			}
		}
	}
	if p := profile(t, []float64{0, 50, 100}, []float64{30, 35.001, 40}); p.Straight() {
		t.Error("a micrometre off a line is straight")
	}
}

// Where a part of the glass is straight, so is its curve: all of a cylinder above
// a foot, and all of a taper through four stations.
func TestPartlyStraight(t *testing.T) {
	for name, test := range map[string]struct {
		heights, radii []float64
		from, to       float64
	}{
		"foot under a cylinder": {[]float64{0, 8, 60, 90}, []float64{40, 35, 35, 35}, 8, 90},
		"foot under a taper":    {[]float64{0, 8, 58, 83, 108}, []float64{40, 35, 33, 32, 31}, 8, 108},
		"bowl under a taper":    {[]float64{0, 10, 20, 40, 60, 80}, []float64{18, 28, 31, 33, 35, 37}, 20, 80},
		"taper under a rim":     {[]float64{0, 20, 40, 60, 80, 90}, []float64{30, 31, 32, 33, 34, 38}, 0, 80},
		"taper from a waist":    {[]float64{0, 30, 40, 50, 60, 70}, []float64{40, 35, 36, 37, 38, 39}, 40, 70},
		"one reading out":       {[]float64{0, 15, 30, 45, 60, 75, 90}, []float64{30, 31, 32, 33, 34.4, 35, 36}, 0, 45},
	} {
		p := profile(t, test.heights, test.radii)
		rate := (p.Radius(test.to) - p.Radius(test.from)) / (test.to - test.from)
		for z := test.from + 1e-6; z < test.to; z += 0.5 {
			if p.Curvature(z) != 0 || math.Abs(p.Slope(z)-rate) > 1e-12 {
				t.Errorf("%s: at %g a slope of %v, not %v, and a curvature of %v", name, z, p.Slope(z), rate, p.Curvature(z))
				break
			}
		}
	}
}
