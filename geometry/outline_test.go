package geometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"gonum.org/v1/gonum/spatial/r2"
)

// blob is a random outline without crossings: a star-shaped one round a place.
func blob(rnd *rand.Rand, centre Point, size float64) Outline {
	n := 3 + rnd.IntN(40)
	points := make([]Point, n)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := size * (0.3 + rnd.Float64())
		points[i] = Point{X: centre.X + r*cos, Y: centre.Y + r*sin}
	}
	return NewOutline(points)
}

// shape is the outline as the reference library has it.
func shape(o Outline) geom.Geometry {
	var xy []float64
	for _, p := range append(o.Points[:len(o.Points):len(o.Points)], o.Points[0]) {
		xy = append(xy, p.X, p.Y)
	}
	ring := geom.NewLineString(geom.NewSequence(xy, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// Distances agree with github.com/peterstace/simplefeatures, for outlines apart,
// overlapping and one inside the other.
func TestOutlineDistance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	apart, meeting := 0, 0
	for range 1500 {
		a := blob(rnd, Point{}, 1+4*rnd.Float64())
		b := blob(rnd, Point{X: 20 * (rnd.Float64() - 0.5), Y: 20 * (rnd.Float64() - 0.5)}, 0.1+4*rnd.Float64())
		want, ok := geom.Distance(shape(a), shape(b))
		if !ok {
			t.Fatal("the reference has no distance")
		}
		got, on, off := a.Distance(b, 1e9)
		if math.Abs(got-want) > 1e-9 {
			t.Fatalf("distance %g, the reference has %g", got, want)
		}
		if d := r2.Norm(r2.Sub(on, off)); math.Abs(d-got) > 1e-9 || a.DistanceTo(on, 1) > 1e-9 || b.DistanceTo(off, 1) > 1e-9 {
			t.Fatalf("the places %v and %v do not lie %g apart on the outlines", on, off, got)
		}
		if got == 0 {
			meeting++
		} else {
			apart++
		}
		// Only what lies within reach is looked for.
		if near, _, _ := a.Distance(b, want/2); want > 0 && near != want/2 {
			t.Fatalf("within %g it found %g", want/2, near)
		}
		q := Point{X: 20 * (rnd.Float64() - 0.5), Y: 20 * (rnd.Float64() - 0.5)}
		want, _ = geom.Distance(shape(a), geom.XY{X: q.X, Y: q.Y}.AsPoint().AsGeometry())
		if got := a.DistanceTo(q, 1e9); math.Abs(got-want) > 1e-9 {
			t.Fatalf("a point is %g off, the reference has %g", got, want)
		}
	}
	if apart < 200 || meeting < 200 {
		t.Errorf("%d apart and %d meeting: the cases are one-sided", apart, meeting)
	}
}

// Outlines that only touch, at a corner, along an edge or a corner on an edge,
// are at no distance; a hair apart they are just that.
func TestOutlineTouching(t *testing.T) {
	square := func(x, y float64) Outline {
		return NewOutline([]Point{{X: x, Y: y}, {X: x + 2, Y: y}, {X: x + 2, Y: y + 2}, {X: x, Y: y + 2}})
	}
	diamond := NewOutline([]Point{{X: 2, Y: 1}, {X: 3, Y: 0}, {X: 4, Y: 1}, {X: 3, Y: 2}})
	for _, c := range []struct {
		name  string
		other Outline
	}{
		{"a corner", square(2, 2)}, {"an edge", square(2, 0)}, {"half an edge", square(2, 1)}, {"a corner on an edge", diamond},
	} {
		const hair = 1e-6 // mm
		for _, gap := range []float64{0, hair} {
			other := c.other.Moved(Motion{Cos: 1, X: gap})
			want, _ := geom.Distance(shape(square(0, 0)), shape(other))
			if got, _, _ := square(0, 0).Distance(other, 1); math.Abs(got-want) > 1e-12 || math.Abs(got-gap) > 1e-12 {
				t.Errorf("%s, %g apart: distance %g, the reference has %g", c.name, gap, got, want)
			}
		}
	}
}

// A place is inside that the reference has there: of many places round it, and
// level with its corners, where a count of edges is most easily off by one.
func TestOutlineContains(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	inside, outside := 0, 0
	for range 300 {
		o := blob(rnd, Point{}, 1+4*rnd.Float64())
		for range 20 {
			q := Point{X: 12 * (rnd.Float64() - 0.5), Y: 12 * (rnd.Float64() - 0.5)}
			if rnd.IntN(3) == 0 {
				q.Y = o.Points[rnd.IntN(len(o.Points))].Y
			}
			at := geom.NewPoint(geom.Coordinates{XY: geom.XY{X: q.X, Y: q.Y}}).AsGeometry()
			want := geom.Intersects(at, shape(o))
			if got := o.Contains(q); got != want {
				t.Fatalf("%v inside %v: %v, the reference says %v", q, o.Points, got, want)
			}
			if want {
				inside++
			} else {
				outside++
			}
		}
	}
	if inside < 500 || outside < 500 {
		t.Errorf("%d places inside and %d outside: too few of one", inside, outside)
	}
}
