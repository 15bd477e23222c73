package glass

import (
	"errors"
	"math"
	"slices"
	"testing"
)

// millilitresPerOunce is the US fluid ounce of NIST Handbook 44, appendix C.
const millilitresPerOunce = 29.5735

func blankOf(t *testing.T, floor float64, stations ...Station) *Blank {
	t.Helper()
	b, err := NewBlank("trial", floor, stations)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// within compares relatively.
func within(got, want, share float64) bool { return math.Abs(got-want) <= share*math.Abs(want) }

// TestFrustums holds the outside to published worked examples of the frustum
// formula, in cm³. Each used a rounded π, which is put right here.
func TestFrustums(t *testing.T) {
	for _, c := range []struct {
		source          string
		high, wide, end float64 // cm, the diameters of both ends
		volume, pi      float64
	}{
		{"NCERT mathematics, class X, exercise 13.4, question 1, as solved by shaalaa.com: the capacity of a drinking glass", 14, 4, 2, 308. / 3, 22. / 7},
		{"philoid.com, question 32078: a drinking glass", 21, 6, 4, 418, 22. / 7},
		{"esaral.com, question 53914: a drinking glass", 14, 16, 12, 6512. / 3, 22. / 7},
		{"byjus.com: a vessel in the form of a frustum (here in dm for m)", 50, 20, 5, 6562.5, 3},
	} {
		// A wall like foil and a floor like foil: what it holds is the frustum.
		b := blankOf(t, 1e-9, at(0, c.end*5, 1e-9), at(c.high*10, c.wide*5, 1e-9))
		want := c.volume / c.pi * math.Pi * 1000
		if got := b.outside(); !within(got, want, 1e-12) {
			t.Errorf("%s: %g mm³, wanted %g", c.source, got, want)
		}
		if got := b.Capacity(b.Height()); !within(got, want, 1e-9) {
			t.Errorf("%s: holds %g mm³, wanted %g", c.source, got, want)
		}
	}
}

// A straight glass by hand: 80 mm across, 100 high, 4 mm of wall, 10 of floor.
func TestVolumeByHand(t *testing.T) {
	b := blankOf(t, 10, at(0, 40, 4), at(30, 40, 4), at(100, 40, 4))
	for to, want := range map[float64]float64{
		0: 0, 10: 0, 60: math.Pi * 36 * 36 * 50, 100: math.Pi * 36 * 36 * 90, 200: math.Pi * 36 * 36 * 90,
	} {
		if got := b.Capacity(to); !within(got, want, 1e-12) {
			t.Errorf("filled to %g it holds %g, wanted %g", to, got, want)
		}
	}
	// 160000π of outside less 116640π of inside.
	if got, want := b.Volume(), 43360*math.Pi; !within(got, want, 1e-12) {
		t.Errorf("glass %g, wanted %g", got, want)
	}
	if got, want := b.Weight(), 43.360*math.Pi*2.5; !within(got, want, 1e-12) {
		t.Errorf("weighs %g g, wanted %g", got, want)
	}
	b.Material = Material{Density: 3}
	if got, want := b.Weight(), 43.360*math.Pi*3; !within(got, want, 1e-12) {
		t.Errorf("of heavier glass %g g, wanted %g", got, want)
	}
	if blankOf(t, 0, at(0, 40, 4), at(100, 40, 4)).FloorKnown() {
		t.Error("hollow without a floor")
	}
}

// TestTaperByHand: on a straight taper with an even wall, inside is a frustum
// whose radii are less by wall/cos α.
func TestTaperByHand(t *testing.T) {
	b := blankOf(t, 20, at(0, 30, 3), at(100, 45, 3))
	level := 3 * math.Hypot(1, 0.15)
	r, R := 33-level, 45-level
	if got, want := b.Capacity(100), math.Pi*80/3*(R*R+R*r+r*r); !within(got, want, 1e-12) {
		t.Errorf("holds %g, wanted %g", got, want)
	}
}

// TestVolumeNumeric sums thin discs of curved blanks with a wall that changes: of
// the outside a hundred thousand, of the hollow one for each step of the walk.
func TestVolumeNumeric(t *testing.T) {
	for name, b := range map[string]*Blank{
		"tulip":  blankOf(t, 12, at(0, 30, 9), at(15, 28, 6), at(50, 38, 3), at(80, 36, 2.5), at(105, 40, 2)),
		"barrel": blankOf(t, 6, at(0, 31, 5), at(45, 39, 3.5), at(90, 33, 2)),
		"taper":  blankOf(t, 8, at(0, 28, 7), at(50, 34, 4), at(110, 41, 2)),
		"foot":   blankOf(t, 5, at(0, 44, 9), at(8, 36, 7), at(20, 35, 4), at(100, 38, 2)),
	} {
		const discs = 100_000
		solid := 0.0
		for i := range discs {
			r := b.profile.Radius(b.Height() * (float64(i) + 0.5) / discs)
			solid += math.Pi * r * r * b.Height() / discs
		}
		walked := walk(b, 1)
		for _, to := range []float64{33.3, 71, b.Height()} {
			// The sum's own error is a step of the walk at the floor and at the rim.
			if got, want := b.Capacity(to), walked.holds(to); !within(got, want, 1e-4) {
				t.Errorf("%s to %g: holds %g, summed %g", name, to, got, want)
			}
		}
		if got, want := b.Volume(), solid-walked.holds(b.Height()); !within(got, want, 2e-4) {
			t.Errorf("%s: glass %g, summed %g", name, got, want)
		}
	}
}

// A 16-ounce mixing glass, 5 7/8 in high, 2 3/8 in across the foot and 3 1/4 in
// across the rim, of about 1/8 in wall and 3/8 in floor, holds 16 US fluid ounces
// of water to the brim, give or take half an ounce: common practice, no source.
func TestCommonGlass(t *testing.T) {
	const in = 25.4
	b := blankOf(t, in*3/8, at(0, in*19/16, in*5/32), at(in*47/8, in*13/8, in*3/32))
	if ounces := b.Capacity(b.Height()) / 1000 / millilitresPerOunce; math.Abs(ounces-16) > 0.5 {
		t.Errorf("holds %.2f US fl oz", ounces)
	}
}

func TestWeighed(t *testing.T) {
	b := blankOf(t, 12, at(0, 30, 9), at(15, 28, 6), at(50, 38, 3), at(105, 40, 2))
	b.Fill, b.Material = 90, Material{"lead crystal", 2.9}
	for _, factor := range []float64{minFactor, 0.85, 1, 1.2, maxFactor} {
		truth, err := b.thicker(factor)
		if err != nil {
			t.Fatal(err)
		}
		got, err := b.CalibrateWalls(truth.Weight())
		if err != nil {
			t.Fatal(err)
		}
		if !within(got.Factor, factor, 1e-8) || !within(got.Weight(), truth.Weight(), 1e-9) {
			t.Errorf("factor %g, wanted %g; weighs %g, wanted %g", got.Factor, factor, got.Weight(), truth.Weight())
		}
		if !slices.Equal(got.Stations, b.Stations) {
			t.Errorf("times %g the stations are %+v, no longer as measured", factor, got.Stations)
		}
		if got.Fill != 90 || got.Material.Name != "lead crystal" || got.ScaleWeight != truth.Weight() {
			t.Errorf("something was lost: %+v", got)
		}
	}
	if b.Factor != 1 || b.ScaleWeight != 0 || b.Stations[0].Wall != 9 {
		t.Error("weighing changed the blank that was measured")
	}
}

// A glass 80 mm across with walls of 4 mm: of a heavier scale's it holds less, and
// leaves no more; of a lighter scale's it holds more, and leaves less.
func TestWeighedLeaves(t *testing.T) {
	b := blankOf(t, 10, at(0, 40, 4), at(100, 40, 4))
	for _, c := range []struct{ grams, inside, leaves float64 }{
		{2.5 * math.Pi * (160 - 90*1.225), 35, 4}, // 35² = 1225: walls of 5 mm
		{2.5 * math.Pi * (160 - 90*1.369), 37, 3}, // 37² = 1369
	} {
		got, err := b.CalibrateWalls(c.grams)
		if err != nil {
			t.Fatal(err)
		}
		inside, err := got.Inside()
		if err != nil {
			t.Fatal(err)
		}
		if !within(got.Capacity(100), math.Pi*c.inside*c.inside*90, 1e-8) || !within(inside.Radius(50), c.inside, 1e-8) {
			t.Errorf("of %g g it holds %g, and its inside has a radius of %g; by hand %g", c.grams, got.Capacity(100), inside.Radius(50), c.inside)
		}
		for name, leaves := range map[string]float64{
			"Wall": got.Wall(50), "MinWall": got.MinWall(-1, 101), "Distance": got.ThinInner().Distance(40, 50),
		} {
			if !within(leaves, c.leaves, 1e-8) {
				t.Errorf("of %g g: %s %g, by hand %g", c.grams, name, leaves, c.leaves)
			}
		}
		if up := got.Carries(Wanted{Wall: c.leaves + 0.01}); up != 0 {
			t.Errorf("of %g g it carries %g up to %g", c.grams, c.leaves+0.01, up)
		}
		if up := got.Carries(Wanted{Wall: c.leaves - 0.01}); up != 100 {
			t.Errorf("of %g g it carries %g up to %g only", c.grams, c.leaves-0.01, up)
		}
	}
}

func TestWeighedRefuses(t *testing.T) {
	b := blankOf(t, 12, at(0, 30, 9), at(105, 40, 2))
	light, _ := b.thicker(minFactor)
	heavy, _ := b.thicker(maxFactor)
	for _, grams := range []float64{light.Weight() - 0.01, heavy.Weight() + 0.01, 0, -1, math.NaN(), math.Inf(1)} {
		var wrong *FactorError
		if _, err := b.CalibrateWalls(grams); !errors.As(err, &wrong) {
			t.Errorf("%g g: %v", grams, err)
		} else if wrong.Computed != b.Weight() || wrong.Min != light.Weight() || wrong.Max != heavy.Weight() {
			t.Errorf("%g g: %+v", grams, wrong)
		}
	}
	// Walls that would meet in the middle.
	rod := blankOf(t, 12, at(0, 30, 25), at(105, 40, 2))
	if _, err := rod.CalibrateWalls(rod.Weight()); !errors.Is(err, ErrWall) {
		t.Errorf("a rod: %v", err)
	}
}

func TestMaterials(t *testing.T) {
	// Directive 69/493/EEC, annex I: the least densities of crystal glass, lead
	// crystal 24 % and full lead crystal 30 %.
	want := map[string]float64{"crystal": 2.45, "lead crystal": 2.90, "full lead crystal": 3.00, "soda-lime": 2.5}
	for _, m := range Materials() {
		if want[m.Name] != m.Density {
			t.Errorf("%s: %g", m.Name, m.Density)
		}
	}
}

func TestOutOfRound(t *testing.T) {
	s := at(50, 40, 4)
	if s.OutOfRound() != 0 {
		t.Error("round, and out of round")
	}
	s.Min, s.Max = 79.5, 80.25
	b := blankOf(t, 0, at(0, 40, 4), s, Station{Height: 90, Radius: 40, Wall: 3, Min: 79.9, Max: 80.1})
	if got := b.OutOfRound(); got != 0.75 {
		t.Errorf("out of round by %g", got)
	}
}

// Of a lighter scale's walls the thinnest place lies at a station as well, and what
// they carry ends between stations: three quarters of 8, 4 and 6 mm are 6, 3 and
// 4.5, so 4 mm are there up to two thirds of the way from 0 to 50, and 3.5 mm up to
// five sixths.
func TestWeighedThinsEveryStation(t *testing.T) {
	b := blankOf(t, 10, at(0, 40, 8), at(50, 40, 4), at(100, 40, 6))
	truth, err := b.thicker(0.75)
	if err != nil {
		t.Fatal(err)
	}
	got, err := b.CalibrateWalls(truth.Weight())
	if err != nil {
		t.Fatal(err)
	}
	if least := got.MinWall(20, 90); !within(least, 3, 1e-6) {
		t.Errorf("from 20 to 90 the least wall is %g, by hand 3", least)
	}
	for thickness, want := range map[float64]float64{4: 50 * 2.0 / 3, 3.5: 50 * 5.0 / 6, 2.9: 100} {
		if up := got.Carries(Wanted{Wall: thickness, From: 10}); !within(up, want, 1e-6) {
			t.Errorf("it carries %g mm up to %g, by hand %g", thickness, up, want)
		}
	}
}
