package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// placing is a wheel set on the glass at one place: it lies in the plane of the
// surface's normal and of the cut's direction, its rim a depth below the surface.
type placing struct {
	cone         geometry.Cone
	radius       float64 // the wheel's
	at           geometry.Point
	ahead, left  geometry.Point // on the flat map
	centre, axle r3.Vec         // the axle points to the left
	curve        bending
}

// bending is how the surface curves at a place, seen along a direction on it:
// Euler's theorem with κ₂ = 0, and the twist that goes with it.
type bending struct{ along, across, twist float64 }

// place sets a wheel on the cone.
func place(cone geometry.Cone, radius, depth float64, at, ahead geometry.Point) *placing {
	theta, z := cone.Reverse(at)
	p := &placing{
		cone: cone, radius: radius, at: at, ahead: ahead,
		left: geometry.Point{X: -ahead.Y, Y: ahead.X},
	}
	normal := cone.Normal(theta)
	p.centre = r3.Add(cone.Space(theta, z), r3.Scale(radius-depth, normal))
	// The directions up the slant and round to the right, on the map and in space.
	sin, cos := math.Sincos(theta * math.Sin(cone.HalfAngle))
	up, right := geometry.Point{X: sin, Y: cos}, geometry.Point{X: cos, Y: -sin}
	slant := cone.Slant(theta)
	round := r3.Cross(slant, normal)
	p.axle = r3.Add(r3.Scale(r2.Dot(p.left, up), slant), r3.Scale(r2.Dot(p.left, right), round))
	curvature := cone.Curvature(z)
	cosine, sine := r2.Dot(ahead, up), r2.Dot(ahead, right)
	p.curve = bending{
		along:  curvature * sine * sine,
		across: curvature * cosine * cosine,
		twist:  -curvature * sine * cosine,
	}
	return p
}

// space returns the point of the surface at a place on the flat map.
func (p *placing) space(q geometry.Point) r3.Vec {
	return p.cone.Space(p.cone.Reverse(q))
}

// bite returns how far the edge of a blade reaches past a place on the surface,
// measured along the wheel's radius: positive inside the blade.
func (p *placing) bite(b blade, q geometry.Point) float64 { return p.biteAt(b, p.space(q)) }

// biteAt is bite for any point in space.
func (p *placing) biteAt(b blade, x r3.Vec) float64 {
	v := r3.Sub(x, p.centre)
	beta := r3.Dot(v, p.axle)
	return p.radius - b.drop(beta) - math.Sqrt(r3.Dot(v, v)-beta*beta)
}

// aside returns how far a place on the surface is off the wheel's middle plane,
// to the left.
func (p *placing) aside(q geometry.Point) float64 {
	return r3.Dot(r3.Sub(p.space(q), p.centre), p.axle)
}

// tail returns, to second order, the contact half-length at a depth: √(2d / (1/R + κ_along)).
func (p *placing) tail(depth float64) float64 {
	return math.Sqrt(2 * depth / (1/p.radius + p.curve.along))
}

// contact returns how far from the place a blade stays in the glass along the
// cut, ahead of it (side 1) or behind it (side -1).
func (p *placing) contact(b blade, depth, side float64) float64 {
	guess := p.tail(depth)
	return root(func(s float64) float64 {
		return p.bite(b, r2.Add(p.at, r2.Scale(side*s, p.ahead)))
	}, guess, (1/p.radius+p.curve.along)*guess)
}
