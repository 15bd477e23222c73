package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// polygon is a convex polygon, its corners anticlockwise.
type polygon []geometry.Point

// area returns the area of the polygon.
func (p polygon) area() float64 {
	sum := 0.0
	for i := 2; i < len(p); i++ {
		sum += r2.Cross(r2.Sub(p[i-1], p[0]), r2.Sub(p[i], p[0]))
	}
	return sum / 2
}

// middle returns the mean of the corners.
func (p polygon) middle() geometry.Point {
	var sum geometry.Point
	for _, q := range p {
		sum = r2.Add(sum, q)
	}
	return r2.Scale(1/float64(len(p)), sum)
}

// split divides the polygon by where a function that is even over the plane
// passes through zero: what lies above, and what lies below. Either may be
// empty.
func (p polygon) split(height func(geometry.Point) float64) (above, below polygon) {
	var few [12]float64 // most polygons have no more corners, and need no memory
	heights := few[:0]
	least, most := math.Inf(1), math.Inf(-1)
	for i, q := range p {
		heights = append(heights, height(q))
		least, most = min(least, heights[i]), max(most, heights[i])
	}
	if least >= 0 {
		return p, nil
	}
	if most <= 0 {
		return nil, p
	}
	both := make(polygon, 2*len(p)+2) // room for the two parts
	above, below = both[:0:len(p)+1], both[len(p)+1:len(p)+1]
	for i, q := range p {
		j := (i + 1) % len(p)
		a, b := heights[i], heights[j]
		if a >= 0 {
			above = append(above, q)
		}
		if a <= 0 {
			below = append(below, q)
		}
		if a < 0 && b > 0 || a > 0 && b < 0 {
			// The same place whichever way the edge runs.
			from, to := q, p[j]
			if a > b {
				from, to, a, b = to, from, b, a
			}
			cross := between(from, to, a/(a-b))
			above, below = append(above, cross), append(below, cross)
		}
	}
	return above, below
}

// common returns what lies in both polygons.
func (p polygon) common(q polygon) polygon {
	for i, a := range q {
		if p, _ = p.split(leftOf(a, q[(i+1)%len(q)])); p == nil {
			return nil
		}
	}
	return p
}

// without returns the parts of the polygon outside another.
func (p polygon) without(q polygon) []polygon {
	var parts []polygon
	for i, a := range q {
		var out polygon
		if p, out = p.split(leftOf(a, q[(i+1)%len(q)])); out != nil {
			parts = append(parts, out)
		}
		if p == nil {
			break
		}
	}
	return parts
}

// leftOf returns a function that is positive to the left of the line from a to b.
func leftOf(a, b geometry.Point) func(geometry.Point) float64 {
	along := r2.Sub(b, a)
	return func(q geometry.Point) float64 { return r2.Cross(along, r2.Sub(q, a)) }
}
