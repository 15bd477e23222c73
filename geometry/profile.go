package geometry

import (
	"errors"
	"math"
	"sort"
)

// Profile is the outside curve r(z) of a body of revolution, through measured
// radii at rising heights. Its curvature is continuous, also at the stations.
// Between two stations it only widens or only narrows and stays between their
// radii, so that it is level at a reading above or below both its neighbours. Two
// stations, or several on one line, give a straight line.
type Profile struct {
	heights []float64 // where the stretches meet; a straight one has its ends only
	curve   []quintic // the stretches between them
	along   []float64 // distance along the profile at each height
}

// ErrProfile is returned for heights that do not rise or radii that are not positive.
var ErrProfile = errors.New("a profile needs two or more rising heights, with a radius above zero at each")

// NewProfile returns the profile through stations, from the lowest up.
func NewProfile(stations []Circle) (*Profile, error) {
	if len(stations) < 2 {
		return nil, ErrProfile
	}
	for i, s := range stations {
		if !(s.Radius > 0) || math.IsInf(s.Radius, 0) || math.IsInf(s.Height, 0) || i > 0 && !(s.Height > stations[i-1].Height) {
			return nil, ErrProfile
		}
	}
	if last := len(stations) - 1; onOneLine(stations) {
		stations = []Circle{stations[0], stations[last]}
	}
	p := &Profile{curve: quintics(knotsOf(stations)), along: []float64{0}}
	for _, s := range stations {
		p.heights = append(p.heights, s.Height)
	}
	for i := range p.curve {
		p.along = append(p.along, p.along[i]+p.curve[i].length(p.heights[i+1]))
	}
	return p, nil
}

// onOneLine reports whether all stations lie on the line through the first and the last.
func onOneLine(stations []Circle) bool {
	first, last := stations[0], stations[len(stations)-1]
	rate := (last.Radius - first.Radius) / (last.Height - first.Height)
	for _, s := range stations {
		if math.Abs(first.Radius+rate*(s.Height-first.Height)-s.Radius) > onALine {
			return false
		}
	}
	return true
}

// Straight reports whether the profile is one straight line.
func (p *Profile) Straight() bool { return len(p.curve) == 1 }

// Bottom and Top return the lowest and the highest height.
func (p *Profile) Bottom() float64 { return p.heights[0] }
func (p *Profile) Top() float64    { return p.heights[len(p.heights)-1] }

// At returns the radius, the slope r′ = dr/dz, positive where the profile widens
// upwards, and the bend r″ at height z. Beyond its ends the profile runs on straight.
func (p *Profile) At(z float64) (radius, slope, bend float64) {
	if end := min(max(z, p.Bottom()), p.Top()); z != end {
		radius, slope, _ = p.stretch(end).at(end)
		return radius + (z-end)*slope, slope, 0
	}
	return p.stretch(z).at(z)
}

// stretch returns the stretch of the curve that a height lies in.
func (p *Profile) stretch(z float64) *quintic { return &p.curve[p.index(p.heights, z)] }

// index returns which of the stretches holds a value, given where they meet.
func (p *Profile) index(meet []float64, value float64) int {
	return min(max(sort.SearchFloat64s(meet, value)-1, 0), len(p.curve)-1)
}

// Radius returns the radius at height z.
func (p *Profile) Radius(z float64) float64 {
	radius, _, _ := p.At(z)
	return radius
}

// Slope returns dr/dz at height z.
func (p *Profile) Slope(z float64) float64 {
	_, slope, _ := p.At(z)
	return slope
}

// Curvature returns the curvature of the profile at height z, κ₂ = −r″/(1+r′²)^{3/2}:
// positive where it bulges outwards, zero where it is straight.
func (p *Profile) Curvature(z float64) float64 {
	_, slope, bend := p.At(z)
	if bend == 0 {
		return 0 // and not -0
	}
	long := 1 + slope*slope
	return -bend / (long * math.Sqrt(long))
}

// Along returns the distance along the profile from its lower end to height z.
func (p *Profile) Along(z float64) float64 {
	end := min(max(z, p.Bottom()), p.Top())
	i := p.index(p.heights, end)
	s := p.along[i] + p.curve[i].length(end)
	if z != end {
		s += (z - end) * math.Hypot(1, p.Slope(end))
	}
	return s
}

// HeightAt returns the height at distance s along the profile: it undoes Along.
func (p *Profile) HeightAt(s float64) float64 {
	end := min(max(s, 0), p.along[len(p.along)-1])
	i := p.index(p.along, end)
	z := p.curve[i].heightAt(end - p.along[i])
	if s != end {
		z += (s - end) / math.Hypot(1, p.Slope(z))
	}
	return z
}

// FitCone returns the cone with the least squared radius error between two
// heights, given by its circle at the lower one, and the worst radius error that
// remains.
func (p *Profile) FitCone(from, to float64) (cone Cone, worst float64) {
	const samples = 257
	z, r := make([]float64, samples), make([]float64, samples)
	for i := range z {
		z[i] = from + (to-from)*float64(i)/(samples-1)
		r[i] = p.Radius(z[i])
	}
	atZero, slope := LeastSquares(z, r)
	cone = NewCone(Angle(math.Atan(slope)), Circle{atZero + slope*from, from}, p.Along(from))
	for i := range z {
		worst = max(worst, math.Abs(cone.RadiusAt(z[i])-r[i]))
	}
	return cone, worst
}
