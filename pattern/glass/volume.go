package glass

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// The volumes below are of bodies of revolution, ∫ π r² dz, in mm³. The inside is
// the outside less the wall, and ends in a level floor: where its corner is
// rounded it holds a little less, and the glass weighs a little more.

// Volume returns the volume of the glass itself. It takes the inside for full
// where the floor was not measured, so ask Hollow first.
func (b *Blank) Volume() float64 {
	outside := b.turned(b.profile.Radius, b.heights())
	return outside - b.Holds(b.Height())
}

// Hollow reports whether the floor was measured, without which neither what the
// blank holds nor what it weighs is known.
func (b *Blank) Hollow() bool { return b.Floor > 0 }

// Holds returns how much the blank holds when it is filled up to a height above
// the table.
func (b *Blank) Holds(to float64) float64 {
	to = min(to, b.Height())
	if !b.Hollow() || to <= b.Floor {
		return 0
	}
	bends := []float64{b.Floor}
	for _, z := range b.heights() {
		if b.Floor < z && z < to {
			bends = append(bends, z)
		}
	}
	return b.turned(b.insideRadius, append(bends, to))
}

// Weight returns what the blank weighs, in grams.
func (b *Blank) Weight() float64 { return b.Grams(b.Volume()) }

// Grams returns what a volume of the blank's glass weighs.
func (b *Blank) Grams(volume float64) float64 { return volume / 1000 * b.Material.Density }

// turned returns the volume inside a curve that is smooth between the heights.
// Twelve points of Gauss are exact for the quintics of a profile, and settle the
// inside to far below a drop.
func (b *Blank) turned(radius func(z float64) float64, heights []float64) float64 {
	volume := 0.0
	for i := 1; i < len(heights); i++ {
		if heights[i] > heights[i-1] {
			volume += quad.Fixed(func(z float64) float64 {
				r := radius(z)
				return math.Pi * r * r
			}, heights[i-1], heights[i], 12, nil, 0)
		}
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

// insideRadius returns the radius of the inside at a height: the wall is measured
// square to the glass, and on the level it is wider.
func (b *Blank) insideRadius(z float64) float64 {
	return max(0, b.profile.Radius(z)-b.Wall(z)*math.Hypot(1, b.profile.Slope(z)))
}
