package job

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/motifs"
)

// GestureOf returns what the hand does along the cuts of a part: what the job says of the
// part, else of the motif, else what the motif's kind does by hand. Its zero value is a cut
// as a machine makes it.
func (m *Motif) GestureOf(part string) motifs.Gesture {
	g, own := m.Kind.Gesture(m.Values, part), m.Part(part)
	switch {
	case own.Swell != nil:
		g.Swell = own.Swell
	case m.Swell != nil:
		g.Swell = m.Swell
	}
	switch {
	case own.Rock != nil:
		g.Rock = *own.Rock
	case m.Rock != nil:
		g.Rock = *m.Rock
	}
	return g
}

// swell reads the depths along a cut, from its root to its tip, as shares of its depth; nil
// where there are none.
func (s section) swell() []float64 {
	f := s.optional("swell")
	accepted := fmt.Sprintf("a list of 1 to %d shares of the depth from root to tip, each from 0 to 1, and 0 only at an end, such as [0.4, 1, 0.7]", maxShares)
	if f.absent(accepted) {
		return nil
	}
	n := len(f.value.items)
	switch {
	case f.value.isNumber():
		f.refuse(accepted, "write it in brackets")
		return nil
	case n == 0:
		f.refuse(accepted, "")
		return nil
	case n > maxShares:
		f.refuse(accepted, fmt.Sprintf("this list has %d", n))
		return nil
	}
	shares := make([]float64, n)
	touches := false
	for i := range shares {
		end := i == 0 || i == n-1
		share, ok := f.item(i).number(accepted, func(x float64) bool { return x >= 0 && x <= 1 && (end || x > 0) })
		if !ok {
			return nil
		}
		shares[i], touches = share, touches || share > 0
	}
	if !touches {
		f.refuse(accepted, "this one leaves no mark")
		return nil
	}
	return shares
}

// rock reads how far the glass is rolled to the left of a cut and to the right of it; nil
// where that isn't given.
func (s section) rock() *[2]geometry.Angle {
	accepted := fmt.Sprintf("a list of two, to the left and to the right of the cut, each from 0 to %g degrees, such as [0, 12]", MaxRock)
	f := s.optional("rock")
	if f.value != nil && f.value.isNumber() {
		if x, err := f.value.number(); err == nil && x > 0 && x <= MaxRock {
			f.refuse(accepted, fmt.Sprintf("say to which side: [0, %g] or [%g, 0]", x, x))
			return nil
		}
	}
	left, right, ok := f.pair(accepted)
	if !ok {
		return nil
	}
	holds := func(x float64) bool { return x >= 0 && x <= MaxRock }
	a, okLeft := left.number(accepted, holds)
	b, okRight := right.number(accepted, holds)
	if !okLeft || !okRight {
		return nil
	}
	return &[2]geometry.Angle{geometry.Degrees(a), geometry.Degrees(b)}
}
