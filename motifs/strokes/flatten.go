package strokes

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// maxPieces bounds how many lines stand for one curve.
const maxPieces = 2000

// flatten adds to points those of a line that stays within a distance of a curve,
// without the curve's start. n equal steps of the parameter deviate by at most
// |second derivative| / (8 n²), and a cubic's is at most 6 times the greater of the
// second differences of its control points.
func flatten(points []geometry.Point, c geometry.Bezier, within float64) []geometry.Point {
	bend := math.Max(
		r2.Norm(r2.Add(r2.Sub(c[0], r2.Scale(2, c[1])), c[2])),
		r2.Norm(r2.Add(r2.Sub(c[1], r2.Scale(2, c[2])), c[3])))
	n := 1
	if bend > 0 {
		n = int(math.Min(maxPieces, math.Max(1, math.Ceil(math.Sqrt(6*bend/(8*within))))))
	}
	for i := 1; i < n; i++ {
		points = append(points, c.At(float64(i)/float64(n)))
	}
	return append(points, c[3])
}

// flattened returns the points of a line that stays within a distance of a trail.
func (t *trail) flattened(within float64) []geometry.Point {
	points := []geometry.Point{t.start()}
	for _, c := range t.curves {
		points = flatten(points, c, within)
	}
	return points
}

// leaves returns the unit direction in which a curve leaves its start, and arrives
// the one in which it comes to its end. Handles of no length are passed over.
func leaves(c geometry.Bezier) geometry.Point {
	size := r2.Norm(r2.Sub(c[1], c[0])) + r2.Norm(r2.Sub(c[2], c[1])) + r2.Norm(r2.Sub(c[3], c[2]))
	for _, p := range c[1:] {
		if d := r2.Sub(p, c[0]); r2.Norm(d) > 1e-6*size {
			return r2.Unit(d)
		}
	}
	return geometry.Point{}
}

func arrives(c geometry.Bezier) geometry.Point {
	d := leaves(geometry.Bezier{c[3], c[2], c[1], c[0]})
	return r2.Scale(-1, d)
}

// turn returns the angle between two directions, from 0 to π.
func turn(u, v geometry.Point) float64 {
	return math.Abs(math.Atan2(r2.Cross(u, v), r2.Dot(u, v)))
}

// length returns the length of a curve: the integral of its speed, by Gauss's rule of
// five places (Abramowitz and Stegun, 25.4.30) on each of eight parts.
func length(c geometry.Bezier) float64 {
	places := [...]float64{0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640}
	weights := [...]float64{0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891}
	const parts = 8
	sum := 0.0
	for i := range parts {
		for k, x := range places {
			speed, _ := derivatives(c, (float64(i)+(1+x)/2)/parts)
			sum += weights[k] / 2 / parts * r2.Norm(speed)
		}
	}
	return sum
}

// bounds returns the box of a curve: its ends, and where it is level or upright.
func bounds(c geometry.Bezier) geometry.Box {
	box := geometry.BoxOf(c[0], c[3])
	for _, of := range []func(geometry.Point) float64{
		func(p geometry.Point) float64 { return p.X }, func(p geometry.Point) float64 { return p.Y },
	} {
		d0, d1, d2 := of(c[1])-of(c[0]), of(c[2])-of(c[1]), of(c[3])-of(c[2])
		// The derivative is 3 (d0 (1-t)² + 2 d1 (1-t) t + d2 t²).
		for _, t := range quadraticRoots(d0-2*d1+d2, 2*(d1-d0), d0) {
			if t > 0 && t < 1 {
				box = box.Add(c.At(t))
			}
		}
	}
	return box
}

// quadraticRoots returns the real roots of at² + bt + c.
func quadraticRoots(a, b, c float64) []float64 {
	d := b*b - 4*a*c
	if d < 0 {
		return nil
	}
	q := -0.5 * (b + math.Copysign(math.Sqrt(d), b))
	var all []float64
	if a != 0 {
		all = append(all, q/a)
	}
	if q != 0 {
		all = append(all, c/q)
	}
	return all
}
