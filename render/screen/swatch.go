package screen

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Swatch returns a picture of the first period of a plan as SVG. It is drawn in the colour
// of the words beside it, so that it suits a light and a dark page.
func Swatch(p *pattern.Plan) string {
	const air = 1.0 // mm round the motif
	box := geometry.EmptyBox()
	var shapes path
	var t thinner
	for _, c := range p.Cuts {
		for _, o := range c.Outlines {
			box = box.Union(o.Box())
			shapes = shapes.line(t.thin(o.Points), true)
		}
	}
	if box.Empty() {
		box = geometry.Box{}
	}
	box = box.Grow(air)
	width, height := box.Size()
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="%.2f %.2f %.2f %.2f">`+
		`<path transform="scale(1 -1)" fill="currentColor" d="%s"/></svg>`, box.Min.X, -box.Max.Y, width, height, shapes)
}
