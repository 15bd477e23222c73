package groove_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// This file is the glass and the wheel as two solids in space, asked only
// whether a point lies in them. It shares no formula with the package it
// proves: places on the surface are reached by walking there, and lengths are
// found by bisection between a point inside and a point outside.

// stride is the length of one step on the surface. A step along the tangent,
// drawn back square to the surface, errs by less than κ²·stride³ ≈ 3e-7 mm
// (κ ≤ 1/20 mm), so by less than 0.001 mm in the longest walk here.
const stride = 0.05

// glass is the solid x² + y² ≤ r(z)², with r(z) = radius + slope·z.
type glass struct{ radius, slope float64 }

// normal returns the outward unit normal: the gradient of x² + y² − r(z)².
func (g glass) normal(p r3.Vec) r3.Vec {
	return r3.Unit(r3.Vec{X: p.X, Y: p.Y, Z: -g.slope * (g.radius + g.slope*p.Z)})
}

// holds reports whether a point lies in the glass.
func (g glass) holds(p r3.Vec) bool { return math.Hypot(p.X, p.Y) <= g.radius+g.slope*p.Z }

// onto returns the point of the surface near p, along the normal there.
func (g glass) onto(p r3.Vec) r3.Vec {
	for range 3 { // each round squares the error
		over := math.Hypot(p.X, p.Y) - (g.radius + g.slope*p.Z)
		n := g.normal(p)
		p = r3.Sub(p, r3.Scale(over*math.Hypot(n.X, n.Y), n))
	}
	return p
}

// walker stands on the surface and looks along it.
type walker struct{ at, ahead r3.Vec }

// left returns the direction on the walker's left hand.
func (g glass) left(w walker) r3.Vec { return r3.Cross(g.normal(w.at), w.ahead) }

// step takes a walker ahead by a small length along a line of the surface that
// bends to the left by so much. The direction is carried along by drawing it
// back to the surface, which is how it keeps straight there.
func (g glass) step(w walker, length, bend float64) walker {
	half := r3.Add(w.ahead, r3.Scale(bend*length/2, g.left(w)))
	at := g.onto(r3.Add(w.at, r3.Scale(length, half)))
	ahead := r3.Add(w.ahead, r3.Scale(bend*length, g.left(w)))
	n := g.normal(at)
	return walker{at, r3.Unit(r3.Sub(ahead, r3.Scale(r3.Dot(ahead, n), n)))}
}

// walk takes a walker straight ahead by any length, and back by a negative one.
func (g glass) walk(w walker, length float64) walker {
	n := math.Ceil(math.Abs(length) / stride)
	for range int(n) {
		w = g.step(w, length/n, 0)
	}
	return w
}

// aside returns a walker turned to one hand (1 left, -1 right).
func (g glass) aside(w walker, hand float64) walker {
	return walker{w.at, r3.Scale(hand, g.left(w))}
}

// track is a line on the surface, known every stride.
type track struct {
	glass glass
	bend  float64
	feet  []walker
}

func (g glass) track(from walker, length, bend float64) track {
	t := track{g, bend, []walker{from}}
	for s := 0.0; s < length; s += stride {
		t.feet = append(t.feet, g.step(t.feet[len(t.feet)-1], stride, bend))
	}
	return t
}

// at returns the walker at a distance along the track.
func (t track) at(s float64) walker {
	i := min(max(int(s/stride), 0), len(t.feet)-1)
	return t.glass.step(t.feet[i], s-float64(i)*stride, t.bend)
}

// body is a wheel as a solid of revolution: whether a point belongs to it, by
// its distance from the middle plane along the axle and from the axle.
type body struct {
	radius float64
	holds  func(axial, radial float64) bool
}

// newBody returns the solid of a wheel.
func newBody(w groove.Wheel) body {
	t := math.Tan(w.Angle / 2)
	within := func(axial float64) bool { return math.Abs(axial) <= w.Thick/2 }
	// A wedge whose point stands at the full radius, at an offset from the middle plane.
	wedge := func(axial, radial, offset float64) bool { return math.Abs(axial-offset) <= (w.Radius-radial)*t }
	b := body{radius: w.Radius}
	switch w.Edge {
	case groove.Mitre:
		// A flat cuts the point off a wedge that stands so much higher; a round lies
		// in it, touching both flanks.
		sharp := w.Tip / 2 / t
		centre := w.Radius - w.TipRadius
		apex := w.Radius - w.TipRadius + w.TipRadius/math.Sin(w.Angle/2)
		b.holds = func(axial, radial float64) bool {
			switch {
			case w.Tip > 0:
				return within(axial) && radial <= w.Radius && wedge(axial, radial-sharp, 0)
			case w.TipRadius > 0:
				// Above the line from the round's centre square to the flank, the round bounds it.
				foot := centre + w.TipRadius*math.Sin(w.Angle/2)
				if radial > foot {
					return within(axial) && math.Hypot(axial, radial-centre) <= w.TipRadius
				}
				return within(axial) && math.Abs(axial) <= (apex-radial)*t
			}
			return within(axial) && wedge(axial, radial, 0)
		}
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
		b.holds = func(axial, radial float64) bool {
			for i := range w.Mitres {
				if within(axial) && wedge(axial, radial, (float64(i)-float64(w.Mitres-1)/2)*w.Spacing) {
					return true
				}
			}
			return false
		}
	}
	return b
}

// placed is where a wheel stands.
type placed struct{ centre, axle r3.Vec }

// set places a wheel where a walker stands, in the plane of the surface's normal
// and of the walker's direction, its rim a depth below the surface.
func (b body) set(g glass, w walker, depth float64) placed {
	rim := r3.Sub(w.at, r3.Scale(depth, g.normal(w.at)))
	return placed{r3.Add(rim, r3.Scale(b.radius, g.normal(w.at))), g.left(w)}
}

// inside reports whether a point lies in the wheel at any of the given places.
func (b body) inside(at []placed, p r3.Vec) bool {
	for _, w := range at {
		v := r3.Sub(p, w.centre)
		axial := r3.Dot(v, w.axle)
		radial2 := r3.Dot(v, v) - axial*axial
		if radial2 <= b.radius*b.radius && b.holds(axial, math.Sqrt(max(radial2, 0))) {
			return true
		}
	}
	return false
}

// bisect returns where ok changes from true, at in, to false, at out, to
// 0.00001 mm.
func bisect(in, out float64, ok func(float64) bool) float64 {
	for math.Abs(out-in) > 1e-5 {
		if mid := (in + out) / 2; ok(mid) {
			in = mid
		} else {
			out = mid
		}
	}
	return (in + out) / 2
}

// scene is one wheel on one glass along one line.
type scene struct {
	cone  geometry.Cone
	wheel groove.Wheel
	// The line starts on the circle the cone is hung on, at θ = 0, at an angle
	// from the profile, and bends to the left.
	angle, length, bend float64
	depth               float64

	glass glass
	body  body
	// tip is the wheel that bites along the centre line itself: of a gang, as if
	// one mitre of it ran in the middle.
	tip   body
	track track
}

// prepare walks the line.
func (s *scene) prepare() {
	slope := math.Tan(s.cone.HalfAngle)
	s.glass = glass{s.cone.Radius - slope*s.cone.Height, slope}
	s.body = newBody(s.wheel)
	tip := s.wheel
	if tip.Edge == groove.Gang {
		tip.Edge = groove.Mitre
	}
	s.tip = newBody(tip)
	at := r3.Vec{X: s.cone.Radius, Z: s.cone.Height}
	n := s.glass.normal(at)
	right := r3.Unit(r3.Cross(r3.Vec{Z: 1}, n))
	up := r3.Cross(n, right)
	sin, cos := math.Sincos(s.angle)
	ahead := r3.Add(r3.Scale(cos, up), r3.Scale(sin, right))
	s.track = s.glass.track(walker{at, ahead}, s.length, s.bend)
}

// line returns the same line as the code is given it.
func (s *scene) line() groove.Line {
	start := geometry.Point{Y: s.cone.Along}
	sin, cos := math.Sincos(s.angle)
	ahead := geometry.Point{X: sin, Y: cos}
	if s.bend == 0 {
		return groove.NewLine([]geometry.Point{start, r2.Add(start, r2.Scale(s.length, ahead))})
	}
	const fine = 0.25 // mm between the points of a curve, as the layout draws them
	centre := r2.Add(start, r2.Scale(1/s.bend, geometry.Point{X: -cos, Y: sin}))
	points := make([]geometry.Point, 1+int(math.Ceil(s.length/fine)))
	for i := range points {
		turn := s.bend * s.length * float64(i) / float64(len(points)-1)
		points[i] = r2.Rotate(start, turn, centre)
	}
	return groove.NewLine(points)
}

// at sets the wheel down at a distance along the line.
func (s *scene) at(along, depth float64) []placed {
	return []placed{s.body.set(s.glass, s.track.at(along), depth)}
}

// reaches reports whether the wheel, set down at a distance along the line,
// bites into the surface straight ahead or behind at another: a tail is straight.
func (s *scene) reaches(from, to, depth float64) bool {
	return s.tip.inside(s.at(from, depth), s.glass.walk(s.track.at(from), to-from).at)
}

// stroke is what the search makes of a scene: the wheel's places.
type stroke struct {
	touch       bool
	depth       float64
	first, last float64
	places      []placed
}

// work finds where the wheel has to stand for the groove to begin and end where
// the line does, and how deep it may go.
func (s *scene) work() stroke {
	k := stroke{depth: s.depth}
	k.first = bisect(0, s.length, func(x float64) bool { return s.reaches(x, 0, s.depth) })
	k.last = bisect(s.length, 0, func(x float64) bool { return s.reaches(x, s.length, s.depth) })
	if k.touch = k.first >= k.last; k.touch {
		// The deepest at which the wheel, as far ahead as it still bites into the
		// start of the line, does not yet bite beyond the end.
		var at float64
		k.depth = bisect(0, s.depth, func(d float64) bool {
			at = bisect(0, s.length, func(x float64) bool { return s.reaches(x, 0, d) })
			return !s.reaches(at, s.length, d)
		})
		k.first, k.last = at, at
	}
	k.places = s.at(k.first, k.depth)
	for _, foot := range s.track.feet[int(k.first/stride)+1 : max(int(k.last/stride), int(k.first/stride))+1] {
		k.places = append(k.places, s.body.set(s.glass, foot, k.depth))
	}
	k.places = append(k.places, s.at(k.last, k.depth)...)
	return k
}

// edge returns how far the footprint goes to one hand of a walker on the line:
// the outermost place inside the wheel, as it is found by steps of half a
// millimetre (of a gang, a twentieth) from far out and then bisection.
func (s *scene) edge(b body, places []placed, w walker, hand, far float64) float64 {
	coarse := 10 // strides
	if s.wheel.Edge == groove.Gang {
		coarse = 1 // its grooves are narrow, and lie apart
	}
	side := s.glass.track(s.glass.aside(w, hand), far, 0)
	for i := (len(side.feet)/coarse - 1) * coarse; i >= 0; i -= coarse {
		if !b.inside(places, side.feet[i].at) {
			continue
		}
		from := side.feet[i]
		return float64(i)*stride + bisect(0, float64(coarse)*stride, func(x float64) bool {
			return b.inside(places, s.glass.walk(from, x).at)
		})
	}
	return 0 // none of the wheel is here: at the very tip of a mark
}

// depthAt returns how far along the inward normal the wheel's body goes from a
// walker on the line.
func (s *scene) depthAt(places []placed, w walker) float64 {
	n := s.glass.normal(w.at)
	return bisect(0, 2*s.depth, func(d float64) bool {
		return s.tip.inside(places, r3.Sub(w.at, r3.Scale(d, n)))
	})
}

// contact returns the length on the line that the wheel bites, set down in its middle.
func (s *scene) contact(at, depth float64) float64 {
	middle := s.track.at(at)
	places := []placed{s.tip.set(s.glass, middle, depth)}
	length := 0.0
	for _, way := range []float64{-1, 1} {
		length += bisect(0, 60, func(x float64) bool { return s.tip.inside(places, s.glass.walk(middle, way*x).at) })
	}
	return length
}
