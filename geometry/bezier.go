package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Bezier is a cubic curve by its four control points: it starts at the first,
// ends at the last, and leaves and arrives along the lines to the other two.
type Bezier [4]Point

// Line returns the straight curve between two points.
func Line(a, b Point) Bezier {
	third := r2.Scale(1.0/3, r2.Sub(b, a))
	return Bezier{a, r2.Add(a, third), r2.Sub(b, third), b}
}

// Arc returns the arc of a circle between two points. It turns through an angle on
// its way, positive to the right.
func Arc(from, to Point, turn float64) Bezier {
	if math.Abs(turn) < 1e-9 { // too little to tell from straight
		return Line(from, to)
	}
	// The handle is 4/3 tan(turn/4) radii long, and the chord 2 sin(turn/2).
	chord := r2.Scale(2.0/3*math.Tan(turn/4)/math.Sin(turn/2), r2.Sub(to, from))
	return Bezier{
		from, r2.Add(from, r2.Rotate(chord, turn/2, Point{})),
		r2.Sub(to, r2.Rotate(chord, -turn/2, Point{})), to,
	}
}

// At returns the point at t, from 0 at the start to 1 at the end.
func (c Bezier) At(t float64) Point {
	u := 1 - t
	w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		X: w0*c[0].X + w1*c[1].X + w2*c[2].X + w3*c[3].X,
		Y: w0*c[0].Y + w1*c[1].Y + w2*c[2].Y + w3*c[3].Y,
	}
}

// Straight reports whether the curve is straight: its inner control points lie
// on the line between its ends.
func (c Bezier) Straight() bool {
	chord := r2.Sub(c[3], c[0])
	const flat = 1e-9 // of the chord's length squared
	for _, p := range c[1:3] {
		off := r2.Cross(chord, r2.Sub(p, c[0]))
		if off > flat*r2.Norm2(chord) || -off > flat*r2.Norm2(chord) {
			return false
		}
	}
	return true
}
