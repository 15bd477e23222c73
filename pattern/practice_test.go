package pattern

import (
	"math"
	"testing"

	"roundlay/pattern/glass"
)

// TestStandings works a set of five by hand. Its middle is 100 mm high, 80 mm
// across, and 4 mm thick at its thinnest in the band; none is out of round there.
func TestStandings(t *testing.T) {
	j := three(t, bar(t, 0, 20, 30))
	oval := func(name string, least, most float64) *glass.Blank {
		b, err := glass.NewBlank(name, 12, []glass.Station{
			{Height: 0, Radius: 40, Wall: 4}, {Height: 100, Radius: 40, Wall: 4, Least: least, Most: most},
		})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	j.Blanks = []*glass.Blank{
		named(t, "middling", 100, 40, 4, 4),
		named(t, "tall", 101, 40, 4, 4),           // a millimetre: 1
		named(t, "wide and thick", 100, 41, 5, 5), // two of diameter and one of wall: √(2² + 4²)
		oval("oval", 79.5, 80.5),                  // a millimetre out of round: 2
		named(t, "short and thin", 99, 40, 3, 3),  // one and one: √(1² + 4²)
	}
	s := setOf(t, j)
	want := []struct {
		name  string
		apart float64
	}{
		{"wide and thick", math.Sqrt(20)}, {"short and thin", math.Sqrt(17)}, {"oval", 2}, {"tall", 1}, {"middling", 0},
	}
	for i, d := range s.Standings() {
		if d.Member.Blank.Name != want[i].name || !near(d.Apart, want[i].apart, 1e-9) {
			t.Errorf("%d: %s, %g apart; wanted %+v", i+1, d.Member.Blank.Name, d.Apart, want[i])
		}
	}
	d := s.Standings()[1]
	if !near(d.Height, -1, 1e-9) || !near(d.Wall, -1, 1e-9) || d.Width != 0 || d.OutOfRound != 0 {
		t.Errorf("short and thin: %+v", d)
	}
	if height, width, wall, round := d.Shows(); !height || width || !wall || round {
		t.Errorf("shows %v %v %v %v", height, width, wall, round)
	}
}

// Of two, each stands as far from their middle as the other: the thinner is the
// smaller loss.
func TestStandingsOfTwo(t *testing.T) {
	j := three(t, bar(t, 0, 20, 30))
	j.Blanks = []*glass.Blank{named(t, "thick", 100, 40, 4, 4), named(t, "thin", 100, 40, 3.6, 3.6)}
	if d := setOf(t, j).Standings()[0]; d.Member.Blank.Name != "thin" {
		t.Errorf("%s first", d.Member.Blank.Name)
	}
}
