package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cone is a straight or tapered surface about the z axis and the flat map that
// unrolls it. A cylinder is the cone of half-angle zero. The half-angle is
// positive when the surface widens upwards, so that the apex lies below.
//
// The map is polar about the apex, ρ = r/sin α and φ = θ sin α. The code has it in
// a form that stays exact as α passes through zero. The map keeps every length and
// angle.
type Cone struct {
	HalfAngle Angle
	// The circle the cone is given by, and its distance along the profile.
	Circle
	Along float64

	sin, cos float64
}

// NewCone returns the cone of a half-angle through a circle that lies at the
// given distance along the profile. The circle's radius is positive and the
// half-angle within ±π/2.
func NewCone(halfAngle Angle, through Circle, along float64) Cone {
	sin, cos := math.Sincos(halfAngle.Radians())
	return Cone{HalfAngle: halfAngle, Circle: through, Along: along, sin: sin, cos: cos}
}

// KeptOff returns the cone, or one through the same circle that is less steep: as steep as
// leaves a tenth of that circle's radius at both of two distances along a profile. A chart
// runs backwards past its apex, and two places share a point there.
func (c Cone) KeptOff(from, to float64) Cone {
	const part = 0.1
	sin := c.sin
	if down := c.Along - from; down > 0 {
		sin = math.Min(sin, (1-part)*c.Radius/down)
	}
	if up := to - c.Along; up > 0 {
		sin = math.Max(sin, -(1-part)*c.Radius/up)
	}
	if sin == c.sin {
		return c
	}
	return NewCone(Angle(math.Asin(sin)), c.Circle, c.Along)
}

// RadiusAt returns the cone's radius at height z.
func (c Cone) RadiusAt(z float64) float64 { return c.Radius + (z-c.Height)*c.sin/c.rise() }

// AlongAt returns the distance along the profile at height z.
func (c Cone) AlongAt(z float64) float64 { return c.Along + (z-c.Height)/c.rise() }

// HeightAt returns the height at distance s along the profile.
func (c Cone) HeightAt(s float64) float64 { return c.Height + (s-c.Along)*c.rise() }

// ApexRadius returns the signed distance ρ from the apex along the slant to the
// circle at distance s along the profile: infinite on a cylinder, negative when
// the apex lies above.
func (c Cone) ApexRadius(s float64) float64 { return c.Radius/c.sin + s - c.Along }

// Forward returns the place on the flat map of the point at angle θ and height
// z. θ is not reduced, so a wrap may run past one turn.
func (c Cone) Forward(theta, z float64) Point { return c.forwardAlong(theta, c.AlongAt(z)) }

// forwardAlong is Forward for the point at distance s along the profile.
func (c Cone) forwardAlong(theta, s float64) Point {
	r := c.Radius + (s-c.Along)*c.sin
	phi := theta * c.sin
	half := phi / 2
	return Point{
		X: r * theta * sinc(phi),
		Y: s - r*theta*math.Sin(half)*sinc(half),
	}
}

// Reverse returns the angle and height of a place on the flat map. It undoes
// Forward for angles within half a turn of the flat map (|θ sin α| < π).
func (c Cone) Reverse(p Point) (theta, z float64) {
	theta, s := c.reverseAlong(p)
	return theta, c.HeightAt(s)
}

// reverseAlong is Reverse with the distance along the profile in place of the height.
func (c Cone) reverseAlong(p Point) (theta, s float64) {
	k := c.sin / c.Radius
	if k == 0 {
		theta = p.X / c.Radius
	} else {
		theta = math.Atan2(k*p.X, 1+k*(p.Y-c.Along)) / c.sin
	}
	return theta, c.alongOf(p)
}

// HeightOf returns the height of a place on the flat map.
func (c Cone) HeightOf(p Point) float64 { return c.HeightAt(c.alongOf(p)) }

// alongOf returns the distance along the profile of a place on the flat map.
func (c Cone) alongOf(p Point) float64 {
	k := c.sin / c.Radius
	x, y := p.X, p.Y-c.Along
	// (kx, 1+ky) points from the apex to p, in units of the given circle's ρ.
	up := 1 + k*y
	rho := math.Sqrt(k*k*x*x + up*up) // of order one: no need of Hypot
	return c.Along + (k*(x*x+y*y)+2*y)/(rho+1)
}

// Turned returns the motion of the flat map that carries every point round the
// surface by the angle θ.
func (c Cone) Turned(theta float64) Motion {
	// This is a turn about the apex, which on a cylinder lies at infinity:
	// where it takes the point of the given circle at θ = 0 says the rest.
	sin, cos := math.Sincos(-theta * c.sin)
	to := c.Forward(theta, c.Height)
	return Motion{Cos: cos, Sin: sin, X: to.X + sin*c.Along, Y: to.Y - cos*c.Along}
}

// Space returns the point at angle θ and height z in space. Seen from above θ
// grows anticlockwise, which is to the right as the body is seen from outside.
func (c Cone) Space(theta, z float64) r3.Vec {
	r := c.RadiusAt(z)
	sin, cos := math.Sincos(theta)
	return r3.Vec{X: r * cos, Y: r * sin, Z: z}
}

// Normal returns the outward unit normal at angle θ.
func (c Cone) Normal(theta float64) r3.Vec {
	sin, cos := math.Sincos(theta)
	return r3.Vec{X: c.cos * cos, Y: c.cos * sin, Z: -c.sin}
}

// Slant returns the unit direction up the slant at angle θ.
func (c Cone) Slant(theta float64) r3.Vec {
	sin, cos := math.Sincos(theta)
	return r3.Vec{X: c.sin * cos, Y: c.sin * sin, Z: c.cos}
}

// Curvature returns the curvature round the cone at height z, κ₁ = cos α / r.
// Along the slant a cone has none.
func (c Cone) Curvature(z float64) float64 { return c.cos / c.RadiusAt(z) }

// sinc returns sin(x)/x, 1 at zero.
func sinc(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/6 // the next term is below 1e-18
	}
	return math.Sin(x) / x
}
