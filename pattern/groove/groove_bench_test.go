package groove_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// BenchmarkCut times one groove on a taper: a short touch askew, and a long
// stem drawn up the glass.
func BenchmarkCut(b *testing.B) {
	cone := geometry.NewCone(geometry.Degrees(4), geometry.Circle{Radius: 40}, 0)
	wheel := groove.Wheel{Edge: groove.Mitre, Radius: 75, Thick: 6, Angle: math.Pi / 2}
	for _, c := range []struct {
		name string
		to   geometry.Point
	}{{"touch 12 mm", geometry.Point{X: 8.5, Y: 38.5}}, {"drawn 60 mm", geometry.Point{Y: 90}}} {
		line := groove.NewLine([]geometry.Point{{Y: 30}, c.to})
		b.Run(c.name, func(b *testing.B) {
			for range b.N {
				groove.Cut(outside(cone), line, wheel, 0.8, 0)
			}
		})
	}
}

// BenchmarkCutByHand times what BenchmarkCut does for grooves that swell, that are rolled, and
// that are both, on the same taper and on a barrel.
func BenchmarkCutByHand(b *testing.B) {
	taper := geometry.NewCone(geometry.Degrees(4), geometry.Circle{Radius: 40}, 0)
	barrel := &turning{vessel: ringVessel(-20, 45, 60, 1, 44), length: 30, height: 45, wheel: groove.Wheel{Edge: groove.Mitre, Radius: 75, Thick: 6, Angle: math.Pi / 2}}
	barrel.prepare(10, 80)
	wheel := groove.Wheel{Edge: groove.Mitre, Radius: 75, Thick: 6, Angle: math.Pi / 2}
	for _, hand := range []struct {
		name string
		groove.Hand
	}{
		{"even", groove.Hand{}},
		{"swell", groove.Hand{Swell: []float64{0.3, 1, 0.6}}},
		{"rock", groove.Hand{Rock: [2]float64{0, 0.2}}},
		{"both", groove.Hand{Swell: []float64{0.3, 1, 0.6}, Rock: [2]float64{0, 0.2}}},
	} {
		for _, glass := range []struct {
			name string
			on   *groove.Cutter
		}{{"taper", groove.NewCutter(outside(taper), nil)}, {"barrel", barrel.cutter()}} {
			line, _ := groove.NewLine([]geometry.Point{{Y: 30}, {X: 20, Y: 60}}).ByHand(hand.Hand)
			b.Run(hand.name+" on a "+glass.name, func(b *testing.B) {
				for range b.N {
					glass.on.Cut(line, wheel, 0.8, 0)
				}
			})
		}
	}
}
