package screen

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// Rolled is a wheel across a cut in level glass, in millimetres, seen along the cut from its
// root: the glass is at y = 0, and the wheel's middle touches the deepest place at x = 0.
type Rolled struct {
	Box    [4]Number    `json:"box"`    // the same however the wheel is rolled
	Cut    string       `json:"cut"`    // outlines that together are the groove
	Wheels [2]string    `json:"wheels"` // the edge rolled to the left, and to the right
	Ends   [2][2]Number `json:"ends"`   // the upper left corner of the one, the upper right of the other
	About  [2]Number    `json:"about"`  // where it is rolled about
}

// rolledSteps is in how many rolls from one side to the other a groove is drawn.
const rolledSteps = 8

// newRolled draws a wheel that goes so deep, rolled to the left and to the right.
func newRolled(w groove.Wheel, depth float64, rock [2]float64) Rolled {
	edge := edgeOf(w)
	left, right := rolledBy(edge, rock[0], depth), rolledBy(edge, -rock[1], depth)
	r := Rolled{Wheels: [2]string{closed(left), closed(right)}, About: [2]Number{0, Number(-depth)}}
	r.Ends = [2][2]Number{pair(left[0]), pair(right[len(right)-1])}
	cut := path(nil)
	steps := rolledSteps
	if rock == [2]float64{} {
		steps = 0
	}
	for i := range steps + 1 {
		roll := rock[0]
		if steps > 0 {
			roll -= (rock[0] + rock[1]) * float64(i) / float64(steps)
		}
		cut = cut.line(below(rolledBy(edge, roll, depth)), true)
	}
	r.Cut = string(cut)
	reach := 0.0
	for _, q := range edge {
		reach = max(reach, math.Hypot(q.X, q.Y))
	}
	const air = 0.06
	r.Box = [4]Number{Number(-reach * (1 + air)), Number(-depth - air*reach), Number(reach * (1 + air)), Number(reach*(1+air) - depth)}
	return r
}

// edgeOf returns the edge of a wheel and a little of its faces, from left to right, with the
// place where its middle is farthest from the axle at the origin and the axle above.
func edgeOf(w groove.Wheel) []geometry.Point {
	half, step := w.Thick/2, w.Thick/64
	if w.Edge == groove.Gang {
		step = w.Spacing / 16
	}
	if w.Edge == groove.Round {
		half = min(half, w.Convex*(1-1e-9))
	}
	at := []float64{0}
	for b := step; b < half; b += step {
		at = append(at, b)
	}
	at = append(at, half)
	var points []geometry.Point
	for i := len(at) - 1; i > 0; i-- {
		points = append(points, geometry.Point{X: -at[i], Y: w.Drop(at[i])})
	}
	for _, b := range at {
		points = append(points, geometry.Point{X: b, Y: w.Drop(b)})
	}
	t := thinner{within: w.Thick / 1000}
	edge := append([]geometry.Point{}, t.thin(points)...)
	face := edge[0].Y + w.Thick/4
	return append(append([]geometry.Point{{X: -half, Y: face}}, edge...), geometry.Point{X: half, Y: face})
}

// rolledBy returns an edge that goes so deep, rolled by an angle, to the left if it is above
// zero. It is rolled about the deepest place of its middle, as the groove's kernel has it.
func rolledBy(edge []geometry.Point, roll, depth float64) []geometry.Point {
	sin, cos := math.Sincos(roll)
	all := make([]geometry.Point, len(edge))
	for i, q := range edge {
		all[i] = geometry.Point{X: q.X*cos - q.Y*sin, Y: q.X*sin + q.Y*cos - depth}
	}
	return all
}

// below returns what of a closed outline lies below the glass.
func below(outline []geometry.Point) []geometry.Point {
	var all []geometry.Point
	for i, q := range outline {
		before := outline[(i+len(outline)-1)%len(outline)]
		if (before.Y < 0) != (q.Y < 0) {
			share := before.Y / (before.Y - q.Y)
			all = append(all, geometry.Point{X: before.X + share*(q.X-before.X)})
		}
		if q.Y < 0 {
			all = append(all, q)
		}
	}
	return all
}

func closed(points []geometry.Point) string { return string(path(nil).line(points, true)) }
