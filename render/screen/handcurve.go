package screen

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// curveSteps is in how many steps a swell is drawn; thin leaves out what isn't needed.
const curveSteps = 120

// swellAt returns a point of the curve of a swell, as Swell has it.
func swellAt(by groove.Hand, along float64) geometry.Point {
	return geometry.Point{X: 100 * along, Y: -100 * by.ShareAt(along)}
}

func swellCurve(by groove.Hand) []geometry.Point {
	points := make([]geometry.Point, curveSteps+1)
	for i := range points {
		points[i] = swellAt(by, float64(i)/curveSteps)
	}
	t := thinner{within: 0.1}
	return t.thin(points)
}

// shares reads so many shares off a swell, as a person would write them. On the way the
// wheel isn't lifted, so only the first and the last may be none.
func shares(by groove.Hand, n int) []Number {
	all := make([]Number, n)
	for i := range all {
		share := math.Round(100*by.ShareAt(float64(i)/float64(n-1))) / 100
		if i > 0 && i < n-1 {
			share = max(share, 0.01)
		}
		all[i] = Number(share)
	}
	return all
}
