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
			{Height: 0, Radius: 40, Wall: 4}, {Height: 100, Radius: 40, Wall: 4, Min: least, Max: most},
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

// What a blank differs in counts wherever it does: a rim, a foot or a wall that the
// middle of the band knows nothing of.
func TestStandingsAllTheWayUp(t *testing.T) {
	j := three(t, bar(t, 0, 20, 30))
	of := func(name string, foot, middle, rim, wall float64) *glass.Blank {
		b, err := glass.NewBlank(name, 12, []glass.Station{
			{Height: 0, Radius: foot, Wall: 4}, {Height: 50, Radius: middle, Wall: 4}, {Height: 100, Radius: rim, Wall: wall},
		})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	j.Blanks = []*glass.Blank{
		of("one", 40, 40, 40, 4), of("two", 40, 40, 40, 4), of("three", 40, 40, 40, 4),
		of("wide rim", 40, 40, 42, 4), of("narrow foot", 39, 40, 40, 4), of("thick rim", 40, 40, 40, 5.5),
		of("wide", 40.5, 40.5, 40.5, 4),
	}
	want := []struct {
		name                     string
		width, at, wall, wallsAt float64
	}{
		{"thick rim", 0, 0, 1.5, 100}, {"wide rim", 4, 100, 0, 0}, {"narrow foot", -2, 0, 0, 0}, {"wide", 1, -1, 0, 0},
	}
	all := setOf(t, j).Standings()
	for i, w := range want {
		d := all[i]
		if d.Member.Blank.Name != w.name || !near(d.Width, w.width, 1e-9) || !near(d.Wall, w.wall, 1e-9) ||
			w.width != 0 && !near(d.WidthAt, w.at, 1e-9) || w.wall != 0 && !near(d.WallAt, w.wallsAt, 1e-9) {
			t.Errorf("%d: %s, %g wider at %g, %g thicker at %g; wanted %+v", i+1, d.Member.Blank.Name, d.Width, d.WidthAt, d.Wall, d.WallAt, w)
		}
	}
}
