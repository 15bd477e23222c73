package geometry

import (
	"math"
	"testing"
)

// The circumferences are those of the programming puzzle "Circumference of an
// Ellipse" (Code Golf, Stack Exchange), to its ten figures: the Gauss-Kummer
// series summed to a thousand terms.
func TestGirth(t *testing.T) {
	for _, c := range []struct{ wide, narrow, want float64 }{
		{1, 1, 6.283185307}, {1.2, 1, 6.925791195}, {1.5, 1, 7.932719795},
		{2, 1, 9.688448220}, {3, 1, 13.36489322}, {20, 10, 96.88448220},
	} {
		if got := (Oval{c.wide, c.narrow}).measured().girth; math.Abs(got/c.want-1) > 1e-9 {
			t.Errorf("%g by %g: girth %.10g, wanted %.10g", c.wide, c.narrow, got, c.want)
		}
	}
}

// A circle is the oval on which nothing is off.
func TestStepCircle(t *testing.T) {
	for _, parts := range []int{3, 5, 12, 96} {
		chord := Division{40, parts}.Chord()
		s := Oval{40, 40}.Step(chord, parts)
		for _, off := range []float64{s.Shortest - chord, s.Longest - chord, s.Off, s.Gap} {
			if math.Abs(off) > 1e-9 {
				t.Errorf("%d parts: %+v, where every chord is %g", parts, s, chord)
				break
			}
		}
	}
	// A setting that is a little short closes with the gap it leaves on any circle.
	const setting, parts = 39.9, 6
	if s := (Oval{40, 40}).Step(setting, parts); math.Abs(s.Gap-(Division{40, parts}).ClosingGap(setting)) > 1e-9 {
		t.Errorf("a gap of %g, wanted %g", s.Gap, Division{40, parts}.ClosingGap(setting))
	}
}

// TestStepOval compares with marks set out on a polyline of very many sides, by
// walking it: no arc length, no Newton.
func TestStepOval(t *testing.T) {
	const sides = 320_000
	for _, c := range []struct {
		oval  Oval
		parts int
	}{
		{Oval{40.5, 39.5}, 3}, {Oval{40.5, 39.5}, 5}, {Oval{40.2, 39.9}, 8}, {Oval{42, 39}, 24},
	} {
		setting := Division{(c.oval.Wide + c.oval.Narrow) / 2, c.parts}.Chord()
		got := c.oval.Step(setting, c.parts)
		least, most, off, gap := math.Inf(1), 0.0, 0.0, 0.0
		at := func(i int) (x, y float64) {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
			return c.oval.Wide * cos, c.oval.Narrow * sin
		}
		arcs := make([]float64, 2*sides+1)
		for i := range 2 * sides {
			x, y := at(i)
			u, v := at(i + 1)
			arcs[i+1] = arcs[i] + math.Hypot(u-x, v-y)
		}
		girth := arcs[sides]
		for start := 0; start <= sides/4; start += sides / 4 / 16 {
			equal, stepped := start, start
			for k := 1; k <= c.parts; k++ {
				x, y := at(equal)
				for equal < 2*sides && arcs[equal] < arcs[start]+girth*float64(k)/float64(c.parts) {
					equal++
				}
				u, v := at(equal)
				chord := math.Hypot(u-x, v-y)
				least, most = min(least, chord), max(most, chord)
				x, y = at(stepped)
				for {
					if u, v := at(stepped); math.Hypot(u-x, v-y) >= setting {
						break
					}
					stepped++
				}
				away := arcs[stepped] - arcs[equal]
				if k < c.parts {
					off = max(off, math.Abs(away))
				} else if math.Abs(away) > math.Abs(gap) {
					gap = -away
				}
			}
		}
		// A side of the polyline is 0.0008 mm, and each step is rounded up to one.
		within := 0.0009 * float64(c.parts+1)
		for _, d := range []float64{got.Shortest - least, got.Longest - most, got.Off - off, got.Gap - gap} {
			if math.Abs(d) > within {
				t.Errorf("%+v in %d: %+v, walked %g to %g, off %g, gap %g", c.oval, c.parts, got, least, most, off, gap)
				break
			}
		}
		if got.Off == 0 || got.Longest <= got.Shortest {
			t.Errorf("%+v in %d: nothing is off", c.oval, c.parts)
		}
	}
}

func TestStepFewParts(t *testing.T) {
	s := Oval{41, 39}.Step(80, 2)
	if math.Abs(s.Shortest-78) > 1e-9 || math.Abs(s.Longest-82) > 1e-9 || !math.IsNaN(s.Off) || !math.IsNaN(s.Gap) {
		t.Errorf("in two: %+v", s)
	}
}
