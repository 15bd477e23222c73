package glass

import (
	"errors"
	"math"
	"testing"

	"roundlay/geometry"
)

// at returns a round station.
func at(height, radius, wall float64) Station {
	return Station{Height: height, Radius: radius, Wall: wall}
}

// tumbler is a straight taper, its wall thinning in two straight lines:
//
//	z     0    40    100
//	r    30    32     35
//	wall  8     4      2
func tumbler(t *testing.T) *Blank {
	t.Helper()
	b, err := NewBlank("tumbler", 10, []Station{at(0, 30, 8), at(40, 32, 4), at(100, 35, 2)})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestWall(t *testing.T) {
	b := tumbler(t)
	for z, want := range map[float64]float64{0: 8, 10: 7, 20: 6, 40: 4, 70: 3, 85: 2.5, 100: 2} {
		if got := b.Wall(z); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %g the wall is %g, wanted %g", z, got, want)
		}
	}
	if b.Height() != 100 {
		t.Errorf("height %g", b.Height())
	}
	if r := b.Profile().Radius(20); math.Abs(r-31) > 1e-12 {
		t.Errorf("radius %g at 20, wanted 31", r)
	}
}

func TestLeastWall(t *testing.T) {
	b := tumbler(t)
	for _, c := range []struct{ from, to, want float64 }{
		{0, 100, 2}, {0, 20, 6}, {20, 70, 3}, {40, 40, 4},
	} {
		if got := b.MinWall(c.from, c.to); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("from %g to %g the least wall is %g, wanted %g", c.from, c.to, got, c.want)
		}
	}
	// A waist: the thinnest place is a station inside.
	waisted, err := NewBlank("waisted", 0, []Station{at(0, 30, 5), at(50, 25, 1.5), at(90, 30, 4)})
	if err != nil {
		t.Fatal(err)
	}
	if got := waisted.MinWall(10, 80); got != 1.5 {
		t.Errorf("the waist's least wall is %g", got)
	}
}

func TestCarries(t *testing.T) {
	b := tumbler(t)
	for _, c := range []struct{ thickness, from, want float64 }{
		{1, 0, 100}, // never so thin
		{2, 0, 100}, // just so at the rim
		{3, 0, 70},  // half way up the upper line
		{4, 0, 40},  // at a station
		{6, 0, 20},  // half way up the lower line
		{3, 50, 70}, // from between stations
		{3, 80, 80}, // too thin there already
		{9, 0, 0},   // nowhere thick enough
		{3, 40, 70}, // from a station
		{2, 100, 100},
	} {
		if got := b.Carries(Wanted{c.thickness, c.from}); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g mm from %g: up to %g, wanted %g", c.thickness, c.from, got, c.want)
		}
	}
}

func TestNewBlankRefuses(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		stations []Station
		want     error
	}{
		"one station":        {[]Station{at(0, 30, 3)}, geometry.ErrProfile},
		"none":               {nil, geometry.ErrProfile},
		"no rise":            {[]Station{at(0, 30, 3), at(0, 30, 3)}, geometry.ErrProfile},
		"a fall":             {[]Station{at(10, 30, 3), at(0, 30, 3)}, geometry.ErrProfile},
		"height nan":         {[]Station{at(0, 30, 3), at(nan, 30, 3)}, geometry.ErrProfile},
		"no wall":            {[]Station{at(0, 30, 0), at(10, 30, 3)}, ErrWall},
		"a wall below zero":  {[]Station{at(0, 30, -1), at(10, 30, 3)}, ErrWall},
		"a rod":              {[]Station{at(0, 30, 30), at(10, 30, 3)}, ErrWall},
		"wall nan":           {[]Station{at(0, 30, nan), at(10, 30, 3)}, ErrWall},
		"radius nan":         {[]Station{at(0, nan, 3), at(10, 30, 3)}, ErrWall},
		"radius of infinity": {[]Station{at(0, math.Inf(1), 3), at(10, 30, 3)}, geometry.ErrProfile},
	} {
		if _, err := NewBlank("b", 0, c.stations); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, wanted %v", name, err, c.want)
		}
	}
}
