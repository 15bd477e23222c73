package drawing

import (
	"math"
	"slices"

	"roundlay/geometry"
)

// Flatness is the greatest distance from a polyline to the arc it stands for, in
// millimetres: a fortieth of a dot at 600 dots to the inch.
const Flatness = 0.001

// Circle returns a circle as a closed polyline: its points lie on the circle.
func Circle(centre geometry.Point, radius float64) []geometry.Point {
	points := Arc(centre, radius, 0, 2*math.Pi)
	return points[:len(points)-1]
}

// Arc returns the arc of a circle between two angles, both ends included. It
// runs anticlockwise where to is above from, clockwise otherwise.
func Arc(centre geometry.Point, radius, from, to float64) []geometry.Point {
	// A chord over the angle 2β leaves the arc by r(1 − cos β).
	beta := math.Acos(1 - min(Flatness/radius, 1))
	pieces := max(1, int(math.Ceil(math.Abs(to-from)/(2*beta))))
	points := make([]geometry.Point, pieces+1)
	for i := range points {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(pieces))
		points[i] = geometry.Point{X: centre.X + radius*cos, Y: centre.Y + radius*sin}
	}
	return points
}

// Rectangle returns the corners of a box, anticlockwise from the lower left.
func Rectangle(b geometry.Box) []geometry.Point {
	return []geometry.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}

// Hatch returns the lines that shade the inside of a polygon, at an angle and a
// spacing above zero. All lines of one angle and spacing lie on one grid, so
// the shading of neighbours runs through.
func Hatch(polygon []geometry.Point, angle, spacing float64) [][]geometry.Point {
	sin, cos := math.Sincos(angle)
	// u runs along the lines, v across them.
	level := geometry.Motion{Cos: cos, Sin: -sin}
	back := geometry.Motion{Cos: cos, Sin: sin}
	turned := each(polygon, level.Apply)
	box := geometry.BoxOf(turned...)

	var lines [][]geometry.Point
	for k := math.Ceil(box.Min.Y / spacing); k*spacing <= box.Max.Y; k++ {
		v := k * spacing
		crossings := crossingsAt(turned, v)
		for i := 0; i+1 < len(crossings); i += 2 {
			lines = append(lines, []geometry.Point{
				back.Apply(geometry.Point{X: crossings[i], Y: v}),
				back.Apply(geometry.Point{X: crossings[i+1], Y: v}),
			})
		}
	}
	return lines
}

// crossingsAt returns where the level line at v crosses a polygon's edges, from
// left to right. There is an even number of them.
func crossingsAt(polygon []geometry.Point, v float64) []float64 {
	var u []float64
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		if (a.Y > v) != (b.Y > v) {
			u = append(u, a.X+(b.X-a.X)*(v-a.Y)/(b.Y-a.Y))
		}
	}
	slices.Sort(u)
	return u
}
