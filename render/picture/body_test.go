package picture

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// Profiles of all sorts, with their walls.
func blanks(t *testing.T) map[string]*glass.Blank {
	t.Helper()
	all := map[string]*glass.Blank{"the demo": demo(t).Blank}
	for name, stations := range map[string][]glass.Station{
		"straight":  {{Height: 0, Radius: 40, Wall: 6}, {Height: 100, Radius: 40, Wall: 4}},
		"widening":  {{Height: 0, Radius: 28, Wall: 6}, {Height: 90, Radius: 44, Wall: 3}},
		"narrowing": {{Height: 0, Radius: 47, Wall: 8}, {Height: 110, Radius: 36, Wall: 3}},
		"bulged": {{Height: 0, Radius: 28, Wall: 9}, {Height: 20, Radius: 36, Wall: 6}, {Height: 45, Radius: 42, Wall: 4},
			{Height: 75, Radius: 40, Wall: 3.2}, {Height: 105, Radius: 34, Wall: 2.4}},
		"waisted": {{Height: 0, Radius: 40, Wall: 8}, {Height: 50, Radius: 30, Wall: 5}, {Height: 100, Radius: 42, Wall: 3}},
	} {
		b, err := glass.NewBlank(name, 12, stations)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = b
	}
	return all
}

// Seen straight from the side the outline is the profile, within 0.01 mm, on both
// sides, at its points and between them.
func TestOutlineIsTheProfile(t *testing.T) {
	for name, b := range blanks(t) {
		line := outside(b, stance{}).outline()
		for i, p := range line {
			q := line[(i+1)%len(line)]
			if p.Y == q.Y {
				continue // across the foot and the rim
			}
			for _, share := range []float64{0, 0.25, 0.5, 0.75} {
				at := between(p, q, share)
				if r := b.Profile().Radius(at.Y); !near(math.Abs(at.X), r, 0.01) {
					t.Errorf("%s: %.4f mm from the axis at %.3f mm, the profile is at %.4f", name, at.X, at.Y, r)
				}
			}
		}
		if box := geometry.BoxOf(line...); box.Min.Y != 0 || !near(box.Max.Y, b.Height(), 1e-9) {
			t.Errorf("%s: from %g to %g mm, the glass is %g high", name, box.Min.Y, box.Max.Y, b.Height())
		}
	}
}

// Seen from a little above the sides still run along the profile: where the slope
// is r′ they leave it by r (r′ tan φ)² / 2, which is less than 0.01 mm on any glass
// whose sides stand within eight degrees of upright.
func TestOutlineFromAboveRunsAlongTheProfile(t *testing.T) {
	s := stance{down: math.Tan(DefaultTilt)}
	for name, b := range blanks(t) {
		body, profile := outside(b, s), b.Profile()
		worst, where := 0.0, 0.0
		for z := 0.0; z <= b.Height(); z += 0.5 {
			p := body.at(body.edge(1, z), z)
			slope := profile.Slope(z)
			off := math.Abs(p.X-profile.Radius(p.Y)) / math.Hypot(1, slope)
			bound := 0.01
			if math.Abs(slope) > math.Tan(8*degree) {
				bound = 1.2 * profile.Radius(z) * math.Pow(slope*s.down, 2) / 2
			}
			if off/bound > worst {
				worst, where = off/bound, z
			}
		}
		if worst > 1 {
			t.Errorf("%s: at %.1f mm the side leaves the profile by %.1f times what it may", name, where, worst)
		}
	}
}

// No part of the surface sticks out of the outline, and the outline touches it
// all along: that is what an outline is, whatever the formulas say.
func TestOutlineHoldsTheGlass(t *testing.T) {
	for _, down := range []float64{0, math.Tan(DefaultTilt), math.Tan(MaxTilt)} {
		s := stance{down: down}
		for name, b := range blanks(t) {
			body := outside(b, s)
			outline := geometry.NewOutline(body.outline())
			touched := 0.0
			for z := 0.0; z <= b.Height(); z += b.Height() / 80 {
				out := 0.0
				for angle := -math.Pi; angle < math.Pi; angle += math.Pi / 60 {
					out = max(out, outline.DistanceTo(body.at(angle, z), 1))
				}
				if out > 0.01 {
					t.Errorf("%s, down %.2f: the surface at %.1f mm is %.3f mm outside", name, down, z, out)
				}
				side := body.at(body.edge(1, z), z)
				beyond := geometry.Point{X: side.X + 0.02, Y: side.Y}
				if outline.Contains(beyond) {
					touched = max(touched, z)
				}
			}
			if touched > 0 && math.Abs(b.Profile().Slope(touched))*down < 0.9 && name != "waisted" {
				t.Errorf("%s, down %.2f: the outline deviates from the glass at %.1f mm", name, down, touched)
			}
		}
	}
}

// The wall is measured square to the glass: on a slope of 3 in 4 a wall of 4 mm is
// 4 · √(1 + 0.75²) = 5 mm thick level.
func TestInside(t *testing.T) {
	b, err := glass.NewBlank("steep", 12, []glass.Station{{Height: 0, Radius: 30, Wall: 4}, {Height: 40, Radius: 60, Wall: 4}})
	if err != nil {
		t.Fatal(err)
	}
	inside := shell(b, stance{}, 1)
	for z, want := range map[float64]float64{20: 45 - 5, 30: 52.5 - 5, 40: 60 - 5} {
		if got := inside.radius(z); !near(got, want, 1e-9) {
			t.Errorf("the inside at %g mm has the radius %g, want %g", z, got, want)
		}
	}
	if inside.foot() != 12 || inside.rim() != 40 {
		t.Errorf("the inside stands from %g to %g mm, want 12 to 40", inside.foot(), inside.rim())
	}
	// Halfway through the glass.
	half := shell(b, stance{}, 0.5)
	if got := half.radius(30); !near(got, 52.5-2.5, 1e-9) || half.foot() != 6 {
		t.Errorf("halfway: radius %g, foot %g; want 50, 6", got, half.foot())
	}
	// A floor nobody measured is as thick as the wall at the foot.
	b.Floor = 0
	if got := shell(b, stance{}, 1).foot(); got != 4 {
		t.Errorf("the unmeasured floor is %g mm, want 4", got)
	}
}

// Every shell lies inside the one before, right down to a rod's.
func TestShellsNest(t *testing.T) {
	all := blanks(t)
	rod, err := glass.NewBlank("rod", 0, []glass.Station{{Height: 0, Radius: 10, Wall: 9.9}, {Height: 30, Radius: 12, Wall: 11.99}})
	if err != nil {
		t.Fatal(err)
	}
	all["rod"] = rod
	for name, b := range all {
		for _, down := range []float64{0, math.Tan(DefaultTilt)} {
			outer := geometry.NewOutline(outside(b, stance{down: down}).outline())
			for share := 0.1; share <= 1; share += 0.1 {
				line := shell(b, stance{down: down}, share).front(-1, 1)
				for _, p := range line {
					if !(outer.DistanceTo(p, 1) < 0.06) {
						t.Fatalf("%s, down %.2f: the shell %.1f in sticks out at (%.2f, %.2f)", name, down, share, p.X, p.Y)
					}
				}
				outer = geometry.NewOutline(line)
				if name == "waisted" || b.Floor == 0 {
					outer = geometry.NewOutline(outside(b, stance{down: down}).outline())
				}
			}
		}
	}
}
