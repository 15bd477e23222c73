package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// spot is a place on the glass, by the angle round it and the distance along its profile.
// radius and height follow from those.
type spot struct{ theta, along, radius, height float64 }

// spotOf returns the spot of a place on the chart.
func spotOf(surface *geometry.Surface, at geometry.Point) spot {
	s := spot{}
	s.theta, s.along = surface.ReverseAlong(at)
	s.radius, s.height = surface.At(s.along)
	return s
}

// frame is a place on the glass with the coordinates there: on the tangent plane X to the
// right round the glass and Y up the profile, and Z outwards.
type frame struct {
	spot
	surface  *geometry.Surface
	flat     bool    // the surface has no bend along its profile
	sin, cos float64 // of the lean of the profile
	taper    float64 // one over the distance from the apex of the cone that touches the glass here
	round    float64 // κ₁, the curvature round the glass
	bulge    float64 // κ₂, the curvature along the profile
}

// newFrame returns the frame at a place on the glass.
func newFrame(surface *geometry.Surface, theta, along float64) frame {
	f := frame{spot: spot{theta: theta, along: along}, surface: surface, flat: surface.Flat()}
	f.radius, f.height = surface.At(along)
	f.sin, f.cos, f.bulge = surface.Lean(along)
	if f.level() { // it has no curvature, and its middle has no radius
		return f
	}
	f.taper, f.round = f.sin/f.radius, f.cos/f.radius
	return f
}

// on returns the place on a straight glass of a point on the frame's flat map. The map keeps
// every length and angle.
func (f *frame) on(x, y float64) spot {
	if f.level() {
		out := f.radius + y
		radius := math.Hypot(x, out)
		return spot{theta: f.theta + math.Atan2(x, out), along: radius, radius: radius, height: f.height}
	}
	side, up := f.taper*x, 1+f.taper*y
	along := (f.taper*(x*x+y*y) + 2*y) / (math.Sqrt(side*side+up*up) + 1)
	return spot{
		theta: f.theta + x/(f.radius*up)*atanc(side/up), along: f.along + along,
		radius: f.radius + along*f.sin, height: f.height + along*f.cos,
	}
}

// level reports whether the glass is a disc, the underside of a body.
func (f *frame) level() bool { return f.cos == 0 }

// counted returns the height of a spot as it is counted: on a disc, outwards from its middle.
func (f *frame) counted(s spot) float64 {
	if f.level() {
		return s.radius
	}
	return s.height
}

// space returns a spot's place in space, in the frame's coordinates.
func (f *frame) space(s spot) r3.Vec {
	sin, cos := math.Sincos(s.theta - f.theta)
	away, rise := s.radius*cos-f.radius, s.height-f.height
	return r3.Vec{X: s.radius * sin, Y: away*f.sin + rise*f.cos, Z: away*f.cos - rise*f.sin}
}

// lean returns the sine and cosine of the profile's lean at a spot.
func (f *frame) lean(s spot) (sin, cos float64) {
	if f.flat {
		return f.sin, f.cos
	}
	sin, cos, _ = f.surface.Lean(s.along)
	return sin, cos
}

// normal returns the outward unit normal at a spot with a lean of the profile, in the
// frame's coordinates.
func (f *frame) normal(s spot, leanSin, leanCos float64) r3.Vec {
	sin, cos := math.Sincos(s.theta - f.theta)
	out := leanCos * cos
	return r3.Vec{X: leanCos * sin, Y: out*f.sin - leanSin*f.cos, Z: out*f.cos + leanSin*f.sin}
}

// atanc returns atan(x)/x, 1 at zero.
func atanc(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/3 // the next term is below 1e-16
	}
	return math.Atan(x) / x
}
