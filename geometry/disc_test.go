package geometry

import (
	"math"
	"testing"
)

// The chart of a disc is the disc as it is seen from below, with θ = 0 at the top: a place r
// from the middle lies at (r sin θ, r cos θ).
func TestDisc(t *testing.T) {
	disc := Disc(30)
	if !disc.Level() || !disc.Flat() || disc.Upright() || disc.Length() != 30 {
		t.Errorf("level %v, flat %v, upright %v, %g long", disc.Level(), disc.Flat(), disc.Upright(), disc.Length())
	}
	for _, c := range []struct{ degrees, r, x, y float64 }{
		{0, 20, 0, 20}, {90, 20, 20, 0}, {-90, 20, -20, 0}, {180, 7, 0, -7}, {30, 10, 5, 8.660254037844386}, {0, 0, 0, 0},
	} {
		theta := Degrees(c.degrees).Radians()
		at := disc.Forward(theta, c.r)
		if math.Hypot(at.X-c.x, at.Y-c.y) > 1e-12 {
			t.Errorf("%g° at %g: %v, wanted %g, %g", c.degrees, c.r, at, c.x, c.y)
		}
		if back, r := disc.Reverse(at); math.Abs(math.Remainder(back-theta, 2*math.Pi))*r > 1e-12 || math.Abs(r-c.r) > 1e-12 {
			t.Errorf("%v: back at %g, %g from the middle", at, back, r)
		}
		if v := disc.Space(at); math.Abs(math.Hypot(v.X, v.Y)-c.r) > 1e-12 || v.Z != 0 {
			t.Errorf("in space at %v", v)
		}
		if c.r > 0 && disc.RadiusAt(c.r) != c.r {
			t.Errorf("a radius of %g, %g from the middle", disc.RadiusAt(c.r), c.r)
		}
		if round, along := disc.Curvatures(c.r); round != 0 || along != 0 {
			t.Errorf("curved %g and %g", round, along)
		}
	}
	if cone := disc.Chart(); cone.RadiusAt(12) != 12 || cone.AlongAt(12) != 12 || cone.HeightAt(12) != 12 {
		t.Errorf("its cone at 12: %g, %g, %g", cone.RadiusAt(12), cone.AlongAt(12), cone.HeightAt(12))
	}
	// A quarter turn carries the top to the right.
	if to := disc.Turned(math.Pi / 2).Apply(Point{Y: 5}); math.Hypot(to.X-5, to.Y) > 1e-12 {
		t.Errorf("turned to %v", to)
	}
	// 3 mm to the right and 4 mm out from a place 10 mm to the right of the middle.
	by := Point{X: 3, Y: 4}
	near := disc.Near(math.Pi/2, 10, by)
	if math.Hypot(near.X-14, near.Y+3) > 1e-12 {
		t.Errorf("near: %v", near)
	}
	theta, r := disc.ReverseAlong(near)
	if back := disc.Apart(math.Pi/2, 10, Spot{theta, r}); math.Hypot(back.X-3, back.Y-4) > 1e-12 {
		t.Errorf("apart: %v", back)
	}
}
