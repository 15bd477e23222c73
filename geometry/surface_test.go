package geometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// ballOf returns the surface of a ball of a radius between 30° of latitude either
// way, charted on a cone that leans, with the height of its equator.
func ballOf(t *testing.T, radius float64) (surface Surface, equator float64) {
	t.Helper()
	const steps = 120
	var stations []Circle
	for i := range steps + 1 {
		lat := math.Pi / 6 * (2*float64(i)/steps - 1)
		stations = append(stations, Circle{Radius: radius * math.Cos(lat), Height: radius * (math.Sin(lat) + 0.5)})
	}
	p, err := NewProfile(stations)
	if err != nil {
		t.Fatal(err)
	}
	cone, _ := p.FitCone(radius*0.4, radius*0.9)
	return NewSurface(p, cone), radius / 2
}

// onBall returns the place on a ball's chart at an angle and a latitude: along
// the profile a latitude is an arc of the ball's own circle.
func onBall(s *Surface, radius, theta, lat float64) Point {
	return s.ForwardAlong(theta, radius*(lat+math.Pi/6))
}

// TestSurfaceOfBall holds places, curvatures and directions of a ball to what
// its circle gives by hand.
func TestSurfaceOfBall(t *testing.T) {
	const radius = 50.0
	s, _ := ballOf(t, radius)
	if s.Flat() {
		t.Fatal("a ball is flat")
	}
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		theta, lat := 2*rnd.Float64()-1, 0.9*math.Pi/6*(2*rnd.Float64()-1)
		p := onBall(&s, radius, theta, lat)
		want := r3.Vec{
			X: radius * math.Cos(lat) * math.Cos(theta), Y: radius * math.Cos(lat) * math.Sin(theta),
			Z: radius * (math.Sin(lat) + 0.5),
		}
		if d := r3.Norm(r3.Sub(s.Space(p), want)); d > 2e-4 {
			t.Errorf("%g, %g lies %g mm off", theta, lat, d)
		}
		back, z := s.Reverse(p)
		if math.Abs(back-theta) > 1e-12 || math.Abs(z-want.Z) > 2e-4 {
			t.Errorf("%g, %g comes back as %g at %g mm", theta, lat, back, z)
		}
		if d := r2.Norm(r2.Sub(s.Forward(theta, z), p)); d > 1e-9 {
			t.Errorf("there and back it is %g mm off", d)
		}
		// A sphere's curvatures are 1/R in every direction (do Carmo, Differential
		// Geometry of Curves and Surfaces, 3-2).
		round, along := s.Curvatures(z)
		if math.Abs(round-1/radius) > 2e-5 || math.Abs(along-1/radius) > 4e-4 {
			t.Errorf("at %g mm curvatures are %g and %g, not %g", z, round, along, 1/radius)
		}
		// One step to the right and one up are as long on the ball.
		const step = 0.01
		for _, by := range []Point{{X: step}, {Y: step}, {X: -step, Y: step}} {
			to := s.Space(s.Near(theta, radius*(lat+math.Pi/6), by))
			if got := r3.Norm(r3.Sub(to, s.Space(p))); math.Abs(got/r2.Norm(by)-1) > 1e-3 {
				t.Errorf("a step of %v is %g mm long", by, got)
			}
		}
	}
}

// TestSurfaceOfCone holds a cone as a surface to the cone itself.
func TestSurfaceOfCone(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		c := NewCone(Angle(1.2*(2*rnd.Float64()-1)), Circle{20 + 30*rnd.Float64(), 40 * rnd.Float64()}, 50*rnd.Float64())
		s := c.Surface()
		theta, z := 2*rnd.Float64()-1, c.Height+8*(2*rnd.Float64()-1)
		p := c.Forward(theta, z)
		if d := r2.Norm(r2.Sub(s.Forward(theta, z), p)); d > 1e-9 {
			t.Errorf("%+v: off by %g mm", c, d)
		}
		if d := r3.Norm(r3.Sub(s.Space(p), c.Space(theta, z))); d > 1e-9 {
			t.Errorf("%+v: off by %g mm in space", c, d)
		}
		by := Point{X: 5 * (2*rnd.Float64() - 1), Y: 5 * (2*rnd.Float64() - 1)}
		near := c.Turned(theta).Apply(Point{X: by.X, Y: c.AlongAt(z) + by.Y})
		if d := r2.Norm(r2.Sub(s.Near(theta, c.AlongAt(z), by), near)); d > 1e-9 {
			t.Errorf("%+v: near is off by %g mm", c, d)
		}
	}
}

// TestDistanceOnBall holds the distance between outlines on balls to the great
// circle between their nearest corners: never more, and less by no more than
// 0.02 mm.
func TestDistanceOnBall(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	worst := 0.0
	for range 2000 {
		radius := 15 + 60*rnd.Float64()
		s, _ := ballOf(t, radius)
		// Two triangles, apex to apex: the apexes are nearest.
		lat, way := math.Pi/8*(2*rnd.Float64()-1), 2*math.Pi*rnd.Float64()
		apart := 0.05 + 3*rnd.Float64()
		at := func(ahead, left float64) Point {
			// On the ball, ahead along a great circle that sets out in a direction
			// and from there square to it.
			up, right := r3.Vec{X: -math.Sin(lat), Z: math.Cos(lat)}, r3.Vec{Y: 1}
			out := r3.Vec{X: math.Cos(lat), Z: math.Sin(lat)}
			along := r3.Add(r3.Scale(math.Cos(way), up), r3.Scale(math.Sin(way), right))
			side := r3.Cross(along, out)
			a, l := ahead/radius, left/radius
			v := r3.Add(r3.Scale(math.Cos(l), r3.Add(r3.Scale(math.Cos(a), out), r3.Scale(math.Sin(a), along))), r3.Scale(math.Sin(l), side))
			return onBall(&s, radius, math.Atan2(v.Y, v.X), math.Asin(v.Z))
		}
		outline := func(points ...Point) Outline {
			space := make([]r3.Vec, len(points))
			for i, p := range points {
				space[i] = s.Space(p)
			}
			return NewOutline(points).InSpace(space, s.Stretch(0, s.Length()))
		}
		a := outline(at(apart/2, 0), at(apart/2+1, -0.3), at(apart/2+1, 0.3))
		b := outline(at(-apart/2, 0), at(-apart/2-1, 0.3), at(-apart/2-1, -0.3))
		got, on, off := a.Distance(b, 100)
		worst = max(worst, apart-got)
		if got > apart+2e-4 || got < apart-0.02 {
			t.Errorf("on a ball of %g mm %g mm come out as %g", radius, apart, got)
		}
		if d := r3.Norm(r3.Sub(s.Space(on), s.Space(off))); math.Abs(d-got) > 1e-6 {
			t.Errorf("the places are %g mm apart, not %g", d, got)
		}
		if d := a.DistanceToPlace(off, s.Space(off), 100); math.Abs(d-got) > 1e-6 {
			t.Errorf("from the place it is %g mm, not %g", d, got)
		}
	}
	t.Logf("at the worst %.4f mm short", worst)
}
