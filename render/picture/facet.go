package picture

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// facet is a small part of a groove's wall, as good as flat, or what is left of
// it: its outline on the flat map, how deep it is below the surface, how light it
// is on the near side, and by how much it changes the tone of the glass on the
// far one.
type facet struct {
	cut           int // facets of one cut do not hide each other
	outline       polygon
	depth         plane
	bright, faint plane
	panel         panel
}

// panel is the flat that a flat wheel leaves. All of it faces the way that the
// surface does on its middle line, and it shines as a whole.
type panel struct {
	is    bool
	theta float64
}

// minArea is the area below which nothing is drawn.
const minArea = 2e-4 // mm²

// plane is a value that changes evenly over the flat map.
type plane struct {
	at    geometry.Point
	value float64 // at that place
	slope geometry.Point
}

// through returns the plane that has given values at the corners of a triangle.
func through(t [3]geometry.Point, values [3]float64) plane {
	a, b := r2.Sub(t[1], t[0]), r2.Sub(t[2], t[0])
	da, db := values[1]-values[0], values[2]-values[0]
	slope := geometry.Point{X: da*b.Y - db*a.Y, Y: db*a.X - da*b.X}
	return plane{t[0], values[0], r2.Scale(1/r2.Cross(a, b), slope)}
}

func (p plane) on(q geometry.Point) float64 { return p.value + r2.Dot(p.slope, r2.Sub(q, p.at)) }

// moved returns the plane carried along by a motion.
func (p plane) moved(m geometry.Motion) plane {
	p.at = m.Apply(p.at)
	m.X, m.Y = 0, 0
	p.slope = m.Apply(p.slope)
	return p
}

// moved returns the facet carried along by a motion, to be asked for its depth.
func (f facet) moved(m geometry.Motion) facet {
	outline := make(polygon, len(f.outline))
	for i, q := range f.outline {
		outline[i] = m.Apply(q)
	}
	f.outline, f.depth = outline, f.depth.moved(m)
	return f
}
