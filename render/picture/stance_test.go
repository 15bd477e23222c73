package picture

import (
	"math"
	"testing"
)

// Places worked by hand, on a glass of radius 40 turned by 30°:
//
//	          far middle, 210°
//	left, -60°              right, 120°
//	          near middle, 30°
func TestPlacesOnThePicture(t *testing.T) {
	const r, z = 40.0, 50.0
	for _, c := range []struct {
		name        string
		down, theta float64
		far         bool
		x, y        float64
	}{
		{"the middle", 0, 30, false, 0, 50},
		{"the right side", 0, 120, false, 40, 50},
		{"the left side", 0, -60, false, -40, 50},
		{"the far middle", 0, 210, true, 0, 50},
		{"a third of the way to the right", 0, 60, false, 20, 50},
		{"a third of the way to the right, behind", 0, 180, true, 20, 50},
		{"two turns on", 0, 60 + 720, false, 20, 50},
		// Looked down on by one in four, the near side is lower and the far side
		// higher by a quarter of the radius, and the sides are where they were.
		{"the middle, from above", 0.25, 30, false, 0, 40},
		{"the right side, from above", 0.25, 120, false, 40, 50},
		{"the far middle, from above", 0.25, 210, true, 0, 60},
		{"60° to the right, from above", 0.25, 90, false, 40 * math.Sqrt(3) / 2, 45},
		{"the right side as the end of the far one", 0.25, 120, true, 40, 50},
	} {
		s := stance{turn: 30 * degree, down: c.down}
		got := s.at(s.faces(c.theta*degree, c.far), r, z, c.far)
		if !near(got.X, c.x, 1e-9) || !near(got.Y, c.y, 1e-9) {
			t.Errorf("%s: at (%.6f, %.6f), want (%.6f, %.6f)", c.name, got.X, got.Y, c.x, c.y)
		}
	}
}

func TestSide(t *testing.T) {
	for _, c := range []struct{ down, slope, degrees float64 }{
		{0, 0, 90},
		{0, 0.7, 90}, // from the side every glass shows half of itself
		{0.25, 0, 90},
		{0.25, 2, 60}, // cos 60° = 2 · 0.25
		{0.25, -2, 120},
		{0.25, 5, 0}, // it widens so fast that the eye sees none of its side
		{0.25, -5, 180},
	} {
		if got := (stance{down: c.down}).side(c.slope) / degree; !near(got, c.degrees, 1e-9) {
			t.Errorf("down %g, slope %g: the side is at %g°, want %g°", c.down, c.slope, got, c.degrees)
		}
	}
}
