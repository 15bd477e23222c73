package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Point is a place on a flat map, or a displacement there, in millimetres.
type Point = r2.Vec

// Box is an upright rectangle on a flat map. The zero Box is the single point
// at the origin; EmptyBox holds nothing.
type Box struct{ Min, Max Point }

// EmptyBox returns the box that holds no point.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{X: inf, Y: inf}, Point{X: -inf, Y: -inf}}
}

// BoxOf returns the smallest box that holds all the points.
func BoxOf(points ...Point) Box {
	b := EmptyBox()
	for _, p := range points {
		b = b.Add(p)
	}
	return b
}

// Add returns the smallest box that holds b and p.
func (b Box) Add(p Point) Box {
	return Box{
		Point{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y)},
		Point{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y)},
	}
}

// Union returns the smallest box that holds both.
func (b Box) Union(c Box) Box { return b.Add(c.Min).Add(c.Max) }

// Grow returns the box with every side moved outward by d.
func (b Box) Grow(d float64) Box {
	return Box{Point{X: b.Min.X - d, Y: b.Min.Y - d}, Point{X: b.Max.X + d, Y: b.Max.Y + d}}
}

// Empty reports whether the box holds no point.
func (b Box) Empty() bool { return !(b.Min.X <= b.Max.X && b.Min.Y <= b.Max.Y) }

// Contains reports whether a point lies in the box or on its edge.
func (b Box) Contains(p Point) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// Size returns the box's width and height.
func (b Box) Size() (width, height float64) { return b.Max.X - b.Min.X, b.Max.Y - b.Min.Y }

// Distance2 returns the square of the gap between two boxes, 0 where they meet.
func (b Box) Distance2(c Box) float64 {
	dx := max(b.Min.X-c.Max.X, c.Min.X-b.Max.X, 0)
	dy := max(b.Min.Y-c.Max.Y, c.Min.Y-b.Max.Y, 0)
	return dx*dx + dy*dy
}

// Motion is a rigid motion of the plane: a turn about the origin, then a shift.
type Motion struct{ Cos, Sin, X, Y float64 }

// Apply returns where the motion takes p.
func (m Motion) Apply(p Point) Point {
	return Point{X: m.Cos*p.X - m.Sin*p.Y + m.X, Y: m.Sin*p.X + m.Cos*p.Y + m.Y}
}

// Moved returns a box round the box after a motion.
func (b Box) Moved(m Motion) Box {
	return BoxOf(m.Apply(b.Min), m.Apply(b.Max),
		m.Apply(Point{X: b.Min.X, Y: b.Max.Y}), m.Apply(Point{X: b.Max.X, Y: b.Min.Y}))
}
