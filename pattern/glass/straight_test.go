package glass

import (
	"errors"
	"math"
	"testing"
)

// Four readings 1/2 mm apart and one that is 0.4 mm out in radius. By hand, of
// five even stations: the middle one moves the line by a fifth of what it is out,
// and doesn't tilt it.
func TestStraightened(t *testing.T) {
	b, err := NewBlank("tumbler", 10, []Station{at(0, 30, 5), at(25, 30.5, 4), at(50, 31.4, 3), at(75, 31.5, 3), at(100, 32, 2)})
	if err != nil {
		t.Fatal(err)
	}
	b.Fill, b.Material = 80, Materials()[2]
	straight, err := b.Straightened()
	if err != nil {
		t.Fatal(err)
	}
	if b.Straight || b.Profile().Straight() || !straight.Straight || !straight.Profile().Straight() {
		t.Error("one of the two is not what it should be, straight or not")
	}
	for i, off := range []float64{-0.08, -0.08, 0.32, -0.08, -0.08} {
		s := straight.Stations[i]
		if got := straight.Off(s); math.Abs(got-off) > 1e-12 || b.Off(s) != 0 {
			t.Errorf("station %d is %g off its line, wanted %g; off the curve through it %g", i+1, got, off, b.Off(s))
		}
		if s != b.Stations[i] {
			t.Errorf("station %d reads %+v, and was %+v", i+1, s, b.Stations[i])
		}
	}
	if p := straight.Profile(); math.Abs(p.Radius(0)-30.08) > 1e-12 || math.Abs(p.Slope(70)-0.02) > 1e-15 || p.Curvature(50) != 0 {
		t.Errorf("a line from %g with a slope of %g and a curvature of %g", p.Radius(0), p.Slope(70), p.Curvature(50))
	}
	// Weighing it leaves it straight.
	thick, err := straight.CalibrateWalls(1.1 * straight.Weight())
	if err != nil {
		t.Fatal(err)
	}
	if !thick.Straight || !thick.Profile().Straight() || math.Abs(thick.Weight()-1.1*straight.Weight()) > 1e-6 || thick.Fill != 80 {
		t.Errorf("weighed, it is %+v", thick)
	}
}

func TestStraightenedRefuses(t *testing.T) {
	for name, test := range map[string]struct {
		stations []Station
		off      int // the station it names; -1 for none
	}{
		"barrel":  {[]Station{at(0, 30, 3), at(50, 33, 3), at(100, 30, 3)}, 1},
		"a slip":  {[]Station{at(0, 30, 3), at(30, 30, 3), at(60, 31.2, 3), at(90, 30, 3)}, 2},
		"a flare": {[]Station{at(0, 36, 3), at(10, 30, 3), at(60, 30, 3), at(90, 30, 3)}, 0},
		"no room": {[]Station{at(0, 30, 5), at(50, 30.7, 30.4), at(100, 30, 5)}, -1},
	} {
		b, err := NewBlank(name, 0, test.stations)
		if err != nil {
			t.Fatal(err)
		}
		_, err = b.Straightened()
		var off *OffError
		switch {
		case test.off < 0 && !errors.Is(err, ErrWall):
			t.Errorf("%s: %v", name, err)
		case test.off >= 0 && (!errors.As(err, &off) || off.Station != test.stations[test.off]):
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestOdd(t *testing.T) {
	const within = 0.15
	for name, test := range map[string]struct {
		heights, radii []float64
		odd            int // -1 for none
		radius         float64
	}{
		"the third":          {[]float64{0, 30, 60, 90}, []float64{40, 40, 40.4, 40}, 2, 40},
		"on a taper":         {[]float64{0, 20, 40, 60, 80}, []float64{30, 31, 32, 32.6, 34}, 3, 33},
		"the foot":           {[]float64{0, 20, 40, 60, 80}, []float64{30.4, 30, 30, 30, 30}, 0, 30},
		"others a bit rough": {[]float64{0, 20, 40, 60, 80}, []float64{30, 30.1, 31.4, 30.1, 30}, 2, 30.05},
		"a barrel":           {[]float64{0, 30, 60, 90, 120}, []float64{30, 31.5, 32, 31.5, 30}, -1, 0},
		"a slight barrel":    {[]float64{0, 30, 60, 90}, []float64{30, 30.2, 30.2, 30}, -1, 0},
		"a slight waist":     {[]float64{0, 20, 40, 60, 80}, []float64{30.4, 30.1, 30, 30.1, 30.4}, -1, 0},
		"three stations":     {[]float64{0, 60, 90}, []float64{30, 33, 30}, 1, 30},
		"two out":            {[]float64{0, 20, 40, 60, 80}, []float64{30, 30.5, 30, 30.5, 30}, -1, 0},
		"two stations":       {[]float64{0, 80}, []float64{30, 40}, -1, 0},
	} {
		stations := make([]Station, len(test.heights))
		for i := range stations {
			stations[i] = at(test.heights[i], test.radii[i], 3)
		}
		b, err := NewBlank(name, 0, stations)
		if err != nil {
			t.Fatal(err)
		}
		i, radius, ok := b.Odd(within)
		if ok != (test.odd >= 0) || ok && (i != test.odd || math.Abs(radius-test.radius) > 1e-9) {
			t.Errorf("%s: station %d, %v, on a line of %g there", name, i, ok, radius)
		}
	}
}
