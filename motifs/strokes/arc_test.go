package strokes_test

import (
	"fmt"
	"math"
	"testing"

	"roundlay/geometry"
)

// near reports whether two places are the same to a distance.
func near(p, q geometry.Point, within float64) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) <= within }

// Arcs by hand, from the conversion of the SVG 2 specification's appendix B.2.4 (from
// memory): the centre, the angles of the ends, and places between them. The data of its
// picture arcs01 are compared with copies of it; other data are our own.
func TestArcsByHand(t *testing.T) {
	root := math.Sqrt2 / 2
	for _, test := range []struct {
		data string
		on   []geometry.Point // in order, at equal steps of the angle, ends left out
	}{
		// The specification's arcs01, its large pie: about (300, 200), 150 round, from the
		// left against the sun by 270°: down, right, up.
		{"M150,200 a150,150 0 1,0 150,-150", []geometry.Point{
			place(300-150*root, 200+150*root), place(300, 350), place(300+150*root, 200+150*root), place(450, 200), place(300+150*root, 200-150*root),
		}},
		// And its small one: a quarter about (275, 175), from above to the left.
		{"M275,25 a150,150 0 0,0 -150,150", []geometry.Point{place(275-150*root, 175-150*root)}},
		// Half an ellipse, radii 30 and 10, axes turned by a right angle: about the
		// middle, out by 30 upright.
		{"M10 0 A30 10 90 0 1 30 0", []geometry.Point{place(20, -30)}},
		// B.2.5: radii too small for the chord grow alike until they reach: 3 by 1 on a
		// chord of 60 along the first axis become 30 by 10.
		{"M0 0 A3 1 0 0 0 60 0", []geometry.Point{place(30, 10)}},
		// A sixth of a circle on a chord as long as its radius: the top is a radius less
		// cos 30° of it above the chord, 40 − 34.641.
		{"M0 0 A40 40 0 0 1 40 0", []geometry.Point{place(20, -(40 - 20*math.Sqrt(3)))}},
		// Negative radii are taken without their sign, a turn of 750° is one of 30°.
		{"M0 0 A-40 -40 750 0 1 40 0", []geometry.Point{place(20, -(40 - 20*math.Sqrt(3)))}},
	} {
		s := paths(t, test.data).Strokes[0]
		n := len(s.Curves)
		for i, want := range test.on {
			at := float64(i+1) / float64(len(test.on)+1) * float64(n)
			k := min(int(at), n-1)
			if got := s.Curves[k].At(at - float64(k)); !near(got, want, 1e-4) {
				t.Errorf("%q: %v is not on %v", test.data, got, want)
			}
		}
	}
}

// Every point of an arc satisfies its ellipse's equation to 4e-7 of the radius, begins
// and ends exactly where it should, and goes the way its flags say.
func TestArcsOnTheirEllipse(t *testing.T) {
	const rx, ry, turn = 30.0, 20.0, 40.0
	sin, cos := math.Sincos(turn * math.Pi / 180)
	at := func(angle float64) geometry.Point {
		s, c := math.Sincos(angle)
		return geometry.Point{X: 7 + rx*c*cos - ry*s*sin, Y: -3 + rx*c*sin + ry*s*cos}
	}
	for _, from := range []float64{0, 1, 2.5, 4} {
		for _, by := range []float64{0.01, 0.5, 1.5, 3, 3.3, 5, 6.2, -0.01, -1, -3, -3.3, -6.2} {
			p, q := at(from), at(from+by)
			large, sweep := 0, 0
			if math.Abs(by) > math.Pi {
				large = 1
			}
			if by > 0 {
				sweep = 1
			}
			data := fmt.Sprintf("M%.17g %.17g A%g %g %g %d %d %.17g %.17g", p.X, p.Y, rx, ry, turn, large, sweep, q.X, q.Y)
			s := paths(t, data).Strokes[0]
			if first, last := s.Curves[0][0], s.Curves[len(s.Curves)-1][3]; first != place(p.X, p.Y) || last != place(q.X, q.Y) {
				t.Errorf("%s: from %v to %v", data, first, last)
			}
			for i, c := range s.Curves {
				for k := range 9 {
					share := (float64(i) + float64(k)/8) / float64(len(s.Curves))
					got := c.At(float64(k) / 8)
					x, y := got.X-7, -got.Y+3
					u, v := (x*cos+y*sin)/rx, (y*cos-x*sin)/ry
					if r := math.Hypot(u, v); math.Abs(r-1) > 4e-7 {
						t.Errorf("%s: radius %.9f", data, r)
					}
					want := at(from + by*share)
					if !near(got, place(want.X, want.Y), 1e-2) { // a cubic's parameter is not quite the angle
						t.Errorf("%s: %v at %g, want about %v", data, got, share, want)
					}
				}
			}
		}
	}
}

// The appendix's steps, from memory, worked out with a calculator for an ellipse that is neither
// round nor level: from (0, 0) to (30, 10), radii 50 and 20, turned by 60°. x1′ =
// −11.8301, y1′ = 10.4904, Λ = 0.33110; the root is 1.42135, so (cx′, cy′) is
// ±(37.2762, 6.7259) and the centre (27.8133, 40.6451) or (2.1867, −30.6451). The arcs
// go by 70.2572° or 289.7428°; these are the places half way.
func TestArcsByTheAppendix(t *testing.T) {
	for _, test := range []struct {
		data string
		half geometry.Point
	}{
		{"M0 0 A50 20 60 0 0 30 10", place(17.8535, 12.9381)},
		{"M0 0 A50 20 60 0 1 30 10", place(12.1465, -2.9381)},
		{"M0 0 A50 20 60 1 0 30 10", place(43.4801, 84.2282)},
		{"M0 0 A50 20 60 1 1 30 10", place(-13.4801, -74.2282)},
		// The second blip of the specification's arcs01 (there from 750,275), 25 by 50 turned
		// by −30° on the chord (50, −25): x1′ = −27.9006, y1′ = −1.6747, Λ = 1.24663, so it
		// is half of an ellipse √Λ = 1.11653 times as large about the chord's middle
		// (725, 287.5).
		{"M700 300 a25,50 -30 0,1 50,-25", place(697.8245, 238.7560)},
	} {
		curves := paths(t, test.data).Strokes[0].Curves
		k := len(curves) / 2
		got := curves[k].At(0)
		if len(curves)%2 == 1 {
			got = curves[k].At(0.5)
		}
		if !near(got, test.half, 1e-4) {
			t.Errorf("%q: half way at %v, want %v", test.data, got, test.half)
		}
	}
}

// An arc without length is nothing, one with a radius of zero a line (SVG 2, 9.5.1, from
// memory).
func TestArcsThatAreNone(t *testing.T) {
	for data, want := range map[string]int{
		"M0 0 H10 A5 5 0 1 1 10 0":      1,
		"M0 0 H10 A0 5 0 1 1 20 0":      2,
		"M0 0 H10 A5 0 0 1 1 20 0":      2,
		"M0 0 H10 A1e-300 9 0 0 0 20 0": 2,
	} {
		s := paths(t, data).Strokes[0]
		if len(s.Curves) != want || !s.Curves[len(s.Curves)-1].Straight() {
			t.Errorf("%q: %v", data, s.Curves)
		}
	}
}
