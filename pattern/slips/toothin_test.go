package slips

import (
	"testing"

	"roundlay/pattern/glass"
)

// A wall that is thinner than any that is blown is asked about, though those next to it don't
// speak against it; not where it is told already, or where sisters have it too.
func TestThinnerThanBlown(t *testing.T) {
	blank := func(walls ...float64) *glass.Blank {
		var stations []glass.Station
		for i, w := range walls {
			stations = append(stations, glass.Station{Height: 40 * float64(i), Radius: 40, Wall: w})
		}
		b, err := glass.NewBlank("glass", 0, stations)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for _, c := range []struct {
		walls []float64
		least bool
		n     int
	}{
		{[]float64{6, 2, 0.4}, true, 1}, {[]float64{6, 2, 0.8}, false, 0}, {[]float64{6, 4, 0.4}, false, 1},
	} {
		got := Doubts([]*glass.Blank{blank(c.walls...)})
		if len(got) != c.n || c.n > 0 && (got[0].Station != 2 || (got[0].Least > 0) != c.least) {
			t.Errorf("%v: %+v", c.walls, got)
		}
	}
	thin := Doubts([]*glass.Blank{blank(1, 0.8, 0.5), blank(1, 0.8, 0.5), blank(1, 0.8, 0.5)})
	if len(thin) != 0 {
		t.Errorf("all of a set: %+v", thin)
	}
}
