package picture

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// Small returns the picture of a plan's glass on its ground, with no words, and
// the box of that ground.
func Small(p *pattern.Plan) (drawing.Drawing, geometry.Box) {
	const ground = 6 // mm, round the glass
	v := newView(p, newWalls(p), stance{down: math.Tan(DefaultTilt)}, false)
	box := v.box.Grow(ground)
	var d drawing.Drawing
	d.Add(drawing.Paper, drawing.Fill{Points: drawing.Rectangle(box), Ink: backdrop(1)})
	d.Append(v.drawing) // but for its shadow, which may fall beyond the ground
	return d.Clipped(drawing.BoxWindow(box)), box
}
