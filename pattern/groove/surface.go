package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// surface is the outside of the glass, with what every question about it needs.
type surface struct {
	geometry.Cone
	sin, cos float64 // of the half-angle
}

func newSurface(cone geometry.Cone) surface {
	sin, cos := math.Sincos(cone.HalfAngle)
	return surface{cone, sin, cos}
}

// foothold is a place on the surface and the surface seen from there. Its flat
// map has the place at the origin, X to the right round the glass and Y up the
// slant; in space X and Y lie the same way on the tangent plane and Z goes out.
type foothold struct {
	at, right, up geometry.Point // on the surface's own flat map
	radius        float64        // of the glass
	taper         float64        // one over the distance from the apex
	sin, cos      float64        // of the half-angle
}

// foothold returns the foothold at a place on the flat map.
func (c *surface) foothold(at geometry.Point) foothold {
	hung := foothold{radius: c.Radius, taper: c.sin / c.Radius}
	side, up, along := hung.polar(geometry.Point{X: at.X, Y: at.Y - c.Along})
	far := math.Sqrt(side*side + up*up)
	side, up = side/far, up/far // straight up the slant is straight away from the apex
	radius := c.Radius + along*c.sin
	return foothold{
		at: at, right: geometry.Point{X: up, Y: -side}, up: geometry.Point{X: side, Y: up},
		radius: radius, taper: c.sin / radius, sin: c.sin, cos: c.cos,
	}
}

// polar returns where a place lies from the apex, to the side and up, both in
// units of the foothold's own distance from it; and how much farther from the
// apex it lies than the foothold, along the slant.
func (f *foothold) polar(q geometry.Point) (side, up, along float64) {
	side, up = f.taper*q.X, 1+f.taper*q.Y
	return side, up, (f.taper*(q.X*q.X+q.Y*q.Y) + 2*q.Y) / (math.Sqrt(side*side+up*up) + 1)
}

// turn returns how far round the glass a place on the foothold's flat map
// lies from it, and how far along the slant.
func (f *foothold) turn(q geometry.Point) (sin, cos, along float64) {
	side, up, along := f.polar(q)
	sin, cos = math.Sincos(q.X / (f.radius * up) * atanc(side/up))
	return sin, cos, along
}

// space returns where a place lies in space that turn tells.
func (f *foothold) space(sin, cos, along float64) r3.Vec {
	radius, rise := f.radius+along*f.sin, along*f.cos
	away := radius*cos - f.radius // from the glass's axis
	return r3.Vec{X: radius * sin, Y: away*f.sin + rise*f.cos, Z: away*f.cos - rise*f.sin}
}

// normal returns the outward unit normal at a place that turn tells.
func (f *foothold) normal(sin, cos float64) r3.Vec {
	return r3.Vec{X: f.cos * sin, Y: f.cos * f.sin * (cos - 1), Z: f.cos*f.cos*cos + f.sin*f.sin}
}

// atanc returns atan(x)/x, 1 at zero.
func atanc(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/3 // the next term is below 1e-16
	}
	return math.Atan(x) / x
}
