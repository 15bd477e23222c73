package picture

import (
	"io"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printing"
)

// Alone writes the first view as SVG without ground and words, to be laid over other
// drawings of the glass. It returns what of the view's plane the picture shows: there the
// glass's axis is at x = 0, and the middle of its foot at y = 0.
func (p *Picture) Alone(to io.Writer) (geometry.Box, error) {
	v := p.layouts[0].views[0]
	box := v.box.Grow(2 * ringRadius)
	box.Min = geometry.Point{X: -grained(-box.Min.X), Y: -grained(-box.Min.Y)}
	box.Max = geometry.Point{X: grained(box.Max.X), Y: grained(box.Max.Y)}
	var d drawing.Drawing
	d.Append(v.drawing.Moved(geometry.Motion{Cos: 1, X: -box.Min.X, Y: -box.Min.Y}))
	width, height := box.Size()
	return box, printing.SVG(to, p.Title, printing.Page{Width: width, Height: height, Drawing: d}, p.letters)
}
