package glass

import (
	"errors"
	"math"
	"testing"
)

// The tumbler's outside rises by 1 in 20: with the wall goes cos α = 1/√1.0025 of
// it inwards and a twentieth of that upwards. So its inside runs straight from
//
//	(30 − 7.99002, 0.39950) to (32 − 3.99501, 40.19975) and (35 − 1.99750, 100.09988)
//
// of which the floor, 10 mm thick, and the rim cut off the ends.
func TestInside(t *testing.T) {
	inside, err := tumbler(t).Inside()
	if err != nil {
		t.Fatal(err)
	}
	if inside.Bottom() != 10 || inside.Top() != 100 {
		t.Errorf("from %g to %g", inside.Bottom(), inside.Top())
	}
	low := func(height float64) float64 { return 22.00998 + (height-0.39950)*5.99501/39.80025 }
	high := func(height float64) float64 { return 28.00499 + (height-40.19975)*4.99751/59.90013 }
	for height, want := range map[float64]float64{
		10: low(10), 20: low(20), 25.5: low(25.5), 38: low(38), 40.19975: 28.00499,
		43: high(43), 55.25: high(55.25), 70: high(70), 100: high(100),
	} {
		if got := inside.Radius(height); math.Abs(got-want) > 1e-4 {
			t.Errorf("at %g the radius is %.5f, want %.5f", height, got, want)
		}
	}
}

// A cone's inside under an even wall is the same cone, shifted: on the level it
// lies the wall over cos α further in. Where the wall thins upwards, as it does
// here from 8 to 2 mm over 100 mm of slant, that of a height is the thicker one
// further down: opposite the outside where 7.75 mm were measured the girth inside
// would be 1.1 mm too long at 20°, and 3.2 mm at 40°, by the wall of the height.
func TestInsideOfCones(t *testing.T) {
	for degrees, girth := range map[float64]float64{20: 1.13, 40: 3.20} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		high := 100 * cos
		even := blankOf(t, 15, at(0, 40, 5), at(high, 40+100*sin, 5))
		inside, err := even.Inside()
		if err != nil {
			t.Fatal(err)
		}
		for h := 15.0; h < high; h += 7.3 {
			if want := 40 + h*sin/cos - 5/cos; math.Abs(inside.Radius(h)-want) > 1e-9 {
				t.Errorf("%g°, at %g: %.6f, by hand %.6f", degrees, h, inside.Radius(h), want)
			}
		}
		thins := blankOf(t, 1, at(0, 40, 8), at(high, 40+100*sin, 2))
		if inside, err = thins.Inside(); err != nil {
			t.Fatal(err)
		}
		z := high / 24 // 0.25 of 6 mm
		radius, height := thins.Inner().Opposite(z)
		if want := [2]float64{40 + z*sin/cos - 7.75*cos, z + 7.75*sin}; math.Abs(radius-want[0]) > 1e-9 || math.Abs(height-want[1]) > 1e-9 {
			t.Errorf("%g°: opposite %g is (%g, %g), by hand %v", degrees, z, radius, height, want)
		}
		level := 40 + height*sin/cos - thins.Wall(height)/cos
		if off := 2 * math.Pi * (level - inside.Radius(height)); math.Abs(off-girth) > 0.01 {
			t.Errorf("%g°: the girth is %.3f mm from that by the wall of the height, by hand %g", degrees, off, girth)
		}
	}
}

func TestNoInside(t *testing.T) {
	for name, test := range map[string]struct {
		floor    float64
		stations []Station
		want     error
	}{
		"no floor":  {0, []Station{{Radius: 30, Wall: 3}, {Height: 100, Radius: 30, Wall: 3}}, ErrNoFloor},
		"all floor": {100, []Station{{Radius: 30, Wall: 3}, {Height: 100, Radius: 30, Wall: 3}}, ErrAllFloor},
		// The outside flares so much that the wall, on the level, closes it.
		"no opening": {0.5, []Station{{Radius: 5, Wall: 4.9}, {Height: 10, Radius: 25, Wall: 4.9}}, ErrNoOpening},
	} {
		b, err := NewBlank("b", test.floor, test.stations)
		if err != nil {
			t.Fatal(name, err)
		}
		if _, err := b.Inside(); !errors.Is(err, test.want) {
			t.Errorf("%s: %v, want %v", name, err, test.want)
		}
	}
}
