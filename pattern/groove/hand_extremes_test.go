package groove_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"roundlay/pattern/groove"
)

// extremeHands are hands at the ends of what is taken.
func extremeHands() []groove.Hand {
	const most = groove.MaxRock
	saw := make([]float64, groove.MaxShares)
	for i := range saw {
		saw[i] = 1 - float64(i%2)*0.999
	}
	return []groove.Hand{
		{Swell: []float64{0, 1}},
		{Swell: []float64{1e-9, 1, 0}, Rock: [2]float64{0, most}},
		{Swell: saw, Rock: [2]float64{most, most}},
		{Rock: [2]float64{most, 1e-9}},
	}
}

// Hands, wheels, glasses, depths and lengths at their extremes at once: every groove is cut,
// with finite places, no more of them than its bound, and in time.
func TestHandExtremes(t *testing.T) {
	t.Parallel()
	glasses := []extremeGlass{{0, 2}, {0, 40}, {-60 * math.Pi / 180, 40}, {0, 500}}
	wheels := widestWheels()
	hands := extremeHands()
	n := 0
	for i, w := range wheels {
		// Each wheel meets each hand on one glass, and the glasses and sizes come in turn.
		for j, h := range hands {
			if n++; testing.Short() && n%5 != 0 {
				continue
			}
			g := glasses[(i+j)%len(glasses)]
			depth := []float64{0.01, 0.5, 5}[(i+2*j)%3]
			length := []float64{0.01, 30, 3, 100}[(i/2+j)%4]
			angle := []float64{0, 0.8, math.Pi / 2}[(i+j)%3]
			bend := []float64{0, 0, 0.4}[(i+j)%3]
			if depth >= min(w.Radius, g.radius) || w.Mitres > groove.MaxRolledMitres && h.Rock != [2]float64{} {
				continue // refused where it is asked for
			}
			checkHandExtreme(t, g, w, h, depth, length, angle, bend)
		}
	}
}

// checkHandExtreme cuts a mark by hand and looks at what comes of it.
func checkHandExtreme(t *testing.T, g extremeGlass, w groove.Wheel, h groove.Hand, depth, length, angle, bend float64) {
	t.Helper()
	where := fmt.Sprintf("glass %+v, wheel %+v, %v, depth %g, length %g, angle %g, bend %g", g, w, h, depth, length, angle, bend)
	line, err := extremeLine(length, angle, bend).ByHand(h)
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan string, 1)
	began := time.Now()
	go func() {
		defer func() {
			if r := recover(); r != nil {
				done <- fmt.Sprint("panics: ", r)
			}
		}()
		made := groove.Cut(g.surface(), line, w, depth, 0.1)
		if made.Depth < 0 || made.Volume < 0 || math.IsNaN(made.Volume) || math.IsInf(made.Volume, 0) {
			done <- fmt.Sprintf("%g deep, %g mm³", made.Depth, made.Volume)
			return
		}
		if made.Plunge > depth {
			done <- fmt.Sprintf("set down %g deep, asked for %g", made.Plunge, depth)
			return
		}
		made.Depth = made.Plunge // a rolled edge may well be deeper than asked beside its line
		done <- wrongWith(made, length, w)
	}()
	select {
	case wrong := <-done:
		if wrong != "" {
			t.Errorf("%s: %s", where, wrong)
		}
		if took := time.Since(began); took > time.Second {
			t.Logf("%s: took %v", where, took)
		}
	case <-time.After(20 * time.Second):
		t.Errorf("%s: does not end", where)
	}
}
