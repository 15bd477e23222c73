package strokes

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// fitter lays a smooth chain of cubics along points: least squares for the handles,
// the points' parameters mended by Newton's method, and a new joint where a point
// stays too far off (Schneider, "An algorithm for automatically fitting digitized
// curves", Graphics Gems, 1990).
type fitter struct {
	points []geometry.Point
	along  []float64
	within float64
	window float64 // over which directions are taken, so that a tremor doesn't turn them

	curves []geometry.Bezier
	at     []float64 // for each point the number of its curve and, after the point, its parameter there
}

// fitCurves returns a chain of cubics that passes the points within a distance, and
// where along it each point is. A direction that is zero is taken from the points.
func fitCurves(points []geometry.Point, onward, back geometry.Point, within, window float64) ([]geometry.Bezier, []float64) {
	f := fitter{points: points, along: lengths(points), within: within, window: window, at: make([]float64, len(points))}
	last := len(points) - 1
	if onward == (geometry.Point{}) {
		onward = f.end(0)
	}
	if back == (geometry.Point{}) {
		back = f.end(last)
	}
	f.fit(0, last, onward, back)
	f.at[last] = float64(len(f.curves))
	return f.curves, f.at
}

// end returns the direction into the line from one of its ends: that of the parabola
// through it and two points further in.
func (f *fitter) end(i int) geometry.Point {
	whole := f.along[len(f.along)-1]
	reach := math.Min(2*f.window, whole)
	by := reach / 2
	if i > 0 {
		by = -by
	}
	p := f.points[i]
	q := pointAt(f.points, f.along, f.along[i]+by, false)
	r := pointAt(f.points, f.along, f.along[i]+2*by, false)
	return unit(r2.Sub(r2.Sub(r2.Scale(4, q), r2.Scale(3, p)), r), r2.Sub(r, p))
}

// middle returns the direction of the line at a point inside it.
func (f *fitter) middle(i int) geometry.Point {
	p := pointAt(f.points, f.along, f.along[i]-f.window, false)
	q := pointAt(f.points, f.along, f.along[i]+f.window, false)
	return unit(r2.Sub(q, p), r2.Sub(f.points[i+1], f.points[i-1]))
}

// unit returns the first of the vectors that has a direction, one long.
func unit(vectors ...geometry.Point) geometry.Point {
	for _, v := range vectors {
		if n := r2.Norm(v); n > 0 && !math.IsInf(n, 0) {
			return r2.Scale(1/n, v)
		}
	}
	return geometry.Point{X: 1}
}

// fit adds the curves from one point to another, with the directions into the line
// at both.
func (f *fitter) fit(from, to int, onward, back geometry.Point) {
	if f.points[from] == f.points[to] && to-from > 1 { // one curve for a loop may be no curve
		far := from + farthest(f.points[from:to+1])
		if far == from {
			far = (from + to) / 2
		}
		f.halves(from, far, to, onward, back)
		return
	}
	u := f.chords(from, to)
	const rounds = 6
	for round := 0; ; round++ {
		c := f.solve(from, to, u, onward, back)
		worst, at := f.worst(c, from, to, u)
		if worst <= f.within || to-from < 2 {
			for i, t := range u {
				f.at[from+i] = float64(len(f.curves)) + math.Min(t, 1-1e-12)
			}
			f.curves = append(f.curves, c)
			return
		}
		if round == rounds || worst > 8*f.within {
			f.halves(from, at, to, onward, back)
			return
		}
		f.mend(c, from, to, u)
	}
}

// halves adds the curves from one point to another by way of a third.
func (f *fitter) halves(from, by, to int, onward, back geometry.Point) {
	direction := f.middle(by)
	f.fit(from, by, onward, r2.Scale(-1, direction))
	f.fit(by, to, direction, back)
}

// chords returns a first parameter for each point: its share of the length.
func (f *fitter) chords(from, to int) []float64 {
	u := make([]float64, to-from+1)
	whole := f.along[to] - f.along[from]
	for i := range u {
		u[i] = float64(i) / float64(len(u)-1)
		if whole > 0 {
			u[i] = (f.along[from+i] - f.along[from]) / whole
		}
	}
	return u
}

// solve returns the cubic with the given directions at its ends that comes nearest to
// the points at their parameters.
func (f *fitter) solve(from, to int, u []float64, onward, back geometry.Point) geometry.Bezier {
	a, d := f.points[from], f.points[to]
	var c00, c01, c11, x0, x1 float64
	for i, t := range u {
		s := 1 - t
		b1, b2 := 3*s*s*t, 3*s*t*t
		v, w := r2.Scale(b1, onward), r2.Scale(b2, back)
		off := r2.Sub(f.points[from+i], r2.Add(r2.Scale(s*s*s+b1, a), r2.Scale(b2+t*t*t, d)))
		c00 += r2.Dot(v, v)
		c01 += r2.Dot(v, w)
		c11 += r2.Dot(w, w)
		x0 += r2.Dot(v, off)
		x1 += r2.Dot(w, off)
	}
	chord := r2.Norm(r2.Sub(d, a))
	det := c00*c11 - c01*c01
	left, right := (x0*c11-x1*c01)/det, (c00*x1-c01*x0)/det
	whole := f.along[to] - f.along[from]
	// Handles that are nearly nothing, or longer than the line, come from directions
	// that say little: a third of the chord then.
	if !(left > 1e-3*whole && right > 1e-3*whole && left < whole && right < whole) {
		left, right = chord/3, chord/3
	}
	return geometry.Bezier{a, r2.Add(a, r2.Scale(left, onward)), r2.Add(d, r2.Scale(right, back)), d}
}

// worst returns how far the point that lies farthest from the curve is from it, and
// which it is: never the first or the last.
func (f *fitter) worst(c geometry.Bezier, from, to int, u []float64) (distance float64, at int) {
	at = (from + to) / 2
	for i := from + 1; i < to; i++ {
		if d := r2.Norm(r2.Sub(c.At(u[i-from]), f.points[i])); d > distance {
			distance, at = d, i
		}
	}
	return distance, at
}

// mend moves each parameter towards the place on the curve that is nearest to its
// point, never past its neighbours.
func (f *fitter) mend(c geometry.Bezier, from, to int, u []float64) {
	for i := 1; i < len(u)-1; i++ {
		d1, d2 := derivatives(c, u[i])
		off := r2.Sub(c.At(u[i]), f.points[from+i])
		if below := r2.Dot(d1, d1) + r2.Dot(off, d2); below != 0 {
			if t := u[i] - r2.Dot(off, d1)/below; t > u[i-1] && t < u[i+1] {
				u[i] = t
			}
		}
	}
}

// derivatives returns the first and the second derivative of a curve.
func derivatives(c geometry.Bezier, t float64) (first, second geometry.Point) {
	d := [3]geometry.Point{r2.Sub(c[1], c[0]), r2.Sub(c[2], c[1]), r2.Sub(c[3], c[2])}
	s := 1 - t
	first = r2.Scale(3, r2.Add(r2.Scale(s*s, d[0]), r2.Add(r2.Scale(2*s*t, d[1]), r2.Scale(t*t, d[2]))))
	second = r2.Scale(6, r2.Add(r2.Scale(s, r2.Sub(d[1], d[0])), r2.Scale(t, r2.Sub(d[2], d[1]))))
	return first, second
}
