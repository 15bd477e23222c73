package picture

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// shadow draws the shadow on the table, which falls to the right.
func (v vessel) shadow(d *drawing.Drawing) {
	const (
		rings = 26
		least = 0.035 // how low the table's circles are drawn where the eye sees them from the side
	)
	r := v.outside.radius(0)
	wider, aside := min(0.2*r, air/2-1), min(0.17*r, air/2-1) // so that it stays on its ground
	for i := range rings {
		inward := float64(i) / (rings - 1)
		reach := r + wider*(1-1.1*inward)
		flat := max(v.stance.down, least)
		line := drawing.Circle(geometry.Point{X: aside * (1 - inward)}, reach)
		for k := range line {
			line[k].Y *= flat
		}
		d.Add(drawing.Paper, drawing.Fill{
			Points: drawing.Thinned(line, stray), Ink: backdrop(1 - 0.33*math.Pow(inward, 1.6)),
		})
	}
}
