package picture

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// note is a paragraph of words, with a mark hung before it if it has one.
type note struct {
	words, mark string
	size        float64 // in points
	bold        bool
}

// block is notes set one below another in a width.
type block struct {
	letters *lettering.Letters
	width   float64
	depth   float64 // how far down it reaches
	lines   []drawing.Text
}

// add sets a note below the others.
func (b *block) add(n note) {
	const leading, hang = 1.3, 2.0 // in sizes
	em := n.size * lettering.MillimetresPerPoint
	indent := 0.0
	if n.mark != "" {
		indent = hang * em
	}
	for i, line := range b.letters.Lines(n.words, n.size, n.bold, b.width-indent) {
		b.depth += leading * em
		if i == 0 && n.mark != "" {
			b.lines = append(b.lines, drawing.Text{
				At: geometry.Point{Y: -b.depth}, Words: n.mark, Size: n.size, Bold: true, Ink: warning(),
			})
		}
		b.lines = append(b.lines, drawing.Text{
			At: geometry.Point{X: indent, Y: -b.depth}, Words: line, Size: n.size, Bold: n.bold,
		})
	}
	b.depth += (leading - 1) * em
}

// set draws the block with its upper left corner at a place.
func (b block) set(d *drawing.Drawing, left, top float64) {
	for _, line := range b.lines {
		line.At.X += left
		line.At.Y += top
		d.Add(drawing.Notes, line)
	}
}
