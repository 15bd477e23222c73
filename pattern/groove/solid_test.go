package groove_test

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// This file and its neighbours named solid_… are the glass and the wheel as two solids
// in space, asked only whether a point lies in them. They share no formula with the
// package they prove: places on the surface are reached by walking there, and lengths
// are found by bisection between a point inside and a point outside.

// stride is the length of one step on the surface. A step along the tangent,
// drawn back square to the surface, errs by less than κ²·stride³ ≈ 3e-7 mm
// (κ ≤ 1/20 mm), so by less than 0.001 mm in the longest walk here.
const stride = 0.05

// glass is the solid x² + y² ≤ r(z)², with r(z) = radius + slope·z.
type glass struct{ radius, slope float64 }

// normal returns the outward unit normal: the gradient of x² + y² − r(z)².
func (g glass) normal(p r3.Vec) r3.Vec {
	return unit(r3.Vec{X: p.X, Y: p.Y, Z: -g.slope * (g.radius + g.slope*p.Z)})
}

// unit is r3.Unit without its care for vectors beyond the range of squares,
// which takes most of the time of this search.
func unit(v r3.Vec) r3.Vec {
	by := 1 / math.Sqrt(v.X*v.X+v.Y*v.Y+v.Z*v.Z)
	return r3.Vec{X: by * v.X, Y: by * v.Y, Z: by * v.Z}
}

// holds reports whether a point lies in the glass.
func (g glass) holds(p r3.Vec) bool { return math.Sqrt(p.X*p.X+p.Y*p.Y) <= g.radius+g.slope*p.Z }

// onto returns the point of the surface near p, along the normal there.
func (g glass) onto(p r3.Vec) r3.Vec {
	for range 3 { // each round squares the error
		away := math.Sqrt(p.X*p.X + p.Y*p.Y)
		// The gradient of away − radius is (X/away, Y/away, −slope).
		off := (away - g.radius - g.slope*p.Z) / (1 + g.slope*g.slope)
		p.X, p.Y, p.Z = p.X-off*p.X/away, p.Y-off*p.Y/away, p.Z+off*g.slope
		if math.Abs(off) < 1e-8 { // the next is below 1e-17
			break
		}
	}
	return p
}

// walker stands on the surface and looks along it.
type walker struct{ at, ahead r3.Vec }

// left returns the direction on the walker's left hand.
func (g glass) left(w walker) r3.Vec { return r3.Cross(g.normal(w.at), w.ahead) }

// step takes a walker ahead by a small length along a line of the surface that
// bends to the left by a curvature. The direction is carried along by the least turn
// that takes the normal here to the normal there, which keeps it straight.
func (g glass) step(w walker, length, bend float64) walker {
	n, chord, ahead := g.normal(w.at), w.ahead, w.ahead
	if bend != 0 {
		left := r3.Cross(n, w.ahead)
		chord, ahead = r3.Add(w.ahead, r3.Scale(bend*length/2, left)), r3.Add(w.ahead, r3.Scale(bend*length, left))
	}
	at := g.onto(r3.Add(w.at, r3.Scale(length, chord)))
	next := g.normal(at)
	ahead = r3.Sub(ahead, r3.Scale(r3.Dot(ahead, next)/(1+r3.Dot(n, next)), r3.Add(n, next)))
	return walker{at, unit(ahead)}
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
	// tip is what bites along the centre line itself: of a gang, as if one mitre
	// of it ran in the middle.
	tip   body
	track track
}

// prepare walks the line.
func (s *scene) prepare() {
	slope := math.Tan(s.cone.HalfAngle.Radians())
	s.glass = glass{s.cone.Radius - slope*s.cone.Height, slope}
	s.body = newBody(s.wheel)
	s.tip = s.body
	if s.wheel.Edge == groove.Gang {
		one := s.wheel
		one.Edge = groove.Mitre
		s.tip = newBody(one)
	}
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
// bites as far as another: on a bend, as far along the straight tail it leaves.
func (s *scene) reaches(from, to, depth float64) bool {
	foot := s.track.at(to)
	if s.bend != 0 {
		foot = s.glass.walk(s.track.at(from), to-from)
	}
	return s.tip.inside(s.at(from, depth), foot.at)
}

// stroke is what the search makes of a scene: the wheel's places.
type stroke struct {
	touch       bool
	depth       float64
	first, last float64
	places      []placed
}

// tails finds where the wheel, at its full depth, has to be set down and lifted
// for the groove to begin and end where the line does.
func (s *scene) tails() (first, last float64) {
	first = bisect(0, s.length, func(x float64) bool { return s.reaches(x, 0, s.depth) })
	last = bisect(s.length, 0, func(x float64) bool { return s.reaches(x, s.length, s.depth) })
	return first, last
}

// work finds where the wheel has to stand for the groove to begin and end where
// the line does, and how deep it may go.
func (s *scene) work() stroke {
	k := stroke{depth: s.depth}
	k.first, k.last = s.tails()
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
	// Along a bend the wheel's ends go sideways: closer steps there.
	step := stride
	if s.bend != 0 {
		step /= 4
	}
	n := math.Ceil((k.last - k.first) / step)
	for i := range int(n) + 1 {
		along := k.first + (k.last-k.first)*float64(i)/max(n, 1)
		at := s.body.set(s.glass, s.track.at(along), k.depth)
		at.along = along
		k.places = append(k.places, at)
	}
	return k
}

// near returns those places of the wheel that can bite across a place along the
// line.
func (s *scene) near(k stroke, along float64) []placed {
	if s.bend != 0 {
		return k.places
	}
	// As the glass is round, what bites lies below the tangent plane where the
	// wheel stands: within half a chord of the wheel's side and half its thickness.
	// The way there on the glass is at most π/2 times as long.
	far := math.Pi / 2 * (math.Sqrt(2*s.wheel.Radius*k.depth) + s.wheel.Thick/2)
	from := sort.Search(len(k.places), func(i int) bool { return k.places[i].along >= along-far })
	to := sort.Search(len(k.places), func(i int) bool { return k.places[i].along > along+far })
	return k.places[from:to]
}

// walk goes from the start of the line straight to a place on its flat map: as
// far, and as much to the side, as that lies there.
func (s *scene) walk(q geometry.Point) walker {
	d := r2.Rotate(r2.Sub(q, geometry.Point{Y: s.cone.Along}), s.angle, geometry.Point{})
	from := s.track.feet[0] // after the turn the line sets out straight up
	far := r2.Norm(d)
	right := s.glass.aside(from, -1).ahead
	from.ahead = unit(r3.Add(r3.Scale(d.Y/far, from.ahead), r3.Scale(d.X/far, right)))
	return s.glass.walk(from, far)
}

// edge returns how far the footprint goes to one hand of a walker on the line:
// the outermost place inside the wheel, as it is found by steps of half a
// millimetre from far out and then bisection; 0 where there is none. A gang's
// mitres lie apart, and are sought by smaller steps.
func (s *scene) edge(b body, places []placed, w walker, hand, far float64) float64 {
	step := 0.5
	if s.wheel.Edge == groove.Gang {
		step, far = 0.005, s.wheel.Thick/2+1
	}
	side := s.glass.track(s.glass.aside(w, hand), far+step, 0)
	inside := func(x float64) bool { return b.inside(places, side.at(x).at) }
	for x := math.Floor(far/step) * step; x > -step/2; x -= step {
		if inside(x) {
			return bisect(x, x+step, inside)
		}
	}
	return 0
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
		ahead := s.glass.track(walker{middle.at, r3.Scale(way, middle.ahead)}, 60, 0)
		length += bisect(0, 60, func(x float64) bool { return s.tip.inside(places, ahead.at(x).at) })
	}
	return length
}

// volume returns the glass that the wheel grinds away at its places: columns
// square to the glass at the middle of the line, from the surface down to where
// the wheel ends.
func (s *scene) volume(k stroke, width float64) float64 {
	middle := s.track.at(s.length / 2)
	up, left := s.glass.normal(middle.at), s.glass.left(middle)
	const deep, beyond = 8, 4 // mm: below the middle, and past the ends of the line
	const near = 1e-5         // mm: of a column, of which there are thousands
	along, across := s.length/400, width/100
	if s.wheel.Edge == groove.Gang { // narrow grooves side by side
		along, across = s.length/100, width/600
	}
	sum := 0.0
	for u := -s.length/2 - beyond; u < s.length/2+beyond; u += along {
		inside := s.body.insider(s.near(k, u+s.length/2))
		for v := -width; v < width; v += across {
			foot := r3.Add(middle.at, r3.Add(r3.Scale(u, middle.ahead), r3.Scale(v, left)))
			at := func(h float64) r3.Vec { return r3.Add(foot, r3.Scale(h, up)) }
			top := bisectTo(near, -deep, 1, func(h float64) bool { return s.glass.holds(at(h)) })
			if inside(at(top)) {
				sum += top - bisectTo(near, top, top-deep, func(h float64) bool { return inside(at(h)) })
			}
		}
	}
	return sum * along * across
}
