package groove

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Line is the centre line of a cut on the flat map, measured along its length.
type Line struct {
	points []geometry.Point
	along  []float64
	ahead  []geometry.Point // the unit direction of the line at each point
	on     [2]bool          // whether the wheel comes from beyond the start, and goes on past the end
}

// NewLine returns the line through the given points, at least two and all
// different: two for a straight line; close together, a small part of the
// radius of its bends apart, for a curved one.
func NewLine(points []geometry.Point) Line {
	l := Line{points: points, along: make([]float64, len(points)), ahead: make([]geometry.Point, len(points))}
	last := len(points) - 1
	for i := range points {
		l.ahead[i] = r2.Unit(r2.Sub(points[min(i+1, last)], points[max(i-1, 0)]))
		if i > 0 {
			l.along[i] = l.along[i-1] + r2.Norm(r2.Sub(points[i], points[i-1]))
		}
	}
	if last > 1 {
		// A chord at an end leans halfway to the next: carry on the other half.
		l.ahead[0] = r2.Unit(r2.Sub(r2.Scale(2, l.ahead[0]), l.ahead[1]))
		l.ahead[last] = r2.Unit(r2.Sub(r2.Scale(2, l.ahead[last]), l.ahead[last-1]))
	}
	return l
}

// Length returns the length of the line.
func (l Line) Length() float64 { return l.along[len(l.along)-1] }

// Straight reports whether the line has no bend.
func (l Line) Straight() bool { return len(l.points) == 2 }

// whole reports whether the line is straight and ends at its ends.
func (l Line) whole() bool { return l.Straight() && l.on == [2]bool{} }

// At returns the point at a distance along the line and the unit direction
// there. Beyond its ends the line runs on straight.
func (l Line) At(s float64) (at, ahead geometry.Point) {
	if l.Straight() {
		return r2.Add(l.points[0], r2.Scale(s, l.ahead[0])), l.ahead[0]
	}
	last := len(l.points) - 1
	switch {
	case s <= 0:
		return r2.Add(l.points[0], r2.Scale(s, l.ahead[0])), l.ahead[0]
	case s >= l.Length():
		return r2.Add(l.points[last], r2.Scale(s-l.Length(), l.ahead[last])), l.ahead[last]
	}
	i := sort.SearchFloat64s(l.along, s)
	t := (s - l.along[i-1]) / (l.along[i] - l.along[i-1])
	at = r2.Add(l.points[i-1], r2.Scale(t, r2.Sub(l.points[i], l.points[i-1])))
	return at, r2.Unit(r2.Add(r2.Scale(1-t, l.ahead[i-1]), r2.Scale(t, l.ahead[i])))
}

// Bend returns the curvature of the line at a distance along it, positive where
// it turns to the left.
func (l Line) Bend(s float64) float64 {
	if l.Straight() {
		return 0
	}
	const h = 0.5 // mm
	from, to := max(s-h, 0), min(s+h, l.Length())
	_, a := l.At(from)
	_, b := l.At(to)
	return math.Asin(min(max(r2.Cross(a, b), -1), 1)) / (to - from)
}

// RunningOn returns the line as part of a longer cut: the wheel comes from
// beyond its start, goes on past its end, or both, and leaves no tail there.
func (l Line) RunningOn(start, end bool) Line {
	l.on = [2]bool{start, end}
	return l
}

// Ends returns the line's ends, and the unit directions that lead out of them.
func (l Line) Ends() (at, out [2]geometry.Point) {
	last := len(l.points) - 1
	return [2]geometry.Point{l.points[0], l.points[last]},
		[2]geometry.Point{r2.Scale(-1, l.ahead[0]), l.ahead[last]}
}

// chord returns the straight line between the ends, running on beyond neither.
func (l Line) chord() Line {
	if l.Straight() {
		return l.RunningOn(false, false)
	}
	return NewLine([]geometry.Point{l.points[0], l.points[len(l.points)-1]})
}
