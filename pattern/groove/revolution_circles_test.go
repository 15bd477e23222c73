package groove_test

import (
	"math"
	"testing"

	"roundlay/pattern/groove"
)

// meeting returns half the chord that two circles share, by their radii and the
// distance of their middles (Wolfram MathWorld, "Circle-circle intersection").
func meeting(a, b, apart float64) float64 {
	far := (apart*apart + a*a - b*b) / (2 * apart)
	return math.Sqrt(a*a - far*far)
}

// upright returns a turning on a plain line about a place: straight up (0), level
// (π/2) or between.
func upright(v *vessel, wheel groove.Wheel, height, angle, length, depth float64) *turning {
	s := &turning{vessel: v, wheel: wheel, height: height, angle: angle, length: length, share: 0.5, depth: depth}
	s.prepare(height-3, height+3)
	s.lining = newLining(v, v.bottom-5, func(float64) float64 { return 5 })
	return s
}

// mitre returns a sharp mitre wheel of a given diameter and a right angle.
func mitre(across float64) groove.Wheel {
	return groove.Wheel{Edge: groove.Mitre, Radius: across / 2, Thick: 14, Angle: math.Pi / 2}
}

// circled is glass that a wheel meets in two circles of one plane: the wheel's
// and the glass's, which bulges to it (1) or is hollow (-1).
type circled struct {
	name   string
	vessel *vessel
	height float64
	angle  float64
	radius float64
	bulge  float64
}

// circles lists such glass. A ball shows the wheel a great circle whichever way
// it runs; a ring its own arc upright, and its belly or its waist level.
func circles() []circled {
	ball, barrel := ringVessel(0, 0, 40, 1, 30), ringVessel(10, 0, 35, 1, 28)
	waist := ringVessel(100, 0, 60, -1, 45)
	return []circled{
		{"ball, upright", ball, 0, 0, 40, 1}, {"ball, upright from above its middle", ball, 12, 0, 40, 1},
		{"ball, level", ball, 0, math.Pi / 2, 40, 1},
		{"barrel, upright", barrel, 0, 0, 35, 1}, {"barrel, upright below its middle", barrel, -10, 0, 35, 1},
		{"barrel, level", barrel, 0, math.Pi / 2, 45, 1},
		{"waist, upright", waist, 0, 0, 60, -1}, {"waist, upright below its middle", waist, -10, 0, 60, -1},
		{"waist, level", waist, 0, math.Pi / 2, 40, 1},
		{"cylinder, level", straightVessel(30, 0, -60, 60), 0, math.Pi / 2, 30, 1},
	}
}

// mark returns the length on the glass of the mark that a wheel leaves when it
// goes so deep: twice the arc over half the chord that the circles share.
func (c circled) mark(wheel, depth float64) float64 {
	apart := c.radius + c.bulge*(wheel-depth)
	return 2 * c.radius * math.Asin(meeting(c.radius, wheel, apart)/c.radius)
}

// The search, asked for what two circles say.
func TestSearchOfCircles(t *testing.T) {
	for _, c := range circles() {
		for _, w := range []struct{ radius, depth float64 }{{20, 0.1}, {20, 1.5}, {45, 0.6}} {
			s := upright(c.vessel, mitre(2*w.radius), c.height, c.angle, 60, w.depth)
			at := s.line.at(s.line.length() / 2)
			want := c.mark(w.radius, w.depth) / 2
			for _, way := range []float64{-1, 1} {
				if far, ok := s.emerges(at, w.depth, way); !ok || math.Abs(far-want) > 0.005 {
					t.Errorf("%s, wheel %g, %g deep: it emerges at %.4f %v, the circles meet at %.4f", c.name, w.radius, w.depth, far, ok, want)
				}
				if far := s.covers(at, w.depth, way); math.Abs(far-want) > 0.005 {
					t.Errorf("%s, wheel %g, %g deep: it covers %.4f, the circles meet at %.4f", c.name, w.radius, w.depth, far, want)
				}
			}
			k := work{depth: w.depth, first: s.line.length() / 2, last: s.line.length() / 2}
			s.spread(&k)
			if b := s.bite(k); math.Abs(b.depth-w.depth) > 0.002 {
				t.Errorf("%s, wheel %g, %g deep: bite %.4f", c.name, w.radius, w.depth, b.depth)
			}
		}
	}
}

// A ball with a hollow of the same middle is as thick everywhere, so what is
// left under a wheel is its wall less the bite. Across a flat wheel that far in
// the ball shows a chord, no longer than the wheel is wide.
func TestSearchOfShell(t *testing.T) {
	const rho, wall, deep = 40.0, 4.0, 1.2
	v := ringVessel(0, 0, rho, 1, 30)
	l := newLining(v, -29, func(z float64) float64 {
		return math.Sqrt(rho*rho-z*z) - math.Sqrt((rho-wall)*(rho-wall)-min(z*z, (rho-wall)*(rho-wall)))
	})
	for _, angle := range []float64{0, 0.7, math.Pi / 2} {
		s := upright(v, groove.Wheel{Edge: groove.Flat, Radius: 40, Thick: 6}, 3, angle, 12, deep)
		s.lining = l
		k := work{depth: deep, first: s.line.length() / 2, last: s.line.length() / 2}
		s.spread(&k)
		if b := s.bite(k); math.Abs(b.depth-deep) > 0.002 || math.Abs(b.left-wall+deep) > 0.002 {
			t.Errorf("at %.2f rad: bite %.4f and %.4f left, wanted %.4f and %.4f", angle, b.depth, b.left, deep, wall-deep)
		}
		want := math.Sqrt(rho*rho - (rho-deep)*(rho-deep))
		if want = min(want, 3); math.Abs(rho*math.Asin(want/rho)-s.width(k)) > 0.002 {
			t.Errorf("at %.2f rad: half width %.4f, wanted %.4f", angle, s.width(k), want)
		}
	}
}

// width returns the half width of a turning's groove at its middle, as searched.
func (s *turning) width(k work) float64 {
	half, _ := s.edge(k.places, s.line.at(s.line.length()/2), 1, s.wheel.Thick/2+8)
	return half
}

// A touch is as deep as the two circles make a mark of its length, upright and
// level, on balls, barrels, waists and cylinders.
func TestTouchOfCircles(t *testing.T) {
	for _, c := range circles() {
		for _, w := range []struct{ radius, depth float64 }{{20, 0.1}, {20, 1.5}, {45, 0.6}} {
			length := c.mark(w.radius, w.depth)
			s := upright(c.vessel, mitre(2*w.radius), c.height, c.angle, length, 10)
			s.length *= length / s.line.length() // the chart may stretch a level line
			s.prepare(c.height-3, c.height+3)
			if got := s.reported(0); !got.Touch || math.Abs(got.depth-w.depth) > 0.005 {
				t.Errorf("%s, wheel %g: %.4f mm long it is %.4f deep, the circles meet at %.4f", c.name, w.radius, length, got.depth, w.depth)
			}
		}
	}
}

// The depth of an upright mark on a barrel under a wheel of 150 mm. The wheel's
// circle and the profile's arc lie in one plane and share a chord 2c; over it
// stand the sagitta of the one, R - √(R² - c²), and that of the other, and both
// together are the depth. A mark between heights 30 mm apart has c = 15; one that
// is 30 mm long on the glass has c = ρ sin(15/ρ), and is a little shallower.
func TestBarrelMarks(t *testing.T) {
	for _, c := range []struct {
		rho            float64
		height, length float64 // the depth for 30 mm of height, and of length
	}{
		// By hand: √(75² - 15²) = 73.485, so the wheel's part is 1.515 mm.
		{60, 3.420, 3.349}, {80, 2.934, 2.899}, {100, 2.646, 2.626}, {250, 1.966, 1.963}, {400, 1.796, 1.796},
	} {
		v := ringVessel(40-c.rho, 0, c.rho, 1, 35)
		for length, want := range map[float64]float64{2 * c.rho * math.Asin(15/c.rho): c.height, 30: c.length} {
			g := upright(v, mitre(150), 0, 0, length, 10).reported(0)
			t.Logf("barrel of %g: %.3f mm long on the glass, %.3f deep", c.rho, length, g.depth)
			if !g.Touch || math.Abs(g.depth-want) > 0.005 {
				t.Errorf("barrel of %g: %.3f mm long on the glass, reported %.4f deep, wanted %.3f", c.rho, length, g.depth, want)
			}
		}
	}
}

// A mark 15 mm long on a barrel of 100 mm: under a wheel of 120 mm its sagittas
// are 60 - √(60² - 7.5²) = 0.4706 and 100 - √(100² - 7.5²) = 0.2817 mm. On a straight
// glass only the first would count.
func TestBarrelShortMark(t *testing.T) {
	v := ringVessel(40-100, 0, 100, 1, 60)
	g := upright(v, mitre(120), 0, 0, 15, 5).reported(0)
	if want := 0.752; math.Abs(g.depth-want) > 0.003 {
		t.Errorf("reported %.4f deep, wanted %.3f", g.depth, want)
	}
	straight := upright(straightVessel(40, 0, -60, 60), mitre(120), 0, 0, 15, 5).reported(0)
	if want := 0.4706; math.Abs(straight.depth-want) > 0.003 {
		t.Errorf("on a straight glass reported %.4f deep, wanted %.4f", straight.depth, want)
	}
}

// For a short mark of length L, 8d/L² less the wheel's own curvature is the
// glass's along it. On a torus of tube radius r whose middle runs at a from the
// axle, at the angle u from its outermost ring, those are 1/r upright and
// cos u / (a + r cos u) round it (do Carmo, Differential Geometry of Curves and
// Surfaces, 3-3, from memory), and between them by Euler's rule. A barrel is the
// outside of a torus; a waist is its inside with the glass on the other hand, so
// both change sign. On a sphere both are 1/R.
func TestTorusCurvature(t *testing.T) {
	const wheel, length = 60.0, 3.0
	for _, c := range []struct {
		a, r, hand float64 // hand 1: glass inside the tube's surface, -1: outside
	}{{20, 30, 1}, {5, 50, 1}, {-15, 60, 1}, {0, 40, 1}, {90, 50, -1}, {110, 80, -1}, {60, 25, -1}} {
		for _, up := range []float64{-0.4, 0, 0.3, 0.5} { // how far above the middle, in tube radii
			cos := c.hand * math.Sqrt(1-up*up)
			tube, round := c.hand/c.r, c.hand*cos/(c.a+c.r*cos)
			v := ringVessel(c.a, 0, c.r, c.hand, 0.9*c.r)
			for _, psi := range []float64{0, math.Pi / 6, math.Pi / 4, math.Pi / 2, 2.2} {
				want := tube*math.Cos(psi)*math.Cos(psi) + round*math.Sin(psi)*math.Sin(psi)
				if want < -0.9/wheel {
					continue // the wheel is too flat for the hollow, or very nearly
				}
				w := groove.Wheel{Edge: groove.Round, Radius: wheel, Thick: 12, Convex: 6}
				g := upright(v, w, up*c.r, psi, length, 1).reported(0)
				if g.bridge != nil && c.r == 25 {
					continue // askew in the tightest hollow the rim rests beside its line
				}
				got := 8*g.depth/(g.Length*g.Length) - 1/wheel
				// What is left out is of the order of length over radius, squared.
				if math.Abs(got-want) > 0.01*(math.Abs(tube)+math.Abs(round)+1/wheel) {
					t.Errorf("torus of %g and %g, hand %g, %g up, ψ %.3f: curvature %.5f, wanted %.5f", c.a, c.r, c.hand, up, psi, got, want)
				}
			}
		}
	}
}
