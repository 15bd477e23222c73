package geometry

import (
	"math"
	"math/rand/v2"
	"testing"
)

// wild returns stations no glass has: up to 200, from a thousandth of a
// millimetre to 50 mm apart, of any radius, with level and straight stretches.
func wild(random *rand.Rand) (heights, radii []float64) {
	n := 2 + random.IntN(10)
	if random.IntN(10) == 0 {
		n = 2 + random.IntN(199)
	}
	z, r, rate := 0.0, 0.0, 0.0
	for range n {
		step := math.Pow(10, -3+4.7*random.Float64())
		switch next := r + rate*step; {
		case random.IntN(3) == 0 && next > 0.5 && next < 300:
			r = next
		case r == 0 || random.IntN(4) > 0:
			r = 0.5 + 299.5*random.Float64()*random.Float64()
		}
		if len(heights) > 0 {
			z += step
			rate = (r - radii[len(radii)-1]) / step
		}
		heights, radii = append(heights, z), append(radii, r)
	}
	return heights, radii
}

// However wild the stations are: between two of them the curve runs one way and
// never leaves what they read, and there is a number for everything.
func TestProfileRunsOneWayBetweenStations(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 7))
	for range 1000 {
		heights, radii := wild(random)
		p := profile(t, heights, radii)
		for i := 1; i < len(heights); i++ {
			low, high := min(radii[i-1], radii[i]), max(radii[i-1], radii[i])
			up, last := math.Copysign(1, radii[i]-radii[i-1]), radii[i-1]
			for k := range 65 {
				z := heights[i-1] + (heights[i]-heights[i-1])*float64(k)/64
				r, slope, bend := p.At(z)
				if !(r >= low-1e-9 && r <= high+1e-9) || (r-last)*up < -1e-9 || math.IsNaN(slope) || math.IsInf(slope, 0) || math.IsNaN(bend) || math.IsInf(bend, 0) {
					t.Fatalf("stations %v of %v: at %g, between readings of %g and %g, it comes from %g to %g, slope %g, bend %g", heights, radii, z, radii[i-1], radii[i], last, r, slope, bend)
				}
				last = r
			}
			if r := p.Radius(heights[i]); math.Abs(r-radii[i]) > 1e-9 {
				t.Fatalf("the curve passes a station of %g at %g", radii[i], r)
			}
		}
	}
}

// Across a station the slope and the rate at which it changes are the same from
// both sides, by difference quotients that never look across it.
func TestProfileIsSmoothInCurvature(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 3))
	for range 1000 {
		heights, radii := wild(random)
		p := profile(t, heights, radii)
		for i := 1; i < len(heights)-1; i++ {
			z := heights[i]
			side := func(gap, rise float64) (slope, bend, scale float64) {
				e := gap / 4096
				near, mid, far := p.Slope(z), p.Slope(z+e), p.Slope(z+2*e)
				slope = 2*mid - far // to second order
				return slope, (4*mid - 3*near - far) / (2 * e), math.Abs(rise / gap)
			}
			below, above := heights[i]-heights[i-1], heights[i+1]-heights[i]
			slopeBelow, bendBelow, steepBelow := side(-below, radii[i]-radii[i-1])
			slopeAbove, bendAbove, steepAbove := side(above, radii[i+1]-radii[i])
			if off := math.Abs(slopeBelow - slopeAbove); off > 1e-4*max(steepBelow, steepAbove)+1e-6 {
				t.Fatalf("stations %v of %v: a corner at %g: the slope goes from %g to %g", heights, radii, z, slopeBelow, slopeAbove)
			}
			if off := math.Abs(bendBelow - bendAbove); off > 1e-4*(steepBelow/below+steepAbove/above)+1e-6 {
				t.Fatalf("stations %v of %v: at %g the bend goes from %g to %g", heights, radii, z, bendBelow, bendAbove)
			}
		}
	}
}

// The slope and bend that At returns are those of its radius, by difference quotients.
func TestProfileTellsItsOwnRates(t *testing.T) {
	p := profile(t, []float64{0, 10, 25, 33, 60, 90}, []float64{40, 36, 37, 33, 35, 36})
	for z := 0.5; z < 90; z += 1.7 {
		const h = 1e-3
		_, slope, bend := p.At(z)
		before, r, after := p.Radius(z-h), p.Radius(z), p.Radius(z+h)
		if rate := (after - before) / (2 * h); math.Abs(rate-slope) > 1e-6 {
			t.Errorf("at %g: slope %g, by differences %g", z, slope, rate)
		}
		if rate := (after - 2*r + before) / (h * h); math.Abs(rate-bend) > 1e-5 {
			t.Errorf("at %g: bend %g, by differences %g", z, bend, rate)
		}
		if k := -bend / math.Pow(1+slope*slope, 1.5); math.Abs(p.Curvature(z)-k) > 1e-15 {
			t.Errorf("at %g: curvature %g, not %g", z, p.Curvature(z), k)
		}
	}
}

// Along and HeightAt undo each other, on and beyond the glass, and Along agrees
// with a walk in short straight steps.
func TestProfileAlongAndBack(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 9))
	for range 60 {
		n := 2 + random.IntN(7)
		heights, radii := make([]float64, n), make([]float64, n)
		z := 0.0
		for i := range n {
			heights[i], radii[i] = z, 30+15*random.Float64()
			z += 4 + 40*random.Float64()
		}
		p := profile(t, heights, radii)
		walked := 0.0
		const step = 1.0 / 256
		for z := step; z < p.Top(); z += step {
			walked += math.Hypot(step, p.Radius(z)-p.Radius(z-step))
			if math.Mod(z, 8) == 0 && math.Abs(p.Along(z)-walked) > 1e-3 {
				t.Fatalf("stations %v of %v: along to %g: %g, walked %g", heights, radii, z, p.Along(z), walked)
			}
		}
		for z := -20.0; z < p.Top()+20; z += 3.7 {
			if back := p.HeightAt(p.Along(z)); math.Abs(back-z) > 1e-9 {
				t.Fatalf("stations %v of %v: height %g comes back as %g", heights, radii, z, back)
			}
		}
	}
	for range 200 { // wild ones: it ends, and ends near the place
		heights, radii := wild(random)
		p := profile(t, heights, radii)
		long := p.Along(p.Top())
		for k := range 50 {
			s := long * float64(k) / 49
			if z := p.HeightAt(s); math.Abs(p.Along(z)-s) > 1e-6*(1+long) {
				t.Fatalf("stations %v of %v: %g along lies %g high, which is %g along", heights, radii, s, z, p.Along(z))
			}
		}
	}
}
