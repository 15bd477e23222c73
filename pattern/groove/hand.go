package groove

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// Hand is what the hand does with a cut beyond drawing the wheel evenly along it. The zero
// Hand is an even cut.
type Hand struct {
	// Swell is the depth along the cut, from the start of its line to the end, in shares from
	// 0 to 1 of the depth asked. They are evenly spread along the line's length: of three, the
	// second is in the middle. Between them the depth is smooth and never beyond its
	// neighbours' (a monotone piecewise cubic, by the method of Fritsch and Butland). It is
	// how deep the wheel is set where it stands, as far as the line's ends let it: a tail is
	// still as long as the wheel makes it. Empty: 1 all along.
	Swell []float64
	// Rock is how far the cut is rolled about its own deepest line, to the left and to the
	// right of its direction as seen from outside, in radians. A roll to the right makes the
	// right flank broader. The roll is in step with the swell: at a place whose share is s it
	// is Rock × s / the greatest share.
	Rock [2]float64
}

// What a hand may do. A wheel that is rolled farther than a twelfth of a turn, 30°, is not
// measured: in a tight waist its far side comes to bite where no section looks.
const (
	MinShares, MaxShares = 2, 12
	MaxRock              = math.Pi / 6
)

// MaxRolledMitres is how many mitres a gang may have to be rolled. Each then meets the glass
// beside its neighbours, and what that takes grows with their number squared.
const MaxRolledMitres = 12

// Even reports whether the hand does nothing: the cut is as deep all along as its ends let
// it be, and isn't rolled.
func (h Hand) Even() bool {
	return h.Rock == [2]float64{} && !slices.ContainsFunc(h.Swell, func(s float64) bool { return s != 1 })
}

// Valid returns what is wrong with a hand. Its shares are from 0 to 1, MinShares to MaxShares
// of them or none, and only the first and the last may be 0: on its way the wheel isn't
// lifted. Its rolls are from 0 to MaxRock.
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
	const rounding = 1e-9
	for i, side := range [2]string{"left", "right"} {
		if r := h.Rock[i]; !(r >= 0 && r <= MaxRock+rounding) {
			return fmt.Errorf("rock to the %s is %g radians; accepted: 0 to %g", side, r, MaxRock)
		}
	}
	return nil
}

// Mirrored returns the hand of the mirrored cut.
func (h Hand) Mirrored() Hand {
	h.Rock = [2]float64{h.Rock[1], h.Rock[0]}
	return h
}

// Greatest returns the greatest share of the depth asked: 1 for an even cut.
func (h Hand) Greatest() float64 {
	if len(h.Swell) == 0 {
		return 1
	}
	return slices.Max(h.Swell)
}

// ShareAt returns the share of the depth asked at a share of the line's length, 0 to 1. The
// hand has to be valid.
func (h Hand) ShareAt(along float64) float64 {
	g := newGesture(h)
	if g == nil {
		return 1
	}
	share, _ := g.at(along)
	return share * g.greatest
}

// gesture is a hand that does something, made ready for a stroke: its shares are of the
// greatest one.
type gesture struct {
	greatest float64                // of the shares given
	atEnd    bool                   // the greatest is at an end of the line, and nowhere between
	swell    *interp.FritschButland // nil where all are alike
	rock     [2]float64
}

// newGesture returns the gesture of a valid hand, nil for an even cut.
func newGesture(h Hand) *gesture {
	if h.Even() {
		return nil
	}
	g := &gesture{greatest: h.Greatest(), rock: h.Rock}
	if slices.ContainsFunc(h.Swell, func(s float64) bool { return s != h.Swell[0] }) {
		places, shares := make([]float64, len(h.Swell)), make([]float64, len(h.Swell))
		for i, s := range h.Swell {
			places[i], shares[i] = float64(i)/float64(len(h.Swell)-1), s/g.greatest
		}
		g.swell = new(interp.FritschButland)
		_ = g.swell.Fit(places, shares) // never an error: the places rise
		g.atEnd = slices.Max(append([]float64{0}, shares[1:len(shares)-1]...)) < 1
	}
	return g
}

// swells reports whether the depth changes along the cut.
func (g *gesture) swells() bool { return g != nil && g.swell != nil }

// rocks reports whether the cut is rolled.
func (g *gesture) rocks() bool { return g != nil && g.rock != [2]float64{} }

// at returns the share of the greatest depth at a share of the length, 0 to 1, and the roll
// there to the left and to the right.
func (g *gesture) at(along float64) (share float64, roll [2]float64) {
	share = 1
	if g.swell != nil {
		share = min(max(g.swell.Predict(min(max(along, 0), 1)), 0), 1) // it may be off by a rounding
	}
	return share, [2]float64{share * g.rock[0], share * g.rock[1]}
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

// Rolled reports whether the wheel is rolled along the line.
func (l Line) Rolled() bool { return l.hand.rocks() }
