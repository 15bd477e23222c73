package groove_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// measured returns the vessel through stations, as the profile through them runs.
func measured(stations []geometry.Circle) *vessel {
	p, err := geometry.NewProfile(stations)
	if err != nil {
		panic(err)
	}
	return &vessel{"profile through stations", p.Bottom(), p.Top(), func(z float64) (float64, float64) { return p.Radius(z), p.Slope(z) }}
}

// lined returns the inside that lies square to a vessel's outside, under a wall
// so thick at each height, above a floor.
func (v *vessel) lined(floor float64, wall func(z float64) float64) *lining {
	l := &lining{floor: floor, outside: v.outside()}
	for i, z := range l.outside.heights {
		_, slope := v.at(z)
		sin, cos := math.Sincos(math.Atan(slope))
		if up := z + wall(z)*sin; up >= floor {
			l.wall.heights = append(l.wall.heights, up)
			l.wall.radii = append(l.wall.radii, l.outside.radii[i]-wall(z)*cos)
		}
	}
	l.corner = l.wall.radii[0]
	return l
}

// hollowest returns the radius of the tightest hollow under a turning's line:
// that of the circle through three places of the surface, half a millimetre
// apart along it. It is infinite where there is none.
func (s *turning) hollowest() float64 {
	const apart = 0.5
	least := math.Inf(1)
	for along := apart; along < s.line.length()-apart; along += apart / 2 {
		w := s.line.at(along)
		back, on := r3.Sub(s.line.at(along-apart).at, w.at), r3.Sub(s.line.at(along+apart).at, w.at)
		// How far both stand out of the tangent plane is their sagitta.
		n := s.vessel.normal(w.at)
		if out := (r3.Dot(back, n) + r3.Dot(on, n)) / 2; out > 1e-9 {
			least = min(least, apart*apart/(2*out))
		}
	}
	return least
}

// standing returns the wheel's work where it stands at one place of the line
// as deep as it is asked to.
func (s *turning) standing(along float64) work {
	k := work{depth: s.depth, first: along, last: along}
	s.spread(&k)
	return k
}

// hourglass returns an upright flute about the waist of an hourglass: stations at
// 0, 30, 60, 90 and 120 mm, 92, 76, 66, 76 and 92 mm across, a wall of 8 mm at
// the foot and of 3 mm from the next station up.
func hourglass(across, length float64) *turning {
	v := measured([]geometry.Circle{
		{Radius: 46}, {Radius: 38, Height: 30}, {Radius: 33, Height: 60}, {Radius: 38, Height: 90}, {Radius: 46, Height: 120},
	})
	wall := func(z float64) float64 { return max(8-5*z/30, 3) }
	s := &turning{vessel: v, wheel: mitre(across), height: 60, length: length, share: 0.5, depth: 0.7, lining: v.lined(8, wall)}
	s.prepare(15, 105)
	return s
}

// A wheel of 300 mm does not go into the waist of an hourglass: set down 0.7 mm
// deep there it bites into the flanks, and leaves next to nothing.
func TestHourglass(t *testing.T) {
	for _, length := range []float64{12, 30, 60, 84} {
		s := hourglass(300, length)
		want := s.bite(s.standing(s.line.length() / 2))
		g := s.reported(0)
		t.Logf("%g mm long: the wheel at the waist bites %.3f mm and leaves %.3f, at a height of %.1f", length, want.depth, want.left, want.at.Z)
		if g.bridge == nil {
			t.Errorf("%g mm long: reported %.3f deep, %.3f left, and no word of a bridge", length, g.depth, g.left)
			continue
		}
		t.Logf("reported %.3f deep, %.3f left; bridge %+v", g.depth, g.left, *g.bridge)
		if d := min(g.bridge.depth, g.depth); !(d >= want.depth-safeTolerance) {
			t.Errorf("%g mm long: reported to bite %.3f, searched %.3f", length, d, want.depth)
		}
		if left := max(g.bridge.left, g.left); !(left <= want.left+safeTolerance) {
			t.Errorf("%g mm long: reported to leave %.3f, searched %.3f", length, left, want.left)
		}
	}
}

// The largest wheel reported goes in, and one a little larger does not.
func TestLargestWheel(t *testing.T) {
	for _, length := range []float64{12, 30, 60} {
		s := hourglass(300, length)
		g := s.reported(0)
		if g.bridge == nil {
			t.Errorf("%g mm long: no bridge", length)
			continue
		}
		radius := s.goesIn()
		// One a little flatter than the hollow lifts off its bottom by less than is seen.
		if want := s.hollowest(); radius < want || radius > 1.15*want {
			t.Errorf("%g mm long: a wheel of radius %.2f is reported to go in, the hollow's is %.2f", length, radius, want)
		}
		fits, big := hourglass(2*0.98*radius, length), hourglass(2*1.15*radius, length)
		if h := fits.reported(0); h.bridge != nil || h.depth > fits.depth+safeTolerance {
			t.Errorf("%g mm long: the wheel reported to go in is %.3f deep, bridge %v", length, h.depth, h.bridge)
		}
		if b := fits.bite(fits.standing(fits.line.length() / 2)); b.depth > fits.depth+safeTolerance {
			t.Errorf("%g mm long: the wheel reported to go in bites %.3f, searched", length, b.depth)
		}
		if big.reported(0).bridge == nil {
			t.Errorf("%g mm long: a wheel a good tenth larger is reported to go in", length)
		}
	}
}

// A cut in a waist is reported as bridged where the search says that the wheel
// rests elsewhere than where it stands, and the largest wheel reported for it goes in.
func TestBridgedAlong(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	bridges := 0
	for range 300 {
		rho := logBetween(rnd, tightest, 150)
		length := between(rnd, 10, 60)
		wave := min(between(rnd, 40, 160), 2*math.Pi*math.Sqrt(12*rho))
		v := waveVessel(45, between(rnd, -0.1, 0.1), 0, rho, wave, -80, 80)
		s := &turning{vessel: v, wheel: mitre(2 * rho * logBetween(rnd, 0.3, 3)), length: length, share: 0.5, depth: between(rnd, 0.1, 2)}
		s.height = wave/2 + between(rnd, -5, 5) // of the trough
		s.angle = between(rnd, -0.3, 0.3)
		s.prepare(s.height-15, s.height+15)
		s.hollow(rnd)
		g, tight := s.reported(0), s.hollowest()
		if g.bridge == nil {
			if k := s.full(); !k.touch && s.work().bridged {
				t.Errorf("drawn through a hollow of %.2f and no bridge: %v", tight, s)
			}
			continue
		}
		if s.wheel.Radius < 0.95*tight && !s.work().bridged {
			t.Errorf("a hollow of %.2f and a bridge %+v: %v", tight, *g.bridge, s)
		}
		bridges++
		fits, radius := *s, s.goesIn()
		fits.wheel = mitre(2 * 0.98 * radius)
		fits.draw()
		if h := fits.reported(0); h.bridge != nil {
			t.Errorf("a hollow of %.2f: the wheel of radius %.2f reported to go in does not, %+v: %v", tight, radius, *h.bridge, s)
		}
	}
	if bridges < 50 {
		t.Errorf("of 300 cuts %d are bridged", bridges)
	}
}

// A flat wheel across a hollow rests on its corners: it bites deeper than it is
// asked to where the surface curves to it, and leaves less.
func TestFlatAcrossHollow(t *testing.T) {
	for _, rho := range []float64{25, 60, 150} {
		v := ringVessel(rho+30, 0, rho, -1, math.Floor(min(0.85*rho, 60)))
		s := upright(v, groove.Wheel{Edge: groove.Flat, Radius: 40, Thick: 12}, 0, math.Pi/2, 30, 0.5)
		s.lining = v.lined(v.bottom+2, func(float64) float64 { return 4 })
		want, g := s.bite(s.work()), s.reported(0)
		t.Logf("hollow of %g: bites %.3f, leaves %.3f", rho, want.depth, want.left)
		if !(g.depth >= want.depth-safeTolerance) || !(g.left <= want.left+safeTolerance) {
			t.Errorf("hollow of %g: reported to bite %.3f and leave %.3f, searched %.3f and %.3f", rho, g.depth, g.left, want.depth, want.left)
		}
	}
}
