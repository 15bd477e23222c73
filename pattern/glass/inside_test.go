package glass

import (
	"errors"
	"math"
	"testing"
)

// The tumbler's outside rises by 1 in 20 and its floor is 10 mm thick. The wall
// is measured square to the outside: on the level it is √(1 + 1/20²) as wide.
func TestInside(t *testing.T) {
	inside, err := tumbler(t).Inside()
	if err != nil {
		t.Fatal(err)
	}
	if inside.Bottom() != 10 || inside.Top() != 100 {
		t.Errorf("from %g to %g", inside.Bottom(), inside.Top())
	}
	level := math.Hypot(1, 0.05)
	for z, want := range map[float64]float64{
		10: 30.5 - 7*level, 20: 31 - 6*level, 40: 32 - 4*level, 70: 33.5 - 3*level, 100: 35 - 2*level,
		25.5: 31.275 - 5.45*level, 55.25: 32.7625 - 3.4916667*level,
	} {
		if got := inside.Radius(z); math.Abs(got-want) > 1e-3 {
			t.Errorf("at %g the radius is %.5f, want %.5f", z, got, want)
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
