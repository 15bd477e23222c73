package picture

import (
	"math"
	"math/rand/v2"
	"testing"

	"roundlay/geometry"
)

func square(x, y, side float64) polygon {
	return polygon{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
}

// convex returns a convex polygon of up to n corners on an ellipse.
func convex(r *rand.Rand, n int) polygon {
	at := geometry.Point{X: 4 * r.Float64(), Y: 4 * r.Float64()}
	wide, tall, turn := 0.3+2*r.Float64(), 0.3+2*r.Float64(), r.Float64()
	p := make(polygon, n)
	for i := range p {
		sin, cos := math.Sincos(turn + 2*math.Pi*(float64(i)+0.8*r.Float64())/float64(n))
		p[i] = geometry.Point{X: at.X + wide*cos, Y: at.Y + tall*sin}
	}
	return p
}

func sum(parts []polygon) float64 {
	area := 0.0
	for _, p := range parts {
		area += p.area()
	}
	return area
}

func TestPolygonsByHand(t *testing.T) {
	a, b := square(0, 0, 2), square(1, 1, 2)
	if got := a.common(b).area(); !near(got, 1, 1e-12) {
		t.Errorf("two squares of side 2, a step of 1 each way apart, share %g, want 1", got)
	}
	if got := sum(a.without(b)); !near(got, 3, 1e-12) {
		t.Errorf("one without the other is %g, want 3", got)
	}
	if a.common(square(5, 5, 1)) != nil || sum(a.without(square(0.5, 0.5, 1))) != 3 {
		t.Error("squares that are apart, or inside one another")
	}
	above, below := a.split(func(q geometry.Point) float64 { return q.X - 0.5 })
	if !near(above.area(), 3, 1e-12) || !near(below.area(), 1, 1e-12) {
		t.Errorf("split a quarter of the way across: %g and %g, want 3 and 1", above.area(), below.area())
	}
	if got := a.middle(); got != (geometry.Point{X: 1, Y: 1}) {
		t.Errorf("the middle of a square is %v", got)
	}
}

// Nothing is lost and nothing is there twice: what two share and what one has
// alone make it whole, and a split's parts make the whole.
func TestPolygonsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	for i := range 5000 {
		p, q := convex(r, 3+i%5), convex(r, 3+i%4)
		both := p.common(q)
		if got := both.area() + sum(p.without(q)); !near(got, p.area(), 1e-9) {
			t.Fatalf("pair %d: parts of %g, the whole is %g", i, got, p.area())
		}
		if got := q.common(p).area(); !near(got, both.area(), 1e-9) {
			t.Fatalf("pair %d: %g is common one way, %g the other", i, both.area(), got)
		}
		if sum(p.without(q)) > 1e-9 {
			for _, part := range p.without(q) {
				if got := part.common(q).area(); got > 1e-9 {
					t.Fatalf("pair %d: a part outside shares %g", i, got)
				}
			}
		}
	}
}

// Neighbours that share an edge are split at the same place of it, whichever way
// each goes round.
func TestSplitsOfNeighboursMeet(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		a, b := geometry.Point{X: r.Float64(), Y: 0}, geometry.Point{X: r.Float64(), Y: 1}
		left := polygon{a, b, {X: -1, Y: 0.5}}
		right := polygon{b, a, {X: 2, Y: 0.5}}
		level := r.Float64()
		cut := func(p polygon) geometry.Point {
			above, below := p.split(func(q geometry.Point) float64 { return q.Y*q.Y - level })
			for _, q := range above {
				for _, other := range below {
					if q == other && q != p[2] && (q.X-a.X)*(b.Y-a.Y)-(q.Y-a.Y)*(b.X-a.X) < 1e-9 &&
						(q.X-a.X)*(b.Y-a.Y)-(q.Y-a.Y)*(b.X-a.X) > -1e-9 {
						return q
					}
				}
			}
			t.Fatal("the shared edge is not cut")
			return geometry.Point{}
		}
		if cut(left) != cut(right) {
			t.Fatalf("cut at %v and %v", cut(left), cut(right))
		}
	}
}
