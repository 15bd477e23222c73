package geometry

import (
	"math"
	"testing"
)

// The Engineering ToolBox, "Chord lengths when dividing a circle in equal
// segments": a circle of radius 1, to four places.
func TestChordToolBox(t *testing.T) {
	for parts, want := range map[int]float64{
		4: 1.4142, 6: 1.0000, 8: 0.7654, 10: 0.6180, 12: 0.5176, 16: 0.3902, 24: 0.2611, 32: 0.1960, 48: 0.1308,
	} {
		// Half a unit of the table's last place, and a little for a value that
		// lies right between two.
		if got := (Division{1, parts}).Chord(); math.Abs(got-want) > 0.5001e-4 {
			t.Errorf("%d parts: %.6f, the table has %.4f", parts, got, want)
		}
	}
}

// Machinery's Handbook, "Lengths of chords for spacing off the circumference of
// circles": a circle of diameter 1, to six places (from memory).
func TestChordHandbook(t *testing.T) {
	for parts, want := range map[int]float64{3: 0.866025, 5: 0.587785, 7: 0.433884, 9: 0.342020, 11: 0.281733} {
		if got := (Division{0.5, parts}).Chord(); math.Abs(got-want) > 0.5001e-6 {
			t.Errorf("%d parts: %.8f, the table has %.6f", parts, got, want)
		}
	}
}

// A glass a little over 3 1/8 in across, set out in three, has its dividers a
// shade under 2 3/4 in: common practice, no source.
func TestChordOfATumbler(t *testing.T) {
	const inch = MillimetresPerInch
	if c := (Division{3.15 * inch / 2, 3}).Chord() / inch; c >= 2.75 || c < 2.7 {
		t.Errorf("three parts of 3.15 in: %.4f in", c)
	}
}

// walk steps round a circle with a compass, point by point, and returns the
// arc left to the start: no formula of chords.
func walk(radius, setting float64, parts int) float64 {
	x, y, turned := radius, 0.0, 0.0
	for range parts {
		// The point at the compass's distance, found by halving the arc.
		lo, hi := 0.0, math.Pi
		for range 60 {
			mid := (lo + hi) / 2
			sin, cos := math.Sincos(turned + mid)
			if math.Hypot(radius*cos-x, radius*sin-y) < setting {
				lo = mid
			} else {
				hi = mid
			}
		}
		turned += lo
		sin, cos := math.Sincos(turned)
		x, y = radius*cos, radius*sin
	}
	return radius * (2*math.Pi - turned)
}

func TestClosingGapWalked(t *testing.T) {
	for _, c := range []struct {
		radius, setting float64
		parts           int
	}{{40, 68.0, 3}, {40, 70.5, 3}, {37.3, 28.2, 8}, {51, 6.6, 48}} {
		want, d := walk(c.radius, c.setting, c.parts), Division{c.radius, c.parts}
		if got := d.ClosingGap(c.setting); math.Abs(got-want) > 1e-9*c.radius*float64(c.parts) {
			t.Errorf("radius %g stepped %d times with %g leaves %.9f, walked %.9f", c.radius, c.parts, c.setting, got, want)
		}
		// The mended setting closes, when it is walked.
		if left := walk(c.radius, d.Mend(Round{c.setting, want}), c.parts); math.Abs(left) > 1e-8*float64(c.parts) {
			t.Errorf("radius %g, %d parts: mended, %.9f is left", c.radius, c.parts, left)
		}
	}
	if gap := (Division{10, 3}).ClosingGap(21); !math.IsNaN(gap) {
		t.Errorf("a setting longer than the circle is across leaves %v, not NaN", gap)
	}
}

// Which circle, and which setting, would leave a gap: walking round leaves it.
func TestWhatAGapMeans(t *testing.T) {
	for _, c := range []struct {
		radius, setting float64
		parts           int
		gap             float64
	}{{40, 40, 6, 1.2}, {40, 39.5, 6, -3}, {40, 69, 3, 10}, {40, 69, 3, -5}, {35, 9, 24, 0.5}, {40, 80, 2, 4}, {40, 40, 6, 0}} {
		radius := Round{c.setting, c.gap}.Radius(c.parts)
		// The walk ends the nearest way round; a turn is a turn.
		if gap := walk(radius, c.setting, c.parts); math.Abs(gap-c.gap) > 1e-6 {
			t.Errorf("%+v: on a circle of radius %g the gap is %g", c, radius, gap)
		}
		setting := Division{c.radius, c.parts}.SettingFor(c.gap)
		if gap := walk(c.radius, setting, c.parts); math.Abs(gap-c.gap) > 1e-6 {
			t.Errorf("%+v: with a setting of %g the gap is %g", c, setting, gap)
		}
	}
	if r, s := (Round{60, -1}).Radius(2), (Division{40, 2}).SettingFor(-1); !math.IsNaN(r) || !math.IsNaN(s) {
		t.Errorf("two steps pass the start: on %g, with %g", r, s)
	}
}
