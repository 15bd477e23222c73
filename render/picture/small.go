package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// Small returns the picture of a plan's glass on its ground, without words and as
// large as fits into a width and a depth, and the box of that ground. It has fewer
// points than a large picture.
func Small(p *pattern.Plan, width, depth float64) (drawing.Drawing, geometry.Box) {
	const ground = 6 // mm, round the glass
	v := newView(p, newWalls(p, detailOf(p, 1)), stance{down: math.Tan(DefaultTilt)}, false)
	box := v.box.Grow(ground)
	var d drawing.Drawing
	d.Add(drawing.Paper, drawing.Fill{Points: drawing.Rectangle(box), Ink: backdrop(1)})
	d.Append(v.drawing) // without its shadow, which may fall beyond the ground
	const stray = 0.03  // mm
	wide, up := box.Size()
	scale := min(width/wide, depth/up)
	small := geometry.Box{Min: r2.Scale(scale, box.Min), Max: r2.Scale(scale, box.Max)}
	return d.Clipped(drawing.BoxWindow(box)).Stretched(scale, scale).Simplified(stray), small
}
