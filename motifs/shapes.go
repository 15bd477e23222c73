package motifs

import (
	"math"

	"roundlay/geometry"
)

// share returns the middle of the i-th of n equal parts of 0 to 1. Cuts spread
// like this stand evenly, within a box and from one box to the next beside it.
func share(i, n int) float64 { return (float64(i) + 0.5) / float64(n) }

// abreast returns how far from the middle the i-th of n cuts side by side
// stands, a gap apart.
func abreast(i, n int, gap float64) float64 { return (float64(i) - float64(n-1)/2) * gap }

// level returns the level line at a height, half its length either side of the middle.
func level(y, half float64) geometry.Bezier {
	return geometry.Line(geometry.Point{X: -half, Y: y}, geometry.Point{X: half, Y: y})
}

// upright returns the upright line between two heights.
func upright(x, foot, top float64) geometry.Bezier {
	return geometry.Line(geometry.Point{X: x, Y: foot}, geometry.Point{X: x, Y: top})
}

// arc returns the arc of a circle between two points, in heights of the box. It
// turns through an angle on its way, positive to the right.
func arc(from, to geometry.Point, turn float64) geometry.Bezier { return geometry.Arc(from, to, turn) }

// heading returns the unit direction at an angle from straight up, to the right.
func heading(angle float64) geometry.Point {
	sin, cos := math.Sincos(angle)
	return geometry.Point{X: sin, Y: cos}
}

// boxed takes a curve in heights of the box into the box, whose width is one.
func boxed(c geometry.Bezier, aspect float64) geometry.Bezier {
	for i := range c {
		c[i].X /= aspect
	}
	return c
}

// mirrored returns a curve as it is seen from the other side of the middle.
func mirrored(c geometry.Bezier) geometry.Bezier {
	for i := range c {
		c[i].X = -c[i].X
	}
	return c
}
