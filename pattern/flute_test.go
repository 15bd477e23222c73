package pattern

import (
	"context"
	"fmt"
	"math"
	"testing"

	"roundlay/pattern/job"
)

// Flat panels all round a straight glass just meet when they are ground down to
// the regular polygon inscribed in it: to its inradius, R cos(π/N) (Wolfram
// MathWorld, "Regular Polygon"), so r(1 − cos(π/N)) deep. Then each panel takes
// its whole part of the girth, 2πr/N, and no more.
func TestFlutesJustMeet(t *testing.T) {
	const r = 40.0
	for _, c := range []struct{ repeats, panels int }{{12, 1}, {6, 3}, {4, 6}} {
		n := c.repeats * c.panels
		part := 2 * math.Pi * r / float64(n)
		polygon := r * (1 - math.Cos(math.Pi/float64(n)))
		for _, off := range []float64{0, -0.02, 0.02} {
			text := fmt.Sprintf(`length = "mm"
[blank]
station = [{height=0, across=80, wall=9}, {height=120, across=80, wall=9}]
[[wheel]]
name = "panel"
edge = "flat"
across = 150
thick = 40
[layout]
repeats = %d
[[motif]]
kind = "flute"
wheel = "panel"
depth = %.6f
land = 0
panels = %d
gap = 0
arch = 0
`, c.repeats, polygon+off, c.panels)
			j, err := job.Read("flutes", []byte(text))
			if err != nil {
				t.Fatal(err)
			}
			p, err := New(context.Background(), j, j.Blanks[0])
			if err != nil {
				t.Fatal(err)
			}
			for _, cut := range p.Cuts {
				width := cut.Middle().Left + cut.Middle().Right
				if off == 0 && math.Abs(width-part) > 0.02 {
					t.Errorf("%d panels %.4f mm deep are %.4f mm wide, of a part of %.4f", n, polygon, width, part)
				}
				if off < 0 && width >= part || off > 0 && width <= part {
					t.Errorf("%d panels %+.2f mm off the polygon are %.4f mm wide, of a part of %.4f", n, off, width, part)
				}
			}
		}
	}
}
