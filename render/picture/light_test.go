package picture

import (
	"math"
	"testing"

	"roundlay/geometry"
)

// The light comes from above and a little from the left. Of a mitre's flanks the
// one that faces it is light and the other dark, whichever way the cut runs,
// unless it runs along the light itself.
func TestFlanks(t *testing.T) {
	for _, lamp := range []lamp{nearLamp(), farLamp()} {
		along := math.Atan2(lamp.from.Y, lamp.from.X)
		for degrees := 0.0; degrees < 180; degrees += 7.5 {
			sin, cos := math.Sincos(degrees * degree)
			// The cut runs along (cos, sin): its walls fall to either side of that.
			left, right := lamp.on(geometry.Point{X: sin, Y: -cos}), lamp.on(geometry.Point{X: -sin, Y: cos})
			facing := sin*lamp.from.X - cos*lamp.from.Y
			if math.Abs(math.Remainder(degrees*degree-along, math.Pi)) < 4*degree {
				continue
			}
			light, dark := left, right
			if facing < 0 {
				light, dark = right, left
			}
			if !(light > lamp.level && dark < lamp.level) || float64(light-dark) < 0.2*float64(lamp.full-lamp.dark) {
				t.Errorf("a cut at %g°: flanks %.2f and %.2f", degrees, light, dark)
			}
		}
		if lamp.on(geometry.Point{}) != lamp.level {
			t.Error("a level wall is not level in tone")
		}
	}
	// Lower flanks face up, right flanks face left.
	near, far := nearLamp(), farLamp()
	if near.on(geometry.Point{Y: 1}) < near.on(geometry.Point{Y: -1}) || near.on(geometry.Point{X: -1}) < near.on(geometry.Point{X: 1}) {
		t.Error("the light on the near side is not from the upper left")
	}
	// On the far side right and left have changed places.
	if far.on(geometry.Point{X: 1}) < far.on(geometry.Point{X: -1}) {
		t.Error("the light on the far side is not from the picture's left")
	}
}

// A steeper wall is lighter or darker, never the other way.
func TestSteeperIsStronger(t *testing.T) {
	for _, up := range []float64{1, -1} {
		before := nearLamp().level
		for steep := 0.05; steep < 3; steep *= 1.3 {
			now := nearLamp().on(geometry.Point{Y: up * steep})
			if float64(now-before)*up < 0 {
				t.Errorf("a wall that falls by %.2f: tone %.3f after %.3f", steep*up, now, before)
			}
			before = now
		}
	}
}

// Each tone is lighter than the one before to a printer without colours, and all
// tones are opaque colours of one hue: never redder than blue.
func TestTonesKeepTheirOrderInGrey(t *testing.T) {
	last := -1
	for i := range 101 {
		ink := tone(float64(i) / 100).ink()
		red, _, blue := ink.RGB()
		if int(ink.Grey()) <= last && i > 0 {
			t.Errorf("tone %d %% is grey %d after %d", i, ink.Grey(), last)
		}
		if red > blue {
			t.Errorf("tone %d %% is (%d red, %d blue)", i, red, blue)
		}
		last = int(ink.Grey())
	}
	if tone(1).ink().Grey() != 255 || tone(2).ink() != tone(1).ink() || tone(-1).ink() != tone(0).ink() {
		t.Error("the scale does not end where it ends")
	}
	// What is wrong stands out from the glass, in grey too.
	if grey := warning().Grey(); grey > 110 || backdrop(1).Grey() < 210 {
		t.Errorf("the warning prints as grey %d, the backdrop as %d", grey, backdrop(1).Grey())
	}
}

func TestGrade(t *testing.T) {
	knots := []knot{{0, 0.2}, {0.5, 0.8}, {1, 0.4}}
	for at, want := range map[float64]tone{-1: -1, 0: 0.2, 0.25: 0.5, 0.5: 0.8, 0.75: 0.6, 1: 0.4, 2: 0.4} {
		if got := grade(at, knots...); at >= 0 && !near(float64(got), float64(want), 1e-12) {
			t.Errorf("at %g: %g, want %g", at, got, want)
		}
	}
}

// A flat panel shines as a whole: to the left of the picture it is light, in the
// middle level, to the right dark. On the far side the same is to its own right
// and left.
func TestPanelsShine(t *testing.T) {
	flat := panel{is: true}
	for _, c := range []struct {
		lamp lamp
		left float64 // the angle, from the middle of its side, that is to the left on the picture
	}{{nearLamp(), -60 * degree}, {farLamp(), 60 * degree}} {
		light, level, dark := c.lamp.shine(flat, c.left), c.lamp.shine(flat, 0), c.lamp.shine(flat, -c.left)
		if !(light > 0 && level == 0 && dark < 0) || c.lamp.level+light > c.lamp.full {
			t.Errorf("to the left %+.3f, in the middle %+.3f, to the right %+.3f", light, level, dark)
		}
		if got := c.lamp.shine(panel{}, c.left); got != 0 {
			t.Errorf("what is no panel shines by %+.3f", got)
		}
	}
}

// On a base the walls of a ray along the light turn through it in small steps of tone: of a
// degree none is as large as half of that on the side. Facing the light and away from it they
// are as light and as dark there as anywhere.
func TestBaseLampIsSoft(t *testing.T) {
	largest := func(l lamp) float64 {
		across := math.Atan2(l.from.Y, l.from.X) + math.Pi/2
		wall := func(degrees float64) tone {
			sin, cos := math.Sincos(across + degrees*degree)
			return l.on(geometry.Point{X: cos, Y: sin})
		}
		most := 0.0
		for degrees := -20.0; degrees < 20; degrees++ {
			step := float64(wall(degrees) - wall(degrees+1))
			if step <= 0 {
				t.Errorf("%g°: a wall that turns to the light grows darker by %g", degrees, step)
			}
			most = max(most, step)
		}
		return most
	}
	base, side := largest(baseLamp()), largest(nearLamp())
	if base > side/2 {
		t.Errorf("a degree changes the tone by %.3f on a base, by %.3f on the side", base, side)
	}
	for _, way := range []float64{1, -1} {
		wall := geometry.Point{X: way * baseLamp().from.X, Y: way * baseLamp().from.Y}
		if got, want := baseLamp().on(wall), nearLamp().on(wall); math.Abs(float64(got-want)) > 1e-3 {
			t.Errorf("facing %g: %v on a base, %v on the side", way, got, want)
		}
	}
}
