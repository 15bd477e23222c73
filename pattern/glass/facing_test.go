package glass

import (
	"math"
	"slices"
	"testing"
)

// ring returns the stations of a glass whose outside is part of a circle in the
// half-plane, about a centre, with an even wall.
func ring(about spot, radius, wall, high float64, sign float64) []Station {
	const apart = 0.5
	var stations []Station
	for z := 0.0; z <= high; z += apart {
		up := z - about.height
		stations = append(stations, at(z, about.radius+sign*math.Sqrt(radius*radius-up*up), wall))
	}
	return stations
}

// A bowl whose outside is part of a sphere of 50 mm about a point 40 mm above the
// table; its wall is 5 mm, so that its inside is part of one of 45 mm about the
// same point, however far beyond its middle the rim is.
func TestSphere(t *testing.T) {
	for _, rim := range []float64{40, 62} {
		b := blankOf(t, 8, ring(spot{0, 40}, 50, 5, rim, 1)...)
		inside, err := b.Inside()
		if err != nil {
			t.Fatal(err)
		}
		// The curve through stations is no sphere in its last millimetre.
		for h := 9.0; h < rim-1; h += 1.7 {
			if want := math.Sqrt(2025 - (h-40)*(h-40)); math.Abs(inside.Radius(h)-want) > 0.005 {
				t.Errorf("rim at %g: at %g the radius is %.4f, by hand %.4f", rim, h, inside.Radius(h), want)
			}
		}
		// ∫ π (45² − (h − 40)²) dh from the floor up.
		cubes := math.Pow(rim-40, 3) - math.Pow(8-40, 3)
		if got, want := b.Capacity(rim), math.Pi*(2025*(rim-8)-cubes/3); !within(got, want, 1e-4) {
			t.Errorf("rim at %g: holds %g, by hand %g", rim, got, want)
		}
		// Every place of the wall is as far from the inside as from a sphere of 45.
		for _, up := range []float64{-20, -5, 3, 15} {
			for _, in := range []float64{0, 1, 3, 4.9, 5.5, 9} {
				sin, cos := math.Sincos(up * math.Pi / 180)
				got := b.ThinInner().Distance((50-in)*cos, 40+(50-in)*sin)
				if want := 5 - in; 40+(50-in)*sin < rim-2 && math.Abs(got-want) > 0.005 {
					t.Errorf("rim at %g, %g° up, %g mm in: %.4f, by hand %g", rim, up, in, got, want)
				}
			}
		}
	}
}

// A belly and a waist that are part of a torus: its tube has a radius of 30 mm, and
// its middle is 20 mm from the axis in the belly, 65 mm in the waist. A wall of
// 5 mm makes the inside's tube 25 mm and 35 mm. The hollow between 20 mm below and
// above the middle, ∫ π (a ± √(ρ² − y²))² dy, is by Pappus π a² · 40 ± 2 π a A
// and what the tube's own ball would hold, π (ρ² · 40 − 16000/3), A being the area
// of its circle between those heights, 20 √(ρ² − 400) + ρ² asin(20/ρ).
func TestTorus(t *testing.T) {
	for name, c := range map[string]struct{ axis, tube, sign float64 }{
		"belly": {20, 25, 1}, "waist": {65, 35, -1},
	} {
		b := blankOf(t, 5, ring(spot{c.axis, 25}, 30, 5, 50, c.sign)...)
		area := 20*math.Sqrt(c.tube*c.tube-400) + c.tube*c.tube*math.Asin(20/c.tube)
		want := math.Pi*c.axis*c.axis*40 + c.sign*2*math.Pi*c.axis*area + math.Pi*(c.tube*c.tube*40-16000.0/3)
		if got := b.Capacity(45); !within(got, want, 1e-4) {
			t.Errorf("%s: holds %g, by hand %g", name, got, want)
		}
		for _, z := range []float64{10, 18, 25, 40} {
			up := z - 25
			outside := spot{c.axis + c.sign*math.Sqrt(900-up*up), z}
			share := c.tube / 30
			want := spot{c.axis + (outside.radius-c.axis)*share, 25 + up*share}
			radius, height := b.Inner().Opposite(z)
			if math.Hypot(radius-want.radius, height-want.height) > 0.005 {
				t.Errorf("%s: opposite %g is (%.4f, %.4f), by hand %v", name, z, radius, height, want)
			}
			if back, ok := b.Inner().Facing(height); !ok || math.Abs(back-z) > 1e-9 {
				t.Errorf("%s: %g comes back as %g, %v", name, z, back, ok)
			}
			if left := b.ThinInner().Distance(outside.radius, z); math.Abs(left-5) > 0.005 {
				t.Errorf("%s: at %g there are %.4f, by hand 5", name, z, left)
			}
		}
	}
}

// A belly rounder than its wall is thick: a tube of 12 mm, 36 mm from the axis,
// under a wall of 20. What is opposite lies beyond the tube's middle, 8 mm of it
// back down from above and back up from below.
func TestTurnsBack(t *testing.T) {
	b := blankOf(t, 0, ring(spot{36, 10}, 12, 20, 20, 1)...)
	inner := b.ThinInner()
	if !inner.folded {
		t.Fatal("it does not turn back")
	}
	// The slope of the curve through the stations is off by less than a thousandth.
	radius, height := inner.Opposite(16)
	if want := (spot{36 - 8*math.Sqrt(0.75), 6}); math.Hypot(radius-want.radius, height-want.height) > 20*0.001 {
		t.Errorf("opposite 16 is (%.4f, %.4f), by hand %v", radius, height, want)
	}
	// Both arms beyond the ends cross heights of the belly, too.
	if _, ok := inner.Facing(10); ok {
		t.Error("one height of the outside faces where it turns back")
	}
	// The belly is 12 mm from the tube's middle and 20 from what is opposite.
	if left := inner.Distance(48, 10); left > 20+0.005 {
		t.Errorf("there are %.4f at the belly, where 20 were measured", left)
	}
	for z := 0.5; z < 20; z += 0.5 {
		if left := inner.Distance(b.profile.Radius(z), z); left > b.Wall(z)+Stray {
			t.Errorf("at %g there are %.4f, where %g were measured", z, left, b.Wall(z))
		}
	}
}

// A wall that thins from 9 to 2 mm within 4 mm of a glass flared by 45° makes a
// ledge inside that slopes down outwards, from (41 − 6.36, 11 + 6.36) to
// (45 − 1.41, 15 + 1.41), the tan 45° of each mm up being a mm out.
func TestLedge(t *testing.T) {
	b := blankOf(t, 5, at(0, 30, 9), at(11, 41, 9), at(15, 45, 2), at(50, 80, 2))
	inner := b.ThinInner()
	deep, thin := 9/math.Sqrt2, 2/math.Sqrt2
	tip, root := spot{41 - deep, 11 + deep}, spot{45 - thin, 15 + thin}
	if !(tip.height > root.height) || !inner.folded {
		t.Fatalf("no ledge from %v to %v", tip, root)
	}
	// Half way down the ledge, 0.1 mm above it and below it.
	middle := spot{(tip.radius + root.radius) / 2, (tip.height + root.height) / 2}
	steep := math.Hypot(root.radius-tip.radius, root.height-tip.height)
	for _, below := range []float64{0.1, -0.1} {
		radius := middle.radius + below*(root.height-tip.height)/steep
		height := middle.height - below*(root.radius-tip.radius)/steep
		if got := inner.Distance(radius, height); math.Abs(got-below) > 1e-9 {
			t.Errorf("%g below the ledge there are %g", below, got)
		}
	}
	if _, ok := inner.Facing(middle.height); ok {
		t.Error("one height of the outside faces the ledge")
	}
	// Paper keeps to what lies nearest the axis, below the ledge and above it.
	inside, err := b.Inside()
	if err != nil {
		t.Fatal(err)
	}
	for height, want := range map[float64]float64{
		10: 30 + 10 - 9*math.Sqrt2, 15: 30 + 15 - 9*math.Sqrt2, 30: 30 + 30 - 2*math.Sqrt2,
	} {
		if got := inside.Radius(height); math.Abs(got-want) > 1e-3 {
			t.Errorf("at %g the radius is %.4f, by hand %.4f", height, got, want)
		}
	}
}

// Facing undoes Opposite between the floor and the rim, and says where there is
// nothing to undo.
func TestFacing(t *testing.T) {
	for name, b := range map[string]*Blank{
		"tulip":  blankOf(t, 12, at(0, 30, 9), at(15, 28, 6), at(50, 38, 3), at(80, 36, 2.5), at(105, 40, 2)),
		"barrel": blankOf(t, 6, at(0, 31, 5), at(45, 39, 3.5), at(90, 33, 2)),
		"taper":  blankOf(t, 8, at(0, 28, 7), at(50, 34, 4), at(110, 41, 2)),
		"open":   blankOf(t, 0, at(0, 28, 7), at(50, 34, 4), at(110, 41, 2)),
	} {
		inner := b.Inner()
		for z := 0.0; z <= b.Height(); z += 0.7 {
			_, height := inner.Opposite(z)
			back, ok := inner.Facing(height)
			if there := height >= b.Floor && height <= b.Height(); ok != there || ok && math.Abs(back-z) > 1e-9 {
				t.Errorf("%s: %g is opposite %g, which faces %g, %v", name, z, height, back, ok)
			}
		}
		if z, ok := inner.Facing(b.Height()); !ok {
			t.Errorf("%s: nothing faces the rim, %g", name, z)
		}
		for _, beyond := range []float64{b.Height() + 0.1, b.Floor - 30} {
			if z, ok := inner.Facing(beyond); ok {
				t.Errorf("%s: %g faces %g", name, z, beyond)
			}
		}
	}
}

// Straight, 80 mm across: opposite is level. Tapered by 3 in 4: what is opposite a
// height lies 3/5 of the wall above it, so the floor's corner at 9 mm is opposite
// 9 − 3, and the rim at 80 opposite 80 − 3.
func TestKinks(t *testing.T) {
	for name, c := range map[string]struct {
		blank *Blank
		want  []float64
	}{
		"straight": {blankOf(t, 9, at(0, 40, 5), at(30, 40, 4), at(80, 40, 4)), []float64{0, 9, 30, 80}},
		"flared":   {blankOf(t, 9, at(0, 20, 5), at(80, 80, 5)), []float64{0, 6, 77, 80}},
		"narrow":   {blankOf(t, 9, at(0, 80, 5), at(80, 20, 5)), []float64{0, 12, 80}},
		"no floor": {blankOf(t, 0, at(0, 20, 5), at(80, 80, 5)), []float64{0, 77, 80}},
	} {
		got := c.blank.ThinInner().Kinks()
		if !slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%s: %v, by hand %v", name, got, c.want)
		}
	}
}

// Under the floor of a straight glass the floor carries, beside its corner the
// corner is nearest; without a floor the wall goes on, at the table and below.
func TestFloor(t *testing.T) {
	for _, c := range []struct {
		floor, radius, height, want float64
	}{
		{10, 20, 4, 6}, {10, 36, 7, 3}, {10, 39, 6, 5}, {10, 40, 10, 4}, {10, 40, 50, 4}, {10, 20, 12, -2}, {10, 34, 60, -2}, {10, 34, 120, -math.Hypot(2, 20)},
		{0, 40, 0, 4}, {0, 38, 1, 2}, {0, 40, -2, 4}, {0, 20, 4, -16}, {0, 40, 100, 4},
	} {
		b := blankOf(t, c.floor, at(0, 40, 4), at(100, 40, 4))
		if got := b.ThinInner().Distance(c.radius, c.height); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("floor of %g: from (%g, %g) there are %g, by hand %g", c.floor, c.radius, c.height, got, c.want)
		}
		if b.ThinInner().FloorKnown() != (c.floor > 0) {
			t.Errorf("floor of %g: known %v", c.floor, b.ThinInner().FloorKnown())
		}
	}
	if solid := blankOf(t, 100, at(0, 40, 4), at(100, 40, 4)); !math.IsInf(solid.ThinInner().Distance(40, 50), 1) {
		t.Error("a solid glass has an inside")
	}
}
