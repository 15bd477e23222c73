package geometry

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cones are of every taper a glass may have, a cylinder and its nearest
// neighbours among them.
func cones() []Cone {
	var all []Cone
	for _, degrees := range []float64{0, 1e-12, 1e-6, -1e-6, 0.01, -0.5, 3.58, -7, 20, -20, 45} {
		all = append(all, NewCone(Degrees(degrees), Circle{40, 12}, 13.5))
	}
	return all
}

// There and back, to a millionth of a thousandth of a millimetre.
func TestForwardReverse(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for _, c := range cones() {
		for range 2000 {
			theta, z := (rnd.Float64()-0.5)*4*math.Pi, 5+rnd.Float64()*100
			if math.Abs(theta*math.Sin(c.HalfAngle.Radians())) > 3 || c.RadiusAt(z) < 1 {
				continue // past half a turn of the map, or past the apex
			}
			th, zz := c.Reverse(c.Forward(theta, z))
			if off := math.Hypot((th-theta)*c.RadiusAt(z), zz-z); !(off < 1e-9) {
				t.Fatalf("half-angle %g: (%g, %g) comes back %g mm off", c.HalfAngle, theta, z, off)
			}
		}
	}
}

// ceemrr Geometry 2, "The net of a frustum", a worked example: diameters 5 and
// 8, height 4 have a net of inner radius 7.12, outer radius 11.39 and a sector
// of 126.4°.
func TestFrustumNet(t *testing.T) {
	slant := math.Atan2(1.5, 4)
	c := NewCone(Angle(slant), Circle{2.5, 0}, 0)
	apex := Point{Y: -c.ApexRadius(0)}
	inner := r2.Norm(r2.Sub(c.Forward(0.7, 0), apex))
	outer := r2.Norm(r2.Sub(c.Forward(0.7, 4), apex))
	a, b := r2.Sub(c.Forward(-math.Pi, 4), apex), r2.Sub(c.Forward(math.Pi, 4), apex)
	sector := math.Acos(r2.Dot(a, b)/(r2.Norm(a)*r2.Norm(b))) * 180 / math.Pi
	for _, v := range []struct {
		what            string
		got, want, last float64
	}{{"inner radius", inner, 7.12, 0.01}, {"outer radius", outer, 11.39, 0.01}, {"sector", sector, 126.4, 0.1}} {
		if math.Abs(v.got-v.want) > v.last/2 {
			t.Errorf("%s: %.4f, the example has %g", v.what, v.got, v.want)
		}
	}
}

// space is the place on the cone by x = r cos θ, y = r sin θ, z.
func space(c Cone, theta, z float64) r3.Vec {
	r := c.Radius + math.Tan(c.HalfAngle.Radians())*(z-c.Height)
	return r3.Vec{X: r * math.Cos(theta), Y: r * math.Sin(theta), Z: z}
}

// Lengths on the flat map are those of the same curves summed in space, chord by
// chord, and so are angles between curves that cross.
func TestFlatMapIsTrue(t *testing.T) {
	curve := func(k int, s float64) (theta, z float64) {
		switch k {
		case 0: // round
			return 5 * s, 30
		case 1: // up
			return 0.3, 10 + 80*s
		case 2: // a screw
			return 0.5 + 3*s, 10 + 60*s
		}
		return 0.4 * math.Sin(7*s), 20 + 50*s + 5*math.Cos(9*s) // a wave
	}
	for _, c := range cones() {
		for k := range 4 {
			const n = 20000
			flat, round := 0.0, 0.0
			th, z := curve(k, 0)
			p, q := c.Forward(th, z), space(c, th, z)
			for i := 1; i <= n; i++ {
				th, z = curve(k, float64(i)/n)
				p2, q2 := c.Forward(th, z), space(c, th, z)
				flat, round = flat+r2.Norm(r2.Sub(p2, p)), round+r3.Norm(r3.Sub(q2, q))
				p, q = p2, q2
			}
			if math.Abs(flat-round) > 1e-6*round {
				t.Errorf("half-angle %g, curve %d: %.7f mm flat, %.7f in space", c.HalfAngle, k, flat, round)
			}
		}
		const h = 1e-4
		at := func(th, z float64) (Point, r3.Vec) { return c.Forward(th, z), space(c, th, z) }
		p, q := at(0.8, 40)
		p1, q1 := at(0.8+h, 40+7*h)
		p2, q2 := at(0.8-h, 40+30*h)
		flat := math.Acos(r2.Cos(r2.Sub(p1, p), r2.Sub(p2, p)))
		round := math.Acos(r3.Cos(r3.Sub(q1, q), r3.Sub(q2, q)))
		if math.Abs(flat-round) > 1e-3 {
			t.Errorf("half-angle %g: an angle of %.5f is %.5f on the map", c.HalfAngle, round, flat)
		}
	}
}

// Orientation: θ = 0 runs straight up with y the distance along the profile, and
// θ grows to the right.
func TestOrientation(t *testing.T) {
	for _, c := range cones() {
		if p := c.Forward(0, 50); p.X != 0 || math.Abs(p.Y-c.AlongAt(50)) > 1e-12 {
			t.Errorf("half-angle %g: θ = 0 at 50 mm is at %v", c.HalfAngle, p)
		}
		if p := c.Forward(0.1, 50); p.X <= 0 {
			t.Errorf("half-angle %g: θ = 0.1 lies to the left, at %v", c.HalfAngle, p)
		}
	}
	// Widening upwards, the apex lies below: the middle of a level line is its highest place.
	if c := NewCone(0.1, Circle{40, 0}, 0); c.Forward(0.5, 20).Y >= c.Forward(0, 20).Y {
		t.Error("widening upwards, a level line does not fall away to the side")
	}
}

func TestTurned(t *testing.T) {
	for _, c := range cones() {
		for _, turn := range []float64{0.3, -1.1, 2 * math.Pi / 5} {
			m := c.Turned(turn)
			for _, place := range [][2]float64{{0, 10}, {0.4, 60}, {-0.7, 33}} {
				got, want := m.Apply(c.Forward(place[0], place[1])), c.Forward(place[0]+turn, place[1])
				if d := r2.Norm(r2.Sub(got, want)); d > 1e-9 {
					t.Errorf("half-angle %g turned by %g: %v, wanted %v", c.HalfAngle, turn, got, want)
				}
			}
		}
	}
}

func ExampleCone_Forward() {
	// A tumbler 3 1/8 in across at the foot that widens by 3° a side.
	c := NewCone(Degrees(3), Circle{39.69, 0}, 0)
	p := c.Forward(math.Pi/2, 80)
	fmt.Printf("a quarter round at 80 mm: %.2f mm to the right, %.2f mm up\n", p.X, p.Y)
	// Output: a quarter round at 80 mm: 68.85 mm to the right, 77.28 mm up
}
