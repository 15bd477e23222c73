package groove_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// contactLength is the length of the mark that a wheel needs for a depth, on a
// cone of the given half-angle and radius, at an angle ψ from the profile. Its
// edge is round: of a mitre, whose point leaves the line by the surface's
// twist, the length would say that too.
func contactLength(halfAngle, glass, wheel, depth, psi float64) float64 {
	cone := geometry.NewCone(geometry.Angle(halfAngle), geometry.Circle{Radius: glass, Height: 50}, 50)
	sin, cos := math.Sincos(psi)
	line := groove.NewLine([]geometry.Point{{X: -5 * sin, Y: 50 - 5*cos}, {X: 5 * sin, Y: 50 + 5*cos}})
	w := groove.Wheel{Edge: groove.Round, Radius: wheel, Thick: 12, Convex: 6}
	return groove.Cut(outside(cone), line, w, depth, 0).LengthFor(outside(cone), w, depth)
}

// A mark round a straight glass ends where the wheel's circle meets the glass's:
// on their common chord (Wolfram MathWorld, "Circle-circle intersection").
func TestCommonChord(t *testing.T) {
	for _, c := range []struct{ glass, wheel, depth float64 }{
		{40, 38, 0.8}, {40, 75, 1.6}, {30, 20, 2.5}, {55, 100, 0.2},
	} {
		r, R, D := c.glass, c.wheel, c.glass+c.wheel-c.depth
		chord := math.Sqrt(4*D*D*R*R-math.Pow(D*D-r*r+R*R, 2)) / D
		arc := 2 * r * math.Asin(chord/(2*r)) // along the glass
		if got := contactLength(0, r, R, c.depth, math.Pi/2); math.Abs(got-arc) > 0.001 {
			t.Errorf("wheel %g on glass %g, %g deep: %.4f mm, the common chord gives %.4f", R, r, c.depth, got, arc)
		}
	}
}

// A mark straight up a straight glass is the chord of the wheel whose sagitta is
// the depth: 2√(2Rd − d²).
func TestSagitta(t *testing.T) {
	for _, c := range []struct{ wheel, depth float64 }{{38, 0.8}, {75, 1.6}, {20, 2.5}} {
		want := 2 * math.Sqrt(2*c.wheel*c.depth-c.depth*c.depth)
		if got := contactLength(0, 40, c.wheel, c.depth, 0); math.Abs(got-want) > 0.001 {
			t.Errorf("wheel %g, %g deep: %.4f mm, its chord is %.4f", c.wheel, c.depth, got, want)
		}
	}
}

// For a shallow mark, 2d/a² less the wheel's own curvature is the glass's along
// the cut: κ₁ sin²ψ + κ₂ cos²ψ by Euler's theorem (do Carmo, Differential
// Geometry of Curves and Surfaces), with κ₂ = 0 up a cone, and κ₁ = cos α / r
// round it.
func TestEuler(t *testing.T) {
	const glass, wheel, depth = 40.0, 60.0, 0.02
	for _, halfAngle := range []float64{0, 0.1, -0.2} {
		for _, psi := range []float64{0, math.Pi / 6, math.Pi / 4, math.Pi / 2, math.Pi, 3 * math.Pi / 2} {
			a := contactLength(halfAngle, glass, wheel, depth, psi) / 2
			got := 2*depth/(a*a) - 1/wheel
			want := math.Cos(halfAngle) / glass * math.Sin(psi) * math.Sin(psi)
			// What is left out is of the order of depth over radius.
			if math.Abs(got-want) > 2e-3*(want+1/wheel) {
				t.Errorf("half-angle %g, ψ %.3f: curvature %.6f, Euler has %.6f", halfAngle, psi, got, want)
			}
		}
	}
}

// A groove asked to be deeper is never narrower, a longer touch never shallower,
// and polishing widens each side by what it takes.
func TestGroovesGrow(t *testing.T) {
	cone := geometry.NewCone(0.07, geometry.Circle{Radius: 40, Height: 50}, 50)
	w := groove.Wheel{Edge: groove.Mitre, Radius: 40, Thick: 12, Angle: math.Pi / 2}
	width, deep := 0.0, 0.0
	for i := range 20 {
		long := groove.NewLine([]geometry.Point{{Y: 20}, {X: 20, Y: 60}})
		g := groove.Cut(outside(cone), long, w, 0.05+0.1*float64(i), 0)
		if g.Width < width {
			t.Errorf("%g deep it is %g wide, shallower %g", g.Asked, g.Width, width)
		}
		width = g.Width
		short := groove.NewLine([]geometry.Point{{Y: 50}, {X: 0.5 + 0.4*float64(i), Y: 50.3}})
		h := groove.Cut(outside(cone), short, w, 5, 0)
		if !h.Touch || h.Depth < deep {
			t.Errorf("a mark %g long is %g deep, a shorter one %g", h.Length, h.Depth, deep)
		}
		deep = h.Depth
		polished := groove.Cut(outside(cone), long, w, g.Asked, 0.15)
		if d := polished.Width - g.Width; math.Abs(d-0.3) > 1e-9 {
			t.Errorf("polishing 0.15 mm off each side widens by %g", d)
		}
	}
}
