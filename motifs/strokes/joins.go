package strokes

import (
	"cmp"
	"math"
	"slices"

	"github.com/tidwall/rtree"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Join is a place where two strokes meet or cross. A and B are their indexes, A the
// lower one. Two strokes have a join for each place.
type Join struct {
	A, B int
	At   geometry.Point
}

// segment is a straight piece of a stroke's line of points.
type segment struct {
	stroke int
	p, q   geometry.Point
	along  float64 // from the stroke's start to p
}

// contact is where a piece of one stroke comes to another: from one distance along it
// to another, and the place where they are nearest.
type contact struct {
	from, to float64
	at       geometry.Point
	apart    float64
}

// joins returns where strokes come within a distance of each other. Lines that stay
// within fine of the curves stand for them.
func joins(strokes []Stroke, touch, fine float64) ([]Join, *Error) {
	var tree rtree.RTreeG[segment]
	found := map[[2]int][]contact{}
	count := 0
	for i := range strokes {
		pieces := segmentsOf(i, strokes[i], fine)
		for _, s := range pieces {
			box := geometry.BoxOf(s.p, s.q).Grow(touch)
			tree.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, other segment) bool {
				if c, ok := meet(other, s, touch); ok {
					pair := [2]int{other.stroke, i}
					found[pair] = append(found[pair], c)
					count++
				}
				return count <= 10*maxJoins
			})
		}
		if count > 10*maxJoins {
			return nil, bounded(strokes[i].Line, "places where strokes meet", maxJoins)
		}
		for _, s := range pieces {
			box := geometry.BoxOf(s.p, s.q)
			tree.Insert([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, s)
		}
	}
	var all []Join
	for pair, contacts := range found {
		for _, at := range merged(contacts, 2*touch) {
			all = append(all, Join{pair[0], pair[1], at})
		}
	}
	if len(all) > maxJoins {
		return nil, bounded(0, "places where strokes meet", maxJoins)
	}
	return all, nil
}

// inOrder sorts joins by their strokes, and those of the same two from left to right.
func inOrder(all []Join) {
	slices.SortFunc(all, func(a, b Join) int {
		return cmp.Or(cmp.Compare(a.A, b.A), cmp.Compare(a.B, b.B), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
	})
}

// segmentsOf returns the straight pieces of a stroke.
func segmentsOf(i int, s Stroke, fine float64) []segment {
	points := s.Points(fine)
	all := make([]segment, 0, len(points)-1)
	along := 0.0
	for k := 1; k < len(points); k++ {
		all = append(all, segment{i, points[k-1], points[k], along})
		along += r2.Norm(r2.Sub(points[k], points[k-1]))
	}
	return all
}

// meet returns where a piece comes within a distance of another.
func meet(s, t segment, within float64) (contact, bool) {
	c := contact{from: math.Inf(1), to: math.Inf(-1), apart: math.Inf(1)}
	add := func(on, off geometry.Point) {
		apart := r2.Norm(r2.Sub(on, off))
		if apart > within {
			return
		}
		along := s.along + r2.Norm(r2.Sub(on, s.p))
		c.from, c.to = math.Min(c.from, along), math.Max(c.to, along)
		if apart < c.apart {
			c.apart, c.at = apart, half(on, off)
		}
	}
	if at, ok := crossing(s, t); ok {
		add(at, at)
	}
	add(s.p, nearest(s.p, t.p, t.q))
	add(s.q, nearest(s.q, t.p, t.q))
	add(nearest(t.p, s.p, s.q), t.p)
	add(nearest(t.q, s.p, s.q), t.q)
	return c, c.apart <= within
}

// crossing returns where two pieces cross.
func crossing(s, t segment) (geometry.Point, bool) {
	d, e := r2.Sub(s.q, s.p), r2.Sub(t.q, t.p)
	area := r2.Cross(d, e)
	if area == 0 {
		return geometry.Point{}, false
	}
	off := r2.Sub(t.p, s.p)
	u, v := r2.Cross(off, e)/area, r2.Cross(off, d)/area
	if !(u >= 0 && u <= 1 && v >= 0 && v <= 1) {
		return geometry.Point{}, false
	}
	return r2.Add(s.p, r2.Scale(u, d)), true
}

// merged returns one place for all contacts that go on into one another, with gaps up
// to the given length: where the strokes are nearest.
func merged(contacts []contact, gap float64) []geometry.Point {
	slices.SortFunc(contacts, func(a, b contact) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var all []geometry.Point
	run := contacts[0]
	for _, c := range contacts[1:] {
		if c.from > run.to+gap {
			all = append(all, run.at)
			run = c
			continue
		}
		run.to = math.Max(run.to, c.to)
		if c.apart < run.apart-1e-12 {
			run.apart, run.at = c.apart, c.at
		}
	}
	return append(all, run.at)
}
