package groove_test

import (
	"fmt"
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// turning is one wheel on one vessel along one line of its chart.
type turning struct {
	vessel *vessel
	chart  *chart
	wheel  groove.Wheel
	// The line goes through a height at θ = 0, which lies at a share of its length,
	// at an angle from the chart's upright, and bends to the left there.
	height, angle, length, share, bend float64
	depth                              float64

	profile *geometry.Profile
	lining  *lining
	shared  *view
	body    body
	tip     body // what bites along the centre line: of a gang, as if one mitre ran there
	line    path
}

// String tells a turning.
func (s *turning) String() string {
	return fmt.Sprintf("%v wheel %+v on a %v; %.4f mm at %.5f rad through %.4f at %.3f, bend %.5f, depth %.4f; cone %.6f, %.4f at %.3f",
		s.wheel.Edge, s.wheel, s.vessel, s.length, s.angle, s.height, s.share, s.bend, s.depth, s.chart.cone.HalfAngle, s.chart.cone.Radius, s.chart.cone.Height)
}

// prepare lays the chart over a band and the line on it.
func (s *turning) prepare(foot, top float64) {
	s.profile = s.vessel.profile()
	cone, _ := s.profile.FitCone(foot, top)
	surface := geometry.NewSurface(s.profile, cone) // its chart keeps off the cone's apex
	s.chart = s.vessel.chart(surface.Chart())
	s.draw()
}

// draw dresses the wheel and lays the line on the chart.
func (s *turning) draw() {
	s.body = newBody(s.wheel)
	s.tip = s.body
	if s.wheel.Edge == groove.Gang {
		one := s.wheel
		one.Edge = groove.Mitre
		s.tip = newBody(one)
	}
	s.line = s.chart.path(s.drawn, s.length)
	if s.bend == 0 {
		s.line = s.chart.straight(s.drawn(1), s.line)
	}
}

// drawn returns the point of the chart at a share of the line: of a straight one,
// or of a circle's arc.
func (s *turning) drawn(share float64) geometry.Point {
	sin, cos := math.Sincos(s.angle)
	far := (share - s.share) * s.length
	on, aside := far, 0.0 // from where it goes through, ahead and to the left
	if s.bend != 0 {
		turn := math.Sin(s.bend * far / 2)
		on, aside = math.Sin(s.bend*far)/s.bend, 2*turn*turn/s.bend
	}
	return r2.Add(s.chart.forward(0, s.height), geometry.Point{X: on*sin - aside*cos, Y: on*cos + aside*sin})
}

// drawing returns the line as the package is given it: of an arc, points a quarter
// of a millimetre apart.
func (s *turning) drawing() groove.Line {
	n := 1
	if s.bend != 0 {
		n = int(math.Ceil(s.length / 0.25))
	}
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.drawn(float64(i) / float64(n))
	}
	return groove.NewLine(points)
}

// stand sets the wheel down where a walker stands: its middle plane holds the
// surface's normal and the walker's direction, its rim is a depth below.
func (s *turning) stand(w walker, depth float64) placed {
	n := s.vessel.normal(w.at)
	return placed{centre: r3.Add(w.at, r3.Scale(s.wheel.Radius-depth, n)), axle: s.vessel.left(w)}
}

// rim returns the point of a placed wheel's rim at an angle from the point nearest the
// axis of the glass, towards the walker's direction; n is the normal where it stands.
func (s *turning) rim(w walker, n r3.Vec, depth, angle float64) r3.Vec {
	radius := s.wheel.Radius
	sin, cos := math.Sincos(angle)
	return r3.Add(w.at, r3.Add(r3.Scale(radius*sin, w.ahead), r3.Scale(radius*(1-cos)-depth, n)))
}

// emerges returns how far along the surface a wheel set down by a walker bites,
// ahead (1) or behind (-1): to where its rim first comes out of the glass. The
// way is that of the wheel's middle plane on the surface. False means that it
// doesn't come out within a quarter of a turn.
func (s *turning) emerges(w walker, depth, way float64) (far float64, ok bool) {
	step, n := 0.5/s.wheel.Radius, s.vessel.normal(w.at)
	under := func(a float64) float64 { return s.vessel.under(s.rim(w, n, depth, way*a)) }
	for a := step; a < math.Pi/2; a += step {
		if under(a) < 0 {
			a = zero(a-step, a, under)
			return s.section(w, n, s.rim(w, n, depth, way*a)), true
		}
	}
	return 0, false
}

// covers returns how far along a straight walk from a walker the wheel set down
// there bites, ahead or behind: where a mitre's point runs out beside the walk,
// as it does on a surface that twists, it is less than where the rim emerges.
func (s *turning) covers(w walker, depth, way float64) float64 {
	places := []placed{s.stand(w, depth)}
	foot := walker{w.at, r3.Scale(way, w.ahead)}
	for far := 0.0; far < 90; far += pace {
		next := s.vessel.step(foot, pace)
		if !s.tip.inside(places, next.at) {
			return far + bisect(0, pace, func(x float64) bool { return s.tip.inside(places, s.vessel.step(foot, x).at) })
		}
		foot = next
	}
	return math.Inf(1)
}

// section returns the length of the curve in which the plane of a walker's normal
// and direction meets the surface, from there to a point.
func (s *turning) section(w walker, n, to r3.Vec) float64 {
	const chords, near = 24, 1e-5 // after a step so small the next is below 1e-10
	length, was := 0.0, w.at
	var last, before, first float64 // how far out the last three lay
	for i := 1; i <= chords; i++ {
		at := r3.Add(w.at, r3.Scale(float64(i)/chords, r3.Sub(to, w.at)))
		out := 3*(last-before) + first // as a parabola through them runs on
		at = r3.Sub(at, r3.Scale(out, n))
		for range 4 { // along the normal of the start, which lies in the plane
			radius, slope := s.vessel.at(at.Z)
			away := math.Sqrt(at.X*at.X + at.Y*at.Y)
			rate := (at.X*n.X+at.Y*n.Y)/away - slope*n.Z
			off := (away - radius) / rate
			at = r3.Sub(at, r3.Scale(off, n))
			out += off
			if math.Abs(off) < near {
				break
			}
		}
		first, before, last = before, last, out
		step := r3.Sub(at, was)
		length += math.Sqrt(r3.Dot(step, step))
		was = at
	}
	return length
}

// work is what the search makes of a turning.
type work struct {
	touch       bool
	unset       bool // nowhere along the line does a mark end where it should
	bridged     bool // the wheel bites deeper elsewhere than where it stands
	depth       float64
	first, last float64
	reach       float64 // how far the wheel bites from where it stands, at most
	places      []placed
}

// set returns where along the line the wheel has to stand at a depth for its
// mark to begin (way -1) or to end (way 1) where the line does, if it bites so
// much farther than its rim emerges.
func (s *turning) set(depth, way, more float64) (along float64, ok bool) {
	length, end := s.line.length(), 0.0
	if way > 0 {
		end = length
	}
	over := func(x float64) float64 { // how much farther it bites
		far, out := s.emerges(s.line.at(x), depth, way)
		if !out {
			far = 2 * length
		}
		return far + more - math.Abs(x-end)
	}
	if over(length-end) >= 0 {
		return length - end, false
	}
	return zero(end, length-end, over), true
}

// The search goes back over a place with what it found there: what a wheel covers
// beyond where its rim emerges changes little from place to place. It does so until
// that is settled, in millimetres, or for a number of rounds: where the glass twists
// strongly a round takes off no more than a half of what is missing.
const rounds, covered = 30, 1e-4

// more returns how much farther the wheel covers a straight walk than its rim
// emerges.
func (s *turning) more(along, depth, way float64) float64 {
	w := s.line.at(along)
	far, ok := s.emerges(w, depth, way)
	if more := s.covers(w, depth, way) - far; ok && !math.IsInf(more, 0) {
		return more
	}
	return 0 // in a hollow it may never leave the glass
}

// end returns where the wheel has to stand for the groove to begin or to end
// where the line does.
func (s *turning) end(depth, way float64) (along float64, ok bool) {
	more := 0.0
	for range rounds {
		if along, ok = s.set(depth, way, more); !ok {
			return along, ok
		}
		last := more
		if more = s.more(along, depth, way); math.Abs(more-last) < covered {
			return along, ok
		}
	}
	return s.setBySteps(depth, way)
}

// setBySteps returns what end does, by trying all along the line.
func (s *turning) setBySteps(depth, way float64) (along float64, ok bool) {
	const step = 0.5
	length := s.line.length()
	falls := func(far float64) bool { return s.covers(s.stood(far, way), depth, way) < far }
	for far := step; far < length; far += step {
		if falls(far) {
			far = bisect(far, far-step, falls)
			return length/2 + way*(length/2-far), true
		}
	}
	return length/2 - way*length/2, false
}

// stood returns the walker on the line at a distance from its start (way -1) or its
// end (way 1).
func (s *turning) stood(far, way float64) walker {
	length := s.line.length()
	return s.line.at(length/2 + way*(length/2-far))
}

// press finds how deep the wheel goes in at one place, for a mark as long as the
// line, and where.
func (s *turning) press() (depth, along float64, ok bool) {
	var behind, ahead float64
	length := s.line.length()
	short := func(d float64) float64 { // by how much the mark ends before the line
		x, ok := s.set(d, -1, behind)
		if !ok {
			return -length
		}
		far, out := s.emerges(s.line.at(x), d, 1)
		if !out {
			return -length
		}
		return length - (x + far + ahead)
	}
	if short(1e-4) < 0 {
		return 0, 0, false
	}
	for range rounds {
		depth = zero(1e-4, s.depth, short)
		along, _ = s.set(depth, -1, behind)
		wasBehind, wasAhead := behind, ahead
		behind, ahead = s.more(along, depth, -1), s.more(along, depth, 1)
		if math.Abs(behind-wasBehind)+math.Abs(ahead-wasAhead) < covered {
			break
		}
	}
	return depth, along, true
}

// work finds where the wheel has to stand for the groove to begin and end where
// the line does, and how deep it may go.
func (s *turning) work() work {
	k := s.full()
	if k.touch {
		depth, along, ok := s.press()
		if !ok {
			k.unset, k.bridged = true, true
			return k
		}
		k.depth, k.first, k.last = depth, along, along
	}
	s.spread(&k)
	return k
}

// full finds where the wheel has to stand as deep as it is asked to, and whether its mark
// would be too long so.
func (s *turning) full() work {
	k := work{depth: s.depth}
	var begins, ends bool
	k.first, begins = s.end(s.depth, -1)
	k.last, ends = s.end(s.depth, 1)
	k.touch = !begins || !ends || k.first >= k.last
	return k
}

// spread sets the wheel down all along its stroke.
func (s *turning) spread(k *work) {
	const step = 0.05
	n := int(math.Ceil((k.last - k.first) / step))
	for i := range n + 1 {
		along := k.first + (k.last-k.first)*float64(i)/float64(max(n, 1))
		w := s.line.at(along)
		at := s.stand(w, k.depth)
		at.along = along
		k.places = append(k.places, at)
		if i%40 == 0 || i == n {
			for _, way := range []float64{-1, 1} {
				far, out := s.emerges(w, k.depth, way)
				if !out {
					far = s.line.length()
				}
				k.reach = max(k.reach, far)
			}
			k.bridged = k.bridged || s.spans(w, k.depth)
		}
	}
}

// spanned is how much deeper than where it stands a wheel bites elsewhere along
// its rim before it is taken to rest there.
const spanned = 0.02

// spans reports whether a wheel set down by a walker rests elsewhere on the glass.
func (s *turning) spans(w walker, depth float64) bool {
	n := s.vessel.normal(w.at)
	for a := -math.Pi / 2; a < math.Pi/2; a += 1 / s.wheel.Radius {
		p := s.rim(w, n, depth, a)
		if s.vessel.holds(p) && s.lining.outside.distance(math.Sqrt(p.X*p.X+p.Y*p.Y), p.Z) > depth+spanned {
			return true
		}
	}
	return false
}

// near returns those places of the wheel that can bite beside a place along the
// line.
func (s *turning) near(k work, along float64) []placed {
	far := 1.3*k.reach + 1.5*s.wheel.Thick
	from := sort.Search(len(k.places), func(i int) bool { return k.places[i].along >= along-far })
	to := sort.Search(len(k.places), func(i int) bool { return k.places[i].along > along+far })
	return k.places[from:to]
}

// edge returns how far the footprint goes to one hand of a walker: the
// outermost place inside the wheel on a straight walk, as it is found by steps
// from far out and then bisection; 0 where there is none. Also the trail there.
func (s *turning) edge(places []placed, w walker, hand, far float64) (float64, trail) {
	step := 0.25
	if s.wheel.Edge == groove.Gang { // its mitres lie apart, and may only graze
		step, far = 0.01, s.wheel.Thick/2+1
		if len(places) == 1 {
			step = 0.002
		}
	}
	side := s.vessel.trail(w, hand, far+step)
	inside := func(x float64) bool { return s.body.inside(places, side.at(x)) }
	for x := math.Floor(far/step) * step; x > -step/2; x -= step {
		if inside(x) {
			return bisect(x, x+step, inside), side
		}
	}
	return 0, side
}

// depthAt returns how far along the inward normal the wheel goes from a walker.
func (s *turning) depthAt(places []placed, w walker) float64 {
	n := s.vessel.normal(w.at)
	return bisect(0, 2*s.depth+1, func(d float64) bool {
		return s.tip.inside(places, r3.Sub(w.at, r3.Scale(d, n)))
	})
}
