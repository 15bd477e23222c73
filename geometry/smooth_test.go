package geometry

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Between two stations a profile never leaves what they span, and it has no
// corners: however wild the stations are.
func TestProfileIsSmoothAndNeverOvershoots(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 7))
	for range 300 {
		n := 2 + random.IntN(9)
		heights, radii := make([]float64, n), make([]float64, n)
		z := 0.0
		for i := range n {
			heights[i], radii[i] = z, 20+30*random.Float64()
			z += 4 + 40*random.Float64()
		}
		p := profile(t, heights, radii)
		for i := 1; i < n; i++ {
			low, high := min(radii[i-1], radii[i]), max(radii[i-1], radii[i])
			for k := range 101 {
				z := heights[i-1] + (heights[i]-heights[i-1])*float64(k)/100
				if r := p.Radius(z); r < low-1e-9 || r > high+1e-9 {
					t.Fatalf("between stations of %g and %g the radius is %g", low, high, r)
				}
			}
			if i < n-1 {
				const near = 1e-7
				before, after := p.Slope(heights[i]-near), p.Slope(heights[i]+near)
				if math.Abs(before-after) > 1e-4 {
					t.Fatalf("a corner at a station: the slope goes from %g to %g", before, after)
				}
			}
		}
	}
}
