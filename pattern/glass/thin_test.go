package glass

import (
	"math"
	"testing"
)

// What is left under a cut is taken square into the glass. Rolled out, a steep
// taper, out by 1 for every 2 up, is a line of 60 √1.25 mm, and a wall that goes
// from 10 to 4 mm along it leans by 6/(60 √1.25): a cut d deep, where the wall is w,
// is (w - d)/√(1 + lean²) from the inside. Its walls lean the same way about, so
// that it is no different upside down.
func TestLeftUnderATaper(t *testing.T) {
	lean := 6 / (60 * math.Sqrt(1.25))
	up := blankOf(t, 0, at(0, 60, 10), at(60, 90, 4))
	down := blankOf(t, 0, at(0, 90, 4), at(60, 60, 10))
	for _, c := range []struct{ z, wall, depth float64 }{{20, 8, 2}, {20, 8, 5}, {40, 6, 0}, {40, 6, 3}} {
		want := (c.wall - c.depth) / math.Sqrt(1+lean*lean)
		for name, got := range map[string]float64{"up": up.CutTo(c.depth).Left(c.z), "down": down.CutTo(c.depth).Left(60 - c.z)} {
			if !within(got, want, 2e-3) {
				t.Errorf("%g mm deep, the wall %g mm, the wide end %s: %.4f mm left, by hand %.4f", c.depth, c.wall, name, got, want)
			}
		}
	}
}
