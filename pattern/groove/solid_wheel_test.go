package groove_test

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// body is a wheel as a solid of revolution: whether a point belongs to it, by
// its distance from the middle plane along the axle and from the axle.
type body struct {
	radius float64
	holds  func(axial, radial float64) bool
}

// newBody returns the solid of a wheel.
func newBody(w groove.Wheel) body {
	within := func(axial float64) bool { return math.Abs(axial) <= w.Thick/2 }
	b := body{radius: w.Radius}
	switch w.Edge {
	case groove.Mitre:
		v := vee(w)
		b.holds = func(axial, radial float64) bool { return within(axial) && v(axial, radial) }
	case groove.Flat:
		b.holds = func(axial, radial float64) bool { return within(axial) && radial <= w.Radius }
	case groove.Round:
		// A torus of tube radius w.Convex, and all that lies between it and the axle.
		core := w.Radius - w.Convex
		b.holds = func(axial, radial float64) bool {
			out := max(radial-core, 0)
			return within(axial) && out*out+axial*axial <= w.Convex*w.Convex
		}
	case groove.Gang:
		mitres := gang(w)
		b.holds = func(axial, radial float64) bool {
			return slices.ContainsFunc(mitres, func(m body) bool { return m.holds(axial, radial) })
		}
	}
	return b
}

// gang returns the mitres of a gang wheel, each within the whole wheel's faces.
func gang(w groove.Wheel) []body {
	mitres, v := make([]body, w.Mitres), vee(w)
	for i := range mitres {
		offset := (float64(i) - float64(w.Mitres-1)/2) * w.Spacing
		mitres[i] = body{radius: w.Radius, holds: func(axial, radial float64) bool {
			return math.Abs(axial) <= w.Thick/2 && v(axial-offset, radial)
		}}
	}
	return mitres
}

// vee returns what reports whether a V holds a point at a distance from its middle
// plane and from the axle. A flat tip cuts the point off a V that would stand so much
// higher; a round one lies in the V and touches both its flanks, so that what is within
// its ball, or below the ring it touches them in, belongs.
func vee(w groove.Wheel) func(axial, radial float64) bool {
	sin, cos := math.Sincos(w.Angle / 2)
	point := w.Radius + w.Tip/2*cos/sin // of the V, undressed
	q, centre := w.TipRadius, w.Radius-w.TipRadius
	if q > 0 {
		point = centre + q/sin
	}
	return func(axial, radial float64) bool {
		if q > 0 && radial > centre+q*sin {
			return axial*axial+(radial-centre)*(radial-centre) <= q*q
		}
		return radial <= w.Radius && math.Abs(axial) <= (point-radial)*sin/cos
	}
}

// placed is where a wheel stands, and how far along its stroke.
type placed struct {
	centre, axle r3.Vec
	along        float64
}

// set places a wheel where a walker stands, in the plane of the surface's normal
// and of the walker's direction, its rim a depth below the surface.
func (b body) set(g glass, w walker, depth float64) placed {
	rim := r3.Sub(w.at, r3.Scale(depth, g.normal(w.at)))
	return placed{centre: r3.Add(rim, r3.Scale(b.radius, g.normal(w.at))), axle: g.left(w)}
}

// inside reports whether a point lies in the wheel at any of the given places.
func (b body) inside(at []placed, p r3.Vec) bool { return b.first(at, p) < len(at) }

// first returns the first of the given places at which a point lies in the wheel; their
// number where it lies in none.
func (b body) first(at []placed, p r3.Vec) int {
	for i := range at { // by their numbers alone, as most of this search goes by in here
		w := &at[i]
		x, y, z := p.X-w.centre.X, p.Y-w.centre.Y, p.Z-w.centre.Z
		axial := x*w.axle.X + y*w.axle.Y + z*w.axle.Z
		radial2 := x*x + y*y + z*z - axial*axial
		if radial2 <= b.radius*b.radius && b.holds(axial, math.Sqrt(max(radial2, 0))) {
			return i
		}
	}
	return len(at)
}

// insider returns what inside does, and tries the place that held the last point first.
func (b body) insider(at []placed) func(p r3.Vec) bool {
	last := len(at)
	return func(p r3.Vec) bool {
		if last < len(at) && b.inside(at[last:last+1], p) {
			return true
		}
		last = b.first(at, p)
		return last < len(at)
	}
}
