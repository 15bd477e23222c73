package glass

import (
	"errors"
	"math"
	"slices"

	"roundlay/geometry"
)

// Reasons why a blank has no inside to lay paper on.
var (
	ErrNoFloor   = errors.New("the thickness of the glass under the inside (floor) was not measured")
	ErrAllFloor  = errors.New("the glass under the inside (floor) is as thick as the blank is high")
	ErrNoOpening = errors.New("the wall leaves no opening inside")
)

// Inside returns the inside surface from the floor up to the rim as a profile, for
// paper to be laid on. Where the surface turns back on itself, the profile follows
// the part nearest the axis.
func (b *Blank) Inside() (*geometry.Profile, error) {
	switch {
	case b.Floor <= 0:
		return nil, ErrNoFloor
	case b.Floor >= b.Height():
		return nil, ErrAllFloor
	}
	levels := b.inner.levels()
	circles := make([]geometry.Circle, len(levels))
	for i, height := range levels {
		z, times := b.inner.facing(height)
		if times == 0 {
			return nil, ErrNoOpening
		}
		radius, _ := b.inner.Opposite(z)
		circles[i] = geometry.Circle{Radius: radius, Height: height}
	}
	profile, err := geometry.NewProfile(circles)
	if err != nil {
		return nil, ErrNoOpening
	}
	return profile, nil
}

// levels returns heights from the floor to the rim, close enough for a profile.
// Those opposite the stations are among them.
func (n *Inner) levels() []float64 {
	const spacing = 1.0 // mm, at most
	var corners []float64
	for _, z := range n.kinks {
		if _, height := n.Opposite(z); n.floor < height && height < n.rim {
			corners = append(corners, height)
		}
	}
	slices.Sort(corners)
	heights := []float64{n.floor}
	for _, corner := range append(corners, n.rim) {
		from := heights[len(heights)-1]
		const tooNear = 0.01 // mm: the two count as one
		if corner-from < tooNear {
			continue
		}
		steps := int(math.Ceil((corner - from) / spacing))
		for i := range steps {
			heights = append(heights, from+(corner-from)*float64(i+1)/float64(steps))
		}
	}
	heights[len(heights)-1] = n.rim
	return heights
}
