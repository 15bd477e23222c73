package alphabet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// line returns a straight stroke.
func line(x0, y0, x1, y1 float64) geometry.Bezier {
	return geometry.Line(geometry.Point{X: x0, Y: y0}, geometry.Point{X: x1, Y: y1})
}

// right returns a stroke along a circle of the given radius, turning to the right.
func right(x0, y0, x1, y1, radius float64) geometry.Bezier {
	from, to := geometry.Point{X: x0, Y: y0}, geometry.Point{X: x1, Y: y1}
	return geometry.Arc(from, to, 2*math.Asin(r2.Norm(r2.Sub(to, from))/2/radius))
}

// left returns a stroke along a circle of the given radius, turning to the left.
func left(x0, y0, x1, y1, radius float64) geometry.Bezier {
	b := right(x1, y1, x0, y0, radius)
	return geometry.Bezier{b[3], b[2], b[1], b[0]}
}

// curve returns the stroke of four control points.
func curve(x0, y0, x1, y1, x2, y2, x3, y3 float64) geometry.Bezier {
	return geometry.Bezier{{X: x0, Y: y0}, {X: x1, Y: y1}, {X: x2, Y: y2}, {X: x3, Y: y3}}
}

// side returns the half of a round letter from its top to its foot, both at x. It
// reaches wide to the right, or to the left below 0, and leaves its ends at the slope
// of a fall over a run of 1, so that the two halves meet in a soft point.
func side(x, wide, slope float64) geometry.Bezier {
	handle := wide * 4 / 3 // a cubic reaches three quarters as far as its handles
	fall := math.Abs(handle) * slope
	return curve(x, 1, x+handle, 1-fall, x+handle, fall, x, 0)
}

// spine returns the middle stroke of an S, from its left corner to its right one. It
// starts and ends at the slope of a fall over a run of 1, and is flatter between.
func spine(x0, y0, x1, y1, slope float64) geometry.Bezier {
	run := (x1 - x0) * 0.22
	return curve(x0, y0, x0+run, y0-math.Abs(run)*slope, x1-run, y1+math.Abs(run)*slope, x1, y1)
}

// moved returns strokes shifted.
func moved(strokes []geometry.Bezier, x, y float64) []geometry.Bezier {
	by := geometry.Point{X: x, Y: y}
	out := make([]geometry.Bezier, len(strokes))
	for i, s := range strokes {
		for k := range s {
			out[i][k] = r2.Add(s[k], by)
		}
	}
	return out
}

// mirrored returns strokes as seen from the other side of the upright at x.
func mirrored(strokes []geometry.Bezier, x float64) []geometry.Bezier {
	out := make([]geometry.Bezier, len(strokes))
	for i, s := range strokes {
		for k, p := range s {
			out[i][k] = geometry.Point{X: 2*x - p.X, Y: p.Y}
		}
	}
	return out
}

// turned returns strokes turned half round about a point.
func turned(strokes []geometry.Bezier, x, y float64) []geometry.Bezier {
	out := make([]geometry.Bezier, len(strokes))
	for i, s := range strokes {
		for k, p := range s {
			out[i][k] = geometry.Point{X: 2*x - p.X, Y: 2*y - p.Y}
		}
	}
	return out
}
