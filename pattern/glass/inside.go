package glass

import (
	"errors"
	"math"

	"roundlay/geometry"
)

// Reasons why a blank has no inside to lay paper on.
var (
	ErrNoFloor   = errors.New("the thickness of the glass under the inside (floor) was not measured")
	ErrAllFloor  = errors.New("the glass under the inside (floor) is as thick as the blank is high")
	ErrNoOpening = errors.New("the wall leaves no opening inside")
)

// Inside returns the inside surface, from the inside floor up to the rim: the
// outside less the wall. The wall was measured square to the outside, so on the
// level it is wider, by 1/cos α.
func (b *Blank) Inside() (*geometry.Profile, error) {
	switch {
	case b.Floor <= 0:
		return nil, ErrNoFloor
	case b.Floor >= b.Height():
		return nil, ErrAllFloor
	}
	const spacing = 1 // mm, at most
	var heights, radii []float64
	add := func(z float64) {
		heights = append(heights, z)
		radii = append(radii, b.profile.Radius(z)-b.Wall(z)*math.Hypot(1, b.profile.Slope(z)))
	}
	from := b.Floor
	for _, s := range b.Stations {
		if s.Height <= from {
			continue
		}
		n := int(math.Ceil((s.Height - from) / spacing))
		for i := range n {
			add(from + (s.Height-from)*float64(i)/float64(n))
		}
		from = s.Height
	}
	add(from)
	profile, err := geometry.NewProfile(heights, radii)
	if err != nil {
		return nil, ErrNoOpening
	}
	return profile, nil
}
