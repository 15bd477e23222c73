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
