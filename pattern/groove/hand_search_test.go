package groove_test

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// This file and its neighbours named hand_… are the search of both solids for cuts that swell
// and are rolled: the wheel is a body that is set down at many places, each with a depth of its
// own, and turned there to many angles about the line that touches its rim at the deepest place.

// handed is a turning that is cut by hand.
type handed struct {
	*turning
	hand  groove.Hand
	swell interp.FritschButland // of the greatest share
	finer float64               // how much closer together the rolls are than at first
}

// gripped is one place of a wheel that is rolled.
type gripped struct {
	along           float64
	pivot           r3.Vec // the deepest place of the rim
	ahead, left, up r3.Vec
	depth           float64
	low, high       float64   // the rolls, positive where the hub leans to the left
	sin, cos        []float64 // of the angles it is turned to
}

// dress makes a turning's hand ready.
func (s *handed) dress() {
	shares := slices.Clone(s.hand.Swell)
	if len(shares) == 0 {
		shares = []float64{1, 1}
	}
	places := make([]float64, len(shares))
	greatest := slices.Max(shares)
	for i := range shares {
		places[i] = float64(i) / float64(len(shares)-1)
		shares[i] /= greatest
	}
	_ = s.swell.Fit(places, shares)
}

func (s *handed) String() string { return fmt.Sprintf("%+v, %v", s.hand, s.turning) }

// peak is the greatest depth asked.
func (s *handed) peak() float64 {
	if len(s.hand.Swell) == 0 {
		return s.depth
	}
	return s.depth * slices.Max(s.hand.Swell)
}

// share returns the share of the peak that the swell asks at a distance along the line.
func (s *handed) share(along float64) float64 {
	return s.swell.Predict(min(max(along/s.line.length(), 0), 1))
}

// grip sets the wheel down at a distance along the line, so deep, with the roll there.
func (s *handed) grip(along, depth float64) gripped {
	w := s.line.at(along)
	n := s.vessel.normal(w.at)
	share := s.share(along)
	g := gripped{
		along: along, pivot: r3.Sub(w.at, r3.Scale(depth, n)), ahead: w.ahead, left: s.vessel.left(w), up: n, depth: depth,
		low: -s.hand.Rock[1] * share, high: s.hand.Rock[0] * share,
	}
	apart := degrees(1.5)
	if s.wheel.Edge == groove.Gang {
		apart = degrees(0.5)
	}
	apart /= max(s.finer, 1)
	turns := int(math.Ceil((g.high - g.low) / apart))
	for i := range turns + 1 {
		sin, cos := math.Sincos(g.low + (g.high-g.low)*float64(i)/float64(max(turns, 1)))
		g.sin, g.cos = append(g.sin, sin), append(g.cos, cos)
	}
	return g
}

// holds reports whether a point lies in the wheel at any of its rolls.
func (g *gripped) holds(b body, p r3.Vec) bool {
	v := r3.Sub(p, g.pivot)
	x := r3.Dot(v, g.ahead)
	if x < -b.radius || x > b.radius {
		return false
	}
	y, z := r3.Dot(v, g.left), r3.Dot(v, g.up)
	if far := math.Sqrt(y*y + z*z); x*x > far*(2*b.radius-far) && far < b.radius {
		return false // turned to the middle plane it is still off the rim
	}
	for i, sin := range g.sin {
		axial, out := y*g.cos[i]-z*sin, b.radius-y*sin-z*g.cos[i]
		if r2 := x*x + out*out; r2 <= b.radius*b.radius && b.holds(axial, math.Sqrt(r2)) {
			return true
		}
	}
	return false
}

// inside reports whether a point lies in the wheel at any of the given places.
func inside(b body, at []gripped, p r3.Vec) bool {
	return slices.ContainsFunc(at, func(g gripped) bool { return g.holds(b, p) })
}

// handwork is what the search makes of a cut by hand.
type handwork struct {
	touch       bool
	unclear     string  // why the search doesn't say how the wheel is set down; empty where it does
	room        float64 // how much farther the line goes than the mark, where there is most room: below 0 for a touch
	first, last float64
	reach       float64
	at          []gripped
}

// depthTo returns how deep the swell asks the wheel to be at a distance along the line.
func (s *handed) depthTo(along float64) float64 { return s.peak() * s.share(along) }

// spreadOut sets the wheel down all along its stroke, so far apart.
func (s *handed) spreadOut(k *handwork, apart float64) {
	n := int(math.Ceil((k.last - k.first) / apart))
	k.at = make([]gripped, n+1)
	for i := range k.at {
		along := k.first + (k.last-k.first)*float64(i)/float64(n)
		k.at[i] = s.grip(along, s.depthTo(along))
	}
}

// near returns those places of the wheel that can bite beside a place along the line. A roll
// sinks one of the wheel's corners below its pivot, and that bites farther.
func (s *handed) near(k handwork, along float64) []gripped {
	sunk := s.wheel.Thick / 2 * math.Sin(max(s.hand.Rock[0], s.hand.Rock[1]))
	far := 1.5*(k.reach+math.Sqrt(2*sunk*s.wheel.Radius)) + 1.5*s.wheel.Thick
	from := sort.Search(len(k.at), func(i int) bool { return k.at[i].along >= along-far })
	to := sort.Search(len(k.at), func(i int) bool { return k.at[i].along > along+far })
	return k.at[from:to]
}

// deeper returns places of a wheel that is set down deeper by so much.
func (s *handed) deeper(at []gripped, by float64) []gripped {
	sunk := make([]gripped, len(at))
	for i, g := range at {
		sunk[i] = g
		sunk[i].pivot = r3.Sub(g.pivot, r3.Scale(by, g.up))
	}
	return sunk
}

// edgeBetween returns what edgeOf does, looking also between the places and the rolls that were
// tried: about all of those that would bite, a little deeper, where the package says that the
// edge is, or beyond the edge found.
func (s *handed) edgeBetween(at []gripped, w walker, hand, told, found float64) (float64, trail) {
	const (
		within = 0.05   // mm: how much deeper
		fine   = 0.0002 // mm
		parts  = 20
	)
	side := s.vessel.trail(w, hand, max(told, found)+1)
	finer := *s
	finer.finer = parts
	closer := slices.Clone(at)
	for _, g := range s.deeper(at, within) {
		if !g.holds(s.body, side.at(max(told-widthTolerance, 0))) && !g.holds(s.body, side.at(found+widthTolerance)) {
			continue
		}
		apart := 0.0
		if len(at) > 1 {
			apart = (at[len(at)-1].along - at[0].along) / float64(len(at)-1)
		}
		for part := range parts {
			along := min(g.along+apart*float64(part)/parts, at[len(at)-1].along)
			depth := g.depth
			if len(at) > 1 {
				depth = s.depthTo(along)
			}
			closer = append(closer, finer.grip(along, depth))
			if apart == 0 {
				break
			}
		}
	}
	edge, _ := s.edgeOf(closer, w, hand)
	// Its steps across may pass over a mitre that hardly bites.
	for x := told + widthTolerance; x > max(told-widthTolerance, edge); x -= fine {
		if in := func(x float64) bool { return inside(s.body, closer, side.at(x)) }; in(x) {
			return bisectTo(1e-5, x, x+fine, in), side
		}
	}
	return edge, side
}

// edgeOf returns how far the footprint goes to one hand of a walker, as turning.edge does.
func (s *handed) edgeOf(at []gripped, w walker, hand float64) (float64, trail) {
	step, far := 0.25, s.wheel.Thick/2+14
	if s.wheel.Edge == groove.Gang {
		step, far = 0.005, s.wheel.Thick/2+5
	}
	side := s.vessel.trail(w, hand, far+step)
	in := func(x float64) bool { return inside(s.body, at, side.at(x)) }
	for x := math.Floor(far/step) * step; x > -step/2; x -= step {
		if in(x) {
			return bisectTo(1e-5, x, x+step, in), side
		}
	}
	return 0, side
}

// sunkAt returns how far along the inward normal the wheel goes from a walker.
func (s *handed) sunkAt(at []gripped, w walker) float64 {
	n := s.vessel.normal(w.at)
	return bisectTo(1e-5, 0, 2*s.depth+1, func(d float64) bool {
		return inside(s.tip, at, r3.Sub(w.at, r3.Scale(d, n)))
	})
}
