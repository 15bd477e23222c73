package glass

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// The volumes below are of bodies of revolution, ∫ π r² dz, in mm³. The inside
// ends in a level floor: where its corner is rounded it holds a little less, and
// the glass weighs a little more.

// Volume returns the volume of the glass itself. If the floor was not measured it
// counts the inside as glass, so ask FloorKnown first.
func (b *Blank) Volume() float64 {
	return b.outside() - b.Capacity(b.Height()) - b.Hollow.volume()
}

// FloorKnown reports whether the floor was measured. If not, what the blank holds and
// weighs is not known.
func (b *Blank) FloorKnown() bool { return b.Floor > 0 }

// Capacity returns how much the blank holds when it is filled up to a height above the
// table. It is 0 if the floor was not measured.
func (b *Blank) Capacity(to float64) float64 {
	if !b.FloorKnown() {
		return 0
	}
	return b.inner.capacity(to)
}

// capacity returns the volume of the hollow from the floor up to a height.
func (n *Inner) capacity(to float64) float64 {
	volume := 0.0
	for _, s := range n.spans {
		if s, ok := s.clipped(n.bottom, min(to, n.rim)); ok {
			volume += turned(s.ends[0], s.ends[1]) + s.bulge
		}
	}
	return max(volume, 0)
}

// Weight returns what the blank weighs, in grams.
func (b *Blank) Weight() float64 { return b.Grams(b.Volume()) }

// Grams returns what a volume of the blank's glass weighs.
func (b *Blank) Grams(volume float64) float64 { return volume / 1000 * b.Material.Density }

// outside returns the volume of the blank as if it were solid. Gauss's rule with
// twelve points between stations gives it to far less than a drop.
func (b *Blank) outside() float64 {
	volume, heights := 0.0, b.heights()
	for i := 1; i < len(heights); i++ {
		volume += quad.Fixed(func(z float64) float64 {
			r := b.profile.Radius(z)
			return math.Pi * r * r
		}, heights[i-1], heights[i], 12, nil, 0)
	}
	return volume
}

func (b *Blank) heights() []float64 {
	heights := make([]float64, len(b.Stations))
	for i, s := range b.Stations {
		heights[i] = s.Height
	}
	return heights
}
