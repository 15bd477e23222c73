package groove

import (
	"fmt"
	"math"
	"slices"
)

// Hand is what the hand does with a cut beyond drawing the wheel evenly along it. The zero
// Hand is an even cut.
type Hand struct {
	// Swell is the depth along the cut, from the start of its line to the end, in shares from
	// 0 to 1 of the depth asked. They are evenly spread along the line's length: of three, the
	// second is in the middle. Between them the depth is smooth and never beyond its
	// neighbours'. It is how deep the wheel is set where it stands, as far as the line's ends
	// let it: a tail is still as long as the wheel makes it. Empty: 1 all along.
	Swell []float64
	// Rock is how far the cut is rolled about its own deepest line, to the left and to the
	// right of its direction as seen from outside, in radians. A roll to the right makes the
	// right flank broader. The roll is in step with the swell: at a place whose share is s it
	// is Rock × s / the greatest share.
	Rock [2]float64
}

// What a hand may do. A wheel that is rolled farther than an eighth of a turn cuts with its
// face.
const (
	MinShares, MaxShares = 2, 12
	MaxRock              = math.Pi / 4
)

// Even reports whether the hand does nothing: the cut is as deep all along as its ends let
// it be, and isn't rolled.
func (h Hand) Even() bool {
	return h.Rock == [2]float64{} && !slices.ContainsFunc(h.Swell, func(s float64) bool { return s != 1 })
}

// Valid returns what is wrong with a hand. Its shares are from 0 to 1, MinShares to MaxShares
// of them or none, and only the first and the last may be 0: on its way the wheel isn't
// lifted. Its rolls are from 0 to less than MaxRock.
func (h Hand) Valid() error {
	if n := len(h.Swell); n > 0 && (n < MinShares || n > MaxShares) {
		return fmt.Errorf("swell has %d shares; accepted: %d to %d", n, MinShares, MaxShares)
	}
	for i, s := range h.Swell {
		if !(s >= 0 && s <= 1) {
			return fmt.Errorf("share %d of swell is %g; accepted: 0 to 1", i+1, s)
		}
		if s == 0 && i > 0 && i < len(h.Swell)-1 {
			return fmt.Errorf("share %d of swell is 0; accepted: above 0 between the first and the last", i+1)
		}
	}
	if len(h.Swell) > 0 && slices.Max(h.Swell) == 0 {
		return fmt.Errorf("all shares of swell are 0; accepted: one or more above 0")
	}
	for i, side := range [2]string{"left", "right"} {
		if r := h.Rock[i]; !(r >= 0 && r < MaxRock) {
			return fmt.Errorf("rock to the %s is %g radians; accepted: 0 to less than %g", side, r, MaxRock)
		}
	}
	return nil
}

// Mirrored returns the hand of the mirrored cut.
func (h Hand) Mirrored() Hand {
	h.Rock = [2]float64{h.Rock[1], h.Rock[0]}
	return h
}

// Reversed returns the hand of the same groove along the line from its end to its start.
func (h Hand) Reversed() Hand {
	h = h.Mirrored()
	h.Swell = slices.Clone(h.Swell)
	slices.Reverse(h.Swell)
	return h
}

// Greatest returns the greatest share of the depth asked: 1 for an even cut.
func (h Hand) Greatest() float64 {
	if len(h.Swell) == 0 {
		return 1
	}
	return slices.Max(h.Swell)
}

// gesture is a hand that does something, made ready for a stroke: its shares are of the
// greatest one.
type gesture struct {
	greatest       float64   // of the shares given
	shares, slopes []float64 // none where all are alike; slopes by the distance from one to the next
	rock           [2]float64
}

// newGesture returns the gesture of a valid hand, nil for an even cut.
func newGesture(h Hand) *gesture {
	if h.Even() {
		return nil
	}
	g := &gesture{greatest: h.Greatest(), rock: h.Rock}
	if slices.ContainsFunc(h.Swell, func(s float64) bool { return s != h.Swell[0] }) {
		for _, s := range h.Swell {
			g.shares = append(g.shares, s/g.greatest)
		}
		g.slopes = monotone(g.shares)
	}
	return g
}

// swells reports whether the depth changes along the cut.
func (g *gesture) swells() bool { return g != nil && g.shares != nil }

// rocks reports whether the cut is rolled.
func (g *gesture) rocks() bool { return g != nil && g.rock != [2]float64{} }

// at returns the share of the greatest depth at a share of the length, 0 to 1, and the roll
// there to the left and to the right.
func (g *gesture) at(along float64) (share float64, roll [2]float64) {
	share = 1
	if g.shares != nil {
		share = min(max(hermite(g.shares, g.slopes, along), 0), 1)
	}
	return share, [2]float64{share * g.rock[0], share * g.rock[1]}
}

// monotone returns the slopes at evenly spread values with which cubics between them never
// leave the range of their two ends: the harmonic mean of the slopes to both neighbours, 0 at
// a crest or a trough (Fritsch and Butland, "A method for constructing local monotone
// piecewise cubic interpolants", 1984; from memory).
func monotone(y []float64) []float64 {
	last := len(y) - 1
	slopes := make([]float64, len(y))
	for i := 1; i < last; i++ {
		if a, b := y[i]-y[i-1], y[i+1]-y[i]; a*b > 0 {
			slopes[i] = 2 * a * b / (a + b)
		}
	}
	// At an end, of the parabola through three values, as far as that keeps the order.
	end := func(at, next, beyond int) float64 {
		a := y[next] - y[at]
		if len(y) < 3 {
			return a
		}
		b := y[beyond] - y[next]
		slope := (3*a - b) / 2
		switch {
		case slope*a <= 0:
			return 0
		case a*b <= 0 && math.Abs(slope) > 3*math.Abs(a):
			return 3 * a
		}
		return slope
	}
	slopes[0], slopes[last] = end(0, min(1, last), min(2, last)), -end(last, last-1, max(last-2, 0))
	return slopes
}

// hermite returns the value at a share of the way along evenly spread values: the cubic with
// their slopes. Beyond the ends it stays as it is there.
func hermite(y, slopes []float64, along float64) float64 {
	x := min(max(along, 0), 1) * float64(len(y)-1)
	i := min(int(x), len(y)-2)
	t := x - float64(i)
	u := 1 - t
	return y[i]*(1+2*t)*u*u + y[i+1]*(1+2*u)*t*t + (slopes[i]*u-slopes[i+1]*t)*t*u
}

// ByHand returns the line as one that is cut by hand. The error says what is wrong with the
// hand.
func (l Line) ByHand(h Hand) (Line, error) {
	if err := h.Valid(); err != nil {
		return l, err
	}
	l.hand = newGesture(h)
	return l, nil
}
