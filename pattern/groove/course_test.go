package groove

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// ball returns the surface of a ball between 45° of latitude either way.
func ball(t *testing.T, radius float64) geometry.Surface {
	t.Helper()
	const steps = 180
	var stations []geometry.Circle
	for i := range steps + 1 {
		lat := math.Pi / 4 * (2*float64(i)/steps - 1)
		stations = append(stations, geometry.Circle{Radius: radius * math.Cos(lat), Height: radius * (1 + math.Sin(lat))})
	}
	p, err := geometry.NewProfile(stations)
	if err != nil {
		t.Fatal(err)
	}
	cone, _ := p.FitCone(radius*0.6, radius*1.6)
	return geometry.NewSurface(p, cone)
}

// centre is the place of a ball's centre on its axis.
func centre(radius float64) r3.Vec { return r3.Vec{Z: radius} }

// TestStraightOnBall holds straight lines on a ball to its great circles, which
// are the shortest way between two places: all of a line lies in the plane
// through them and the centre, and is as long as the angle between them tells.
func TestStraightOnBall(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 1))
	for range 300 {
		radius := 15 + 50*rnd.Float64()
		s := ball(t, radius)
		l := NewCutter(&s, nil)
		place := func() geometry.Point {
			return s.ForwardAlong(0.6*(2*rnd.Float64()-1), s.Length()*(0.25+0.5*rnd.Float64()))
		}
		from, to := place(), place()
		a, b := r3.Sub(s.Space(from), centre(radius)), r3.Sub(s.Space(to), centre(radius))
		line := l.laid(NewLine([]geometry.Point{from, to}))
		if !line.Straight() || len(line.points) < 3 {
			t.Fatalf("from %v to %v no straight line was found", from, to)
		}
		if want := radius * math.Acos(r3.Dot(a, b)/(r3.Norm(a)*r3.Norm(b))); math.Abs(line.Length()-want) > 2e-3 {
			t.Errorf("%g mm long, a great circle's %g", line.Length(), want)
		}
		plane := r3.Unit(r3.Cross(a, b))
		for _, p := range line.points {
			if off := math.Abs(r3.Dot(r3.Sub(s.Space(p.at), centre(radius)), plane)); off > 2e-3 {
				t.Errorf("a line of %g mm on a ball of %g mm leaves its great circle by %g mm", line.Length(), radius, off)
			}
		}
	}
}

// TestSpotOnBall holds places ahead and to the left of a wheel to the ball's
// trigonometry: ahead along a great circle, and then along one square to it.
func TestSpotOnBall(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 2))
	for range 500 {
		radius := 15 + 50*rnd.Float64()
		s := ball(t, radius)
		way := 2 * math.Pi * rnd.Float64()
		p := place(&s, 20, 1, s.ForwardAlong(0.3, s.Length()*(0.35+0.3*rnd.Float64())), geometry.Point{X: math.Sin(way), Y: math.Cos(way)})
		at := r3.Unit(r3.Sub(s.Space(p.at), centre(radius)))
		right := r3.Vec{X: -math.Sin(p.theta), Y: math.Cos(p.theta)}
		up := r3.Cross(at, right)
		ahead := r3.Add(r3.Scale(p.cosine, up), r3.Scale(p.sine, right))
		left := r3.Cross(at, ahead)
		// As far as a quarter of the radius ahead, and half of that aside.
		onward, aside := radius*(rnd.Float64()-0.5)/2, radius*(rnd.Float64()-0.5)/4
		a, b := onward/radius, aside/radius
		want := r3.Scale(radius, r3.Add(r3.Scale(math.Cos(b), r3.Add(r3.Scale(math.Cos(a), at), r3.Scale(math.Sin(a), ahead))), r3.Scale(math.Sin(b), left)))
		spot := p.spot(onward, aside)
		sin, cos := math.Sincos(spot.theta)
		got := r3.Sub(r3.Vec{X: spot.radius * cos, Y: spot.radius * sin, Z: spot.height}, centre(radius))
		// Fourth-order terms of the distance are left out.
		far := math.Hypot(onward, aside)
		if off := r3.Norm(r3.Sub(got, want)); off > 1e-3+0.2*math.Pow(far/radius, 4)*far {
			t.Errorf("on a ball of %g mm, %g mm ahead and %g mm aside is off by %g mm", radius, onward, aside, off)
		}
		if x, y := p.local(spot); math.Hypot(x-onward, y-aside) > 1e-6 {
			t.Errorf("%g, %g comes back as %g, %g", onward, aside, x, y)
		}
	}
}
