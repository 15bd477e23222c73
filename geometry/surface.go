package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Surface is a surface of revolution about the z axis, with a chart that gives its
// places coordinates x and y. The chart is the flat map of a cone near the surface:
// a point at the angle θ and the distance s along the profile lies where the cone's
// point of the same θ and s lies. Where the profile is straight, the cone is the
// surface itself and the chart keeps every length and angle. Elsewhere the chart
// keeps lengths up the profile, and a turn about the axis is a turn about the
// cone's apex.
type Surface struct {
	Meridian
	chart Cone
	flat  bool
}

// NewSurface returns the surface of a profile, charted on a cone whose distances
// along the profile are the profile's own.
func NewSurface(p *Profile, chart Cone) Surface { return NewMeridian(p).Charted(chart) }

// Charted returns the surface of a meridian, charted on a cone.
func (m Meridian) Charted(chart Cone) Surface {
	return Surface{Meridian: m, chart: chart, flat: m.Straight()}
}

// Near returns the place on the chart that lies by.X to the right and by.Y up from
// the place at angle θ and the given distance along the profile. These are measured
// on the cone that touches the surface there, and level lines are as long as they
// are on the surface.
func (s *Surface) Near(theta, along float64, by Point) Point {
	if s.Level() {
		return s.Turned(theta).Apply(Point{X: by.X, Y: along + by.Y})
	}
	radius, height := s.At(along)
	sin, cos, _ := s.Lean(along)
	cone := NewCone(Angle(math.Atan2(sin, cos)), Circle{radius, height}, along)
	turn, to := cone.reverseAlong(Point{X: by.X, Y: along + by.Y})
	if !s.flat {
		there, _ := s.At(to)
		turn *= (radius + (to-along)*sin) / there
	}
	return s.ForwardAlong(theta+turn, to)
}

// Spot is a place on a surface: its angle, and its distance along the profile.
type Spot struct{ Theta, Along float64 }

// Apart returns how far a place lies to the right and up from the place at angle θ and the
// given distance along the profile. It undoes Near.
func (s *Surface) Apart(theta, along float64, at Spot) Point {
	if s.Level() {
		by := s.ForwardAlong(at.Theta-theta, at.Along)
		return Point{X: by.X, Y: by.Y - along}
	}
	radius, height := s.At(along)
	sin, cos, _ := s.Lean(along)
	turn := at.Theta - theta
	if !s.flat {
		there, _ := s.At(at.Along)
		turn *= there / (radius + (at.Along-along)*sin)
	}
	cone := NewCone(Angle(math.Atan2(sin, cos)), Circle{radius, height}, along)
	by := cone.forwardAlong(turn, at.Along)
	return Point{X: by.X, Y: by.Y - along}
}

// Surface returns the cone itself as a surface.
func (c Cone) Surface() Surface { return Surface{Meridian: c.meridian(), chart: c, flat: true} }

// Flat reports whether the chart keeps every length and angle.
func (s *Surface) Flat() bool { return s.flat }

// Upright reports whether the surface is a cylinder.
func (s *Surface) Upright() bool { return s.flat && s.chart.sin == 0 }

// Chart returns the cone whose flat map the chart is.
func (s *Surface) Chart() Cone { return s.chart }

// RadiusAt returns the surface's radius at height z.
func (s *Surface) RadiusAt(z float64) float64 {
	radius, _ := s.At(s.AlongAt(z))
	return radius
}

// Curvatures returns the curvatures at height z, round the surface, κ₁ = cos α / r,
// and along its profile, κ₂: positive where it bulges.
func (s *Surface) Curvatures(z float64) (round, along float64) {
	at := s.AlongAt(z)
	radius, _ := s.At(at)
	_, cos, bulge := s.Lean(at)
	if cos == 0 {
		return 0, bulge // also in the middle of a disc
	}
	return cos / radius, bulge
}

// HeightAt returns the height at a distance along the profile.
func (s *Surface) HeightAt(along float64) float64 {
	if s.Level() {
		return along
	}
	_, z := s.At(along)
	return z
}

// AlongAt returns the distance along the profile at height z.
func (s *Surface) AlongAt(z float64) float64 {
	first, last := &s.joints[0], &s.joints[len(s.joints)-1]
	switch {
	case s.Level():
		return z
	case s.Straight() || z <= first.height:
		return s.from + (z-first.height)/first.cos
	case z >= last.height:
		return s.from + s.Length() + (z-last.height)/last.cos
	}
	return s.from + s.step*s.below(z)
}

// below returns how many steps of the meridian lie below height z, with the part
// of the last one.
func (m *Meridian) below(z float64) float64 {
	lo, hi := 0, len(m.joints)-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; m.joints[mid].height <= z {
			lo = mid
		} else {
			hi = mid
		}
	}
	// Newton's rule within the piece.
	from := m.from + float64(lo)*m.step
	s := from + m.step*(z-m.joints[lo].height)/(m.joints[hi].height-m.joints[lo].height)
	for range 20 {
		_, at := m.At(s)
		_, cos, _ := m.Lean(s)
		step := (at - z) / cos
		s = min(max(s-step, from), from+m.step)
		if math.Abs(step) < 1e-11 {
			break
		}
	}
	return (s - m.from) / m.step
}

// ForwardAlong returns the place on the chart of the point at angle θ and the
// distance s along the profile. θ is not reduced.
func (s *Surface) ForwardAlong(theta, along float64) Point { return s.chart.forwardAlong(theta, along) }

// ReverseAlong returns the angle and the distance along the profile of a place on
// the chart: it undoes ForwardAlong within half a turn of the chart.
func (s *Surface) ReverseAlong(p Point) (theta, along float64) { return s.chart.reverseAlong(p) }

// Forward returns the place on the chart of the point at angle θ and height z.
func (s *Surface) Forward(theta, z float64) Point { return s.ForwardAlong(theta, s.AlongAt(z)) }

// Reverse returns the angle and height of a place on the chart: it undoes Forward.
func (s *Surface) Reverse(p Point) (theta, z float64) {
	theta, along := s.ReverseAlong(p)
	return theta, s.HeightAt(along)
}

// HeightOf returns the height of a place on the chart.
func (s *Surface) HeightOf(p Point) float64 { return s.HeightAt(s.chart.alongOf(p)) }

// Turned returns the motion of the chart that carries every place round the
// surface by the angle θ.
func (s *Surface) Turned(theta float64) Motion { return s.chart.Turned(theta) }

// Space returns where a place of the chart is in space. Seen from above θ grows
// anticlockwise, which is to the right as the body is seen from outside.
func (s *Surface) Space(p Point) r3.Vec {
	theta, along := s.ReverseAlong(p)
	r, z := s.At(along)
	sin, cos := math.Sincos(theta)
	return r3.Vec{X: r * cos, Y: r * sin, Z: z}
}

// ChartRadius returns the radius of the chart's cone at a distance along the
// profile. Level lines are longer on the surface than on the chart by the ratio of
// the two radii.
func (s *Surface) ChartRadius(along float64) float64 {
	return s.chart.Radius + (along-s.chart.Along)*s.chart.sin
}

// Stretch returns the greatest factor by which the chart lengthens anything, between
// two distances along the profile.
func (s *Surface) Stretch(from, to float64) float64 {
	if s.flat {
		return 1
	}
	longest := 1.0
	for along := from; along < to+s.step; along += s.step {
		if r, _ := s.At(min(along, to)); r > 0 {
			longest = max(longest, s.ChartRadius(min(along, to))/r)
		}
	}
	return longest
}

// Compass returns two unit directions on the chart at an angle θ: level to the
// right, and up the profile.
func (s *Surface) Compass(theta float64) (right, up Point) {
	sin, cos := 0.0, 1.0
	if s.chart.sin != 0 {
		sin, cos = math.Sincos(theta * s.chart.sin)
	}
	return Point{X: cos, Y: -sin}, Point{X: sin, Y: cos}
}
