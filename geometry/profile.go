package geometry

import (
	"errors"
	"math"
	"sort"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/stat"
)

// Profile is the outside curve r(z) of a body of revolution, through measured
// radii at rising heights. Between them it runs smoothly and never beyond them
// (Fritsch and Butland's monotone cubics, from gonum); two stations, or several
// on one line, give a straight line.
type Profile struct {
	heights, radii []float64
	curve          interp.FritschButland
	along          []float64 // distance along the profile at each height
}

// ErrProfile is returned for heights that do not rise or radii that are not positive.
var ErrProfile = errors.New("a profile needs two or more rising heights, with a radius above zero at each")

// NewProfile returns the profile through the given radii at the given heights.
func NewProfile(heights, radii []float64) (*Profile, error) {
	if len(heights) < 2 || len(heights) != len(radii) {
		return nil, ErrProfile
	}
	for i := range heights {
		if !(radii[i] > 0) || math.IsInf(radii[i], 0) || i > 0 && !(heights[i] > heights[i-1]) {
			return nil, ErrProfile
		}
	}
	p := &Profile{heights: heights, radii: radii, along: make([]float64, len(heights))}
	if err := p.curve.Fit(heights, radii); err != nil {
		return nil, err
	}
	for i := 1; i < len(heights); i++ {
		p.along[i] = p.along[i-1] + p.length(heights[i-1], heights[i])
	}
	return p, nil
}

// Bottom and Top return the least and the greatest height.
func (p *Profile) Bottom() float64 { return p.heights[0] }
func (p *Profile) Top() float64    { return p.heights[len(p.heights)-1] }

// Radius returns the radius at height z; beyond its ends the profile runs on straight.
func (p *Profile) Radius(z float64) float64 {
	if end, beyond := p.beyond(z); beyond {
		return p.curve.Predict(end) + (z-end)*p.curve.PredictDerivative(end)
	}
	return p.curve.Predict(z)
}

// Slope returns dr/dz at height z, positive where the profile widens upwards.
func (p *Profile) Slope(z float64) float64 {
	if end, beyond := p.beyond(z); beyond {
		return p.curve.PredictDerivative(end)
	}
	return p.curve.PredictDerivative(z)
}

func (p *Profile) beyond(z float64) (end float64, beyond bool) {
	if z < p.Bottom() {
		return p.Bottom(), true
	}
	return p.Top(), z > p.Top()
}

// Curvature returns the curvature of the profile at height z, κ₂ = −r″/(1+r′²)^{3/2}:
// positive where it bulges outwards, zero where it is straight.
func (p *Profile) Curvature(z float64) float64 {
	const h = 0.5 // mm: far below the spacing of stations, far above rounding
	slope := p.Slope(z)
	bend := (p.Slope(z+h) - p.Slope(z-h)) / (2 * h)
	return -bend / math.Pow(1+slope*slope, 1.5)
}

// Along returns the distance along the profile from its lower end to height z.
func (p *Profile) Along(z float64) float64 {
	i := sort.SearchFloat64s(p.heights, z)
	switch {
	case i == 0:
		return (z - p.Bottom()) * math.Hypot(1, p.Slope(z))
	case i == len(p.heights):
		return p.along[i-1] + (z-p.Top())*math.Hypot(1, p.Slope(z))
	}
	return p.along[i-1] + p.length(p.heights[i-1], z)
}

// HeightAt returns the height at distance s along the profile: it undoes Along.
func (p *Profile) HeightAt(s float64) float64 {
	z := p.Bottom() + s
	// Newton's rule: the rate ds/dz is √(1+r′²), at least 1, so it settles fast.
	for range 50 {
		step := (p.Along(z) - s) / math.Hypot(1, p.Slope(z))
		z -= step
		if math.Abs(step) < 1e-12*(1+math.Abs(s)) {
			break
		}
	}
	return z
}

// length returns the length of the profile between two heights with no station between them.
func (p *Profile) length(from, to float64) float64 {
	return quad.Fixed(func(z float64) float64 { return math.Hypot(1, p.Slope(z)) }, from, to, 12, nil, 0)
}

// FitCone returns the cone of least squared radius error between two heights,
// hung on its own circle at the lower one, and the worst radius error it leaves.
func (p *Profile) FitCone(from, to float64) (cone Cone, worst float64) {
	const samples = 257
	z, r := make([]float64, samples), make([]float64, samples)
	for i := range z {
		z[i] = from + (to-from)*float64(i)/(samples-1)
		r[i] = p.Radius(z[i])
	}
	_, slope := stat.LinearRegression(z, r, nil, false)
	mean := stat.Mean(r, nil)
	cone = NewCone(math.Atan(slope), mean+slope*(from-to)/2, from, p.Along(from))
	for i := range z {
		worst = max(worst, math.Abs(cone.RadiusAt(z[i])-r[i]))
	}
	return cone, worst
}
