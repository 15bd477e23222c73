// Package printing writes pages to files, true to size: SVG for the eye and for
// drawing programs, PDF for the printer, PNG for the screen.
//
// Put a drawing on a [Page], and give that to [SVG], [PDF] or [PNG]. [MaxDPI] says
// how fine a PNG may be. A page with a mark of a kind that they can't draw is refused:
// nothing is left out.
//
// SVG is written here. canvas writes PDF and PNG, and they are completed afterwards: a
// PDF asks not to be scaled, a PNG says its size, and the same pages make the same
// bytes. A file is made whole before any of it is handed out, since canvas does not
// say when a write fails half way.
//
// # What canvas leaves open
//
// canvas's arcs and circles are not true to size, so it gets polylines and words only, to the
// thousandth of a millimetre. Its dashes are lost on short lines, so render/drawing/dashes.go
// makes the dashes, for every kind of file. SVG is written without canvas, in
// render/printing/svg.go: files half the size, in which each cut is an element of its own.
// canvas's PDF holds the date and the time its fonts were cut down, and can't say how it is
// to be printed: render/printing/reproducible.go rewrites it.
package printing

import (
	"fmt"
	"io"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// Page is one sheet of paper, in millimetres, with its lower left corner at the
// origin of the drawing.
type Page struct {
	Width, Height float64
	Label         string // what viewers show beside the page; none is its number
	Drawing       drawing.Drawing
	// Titles says what is on a layer, in files that have layers.
	Titles map[drawing.Layer]string
}

// longest is the longest side of a page a PDF file may have: 14400 units of
// 1/72 in (ISO 32000-1, annex C).
const longest = 14400 / 72 * 25.4

func (p Page) check() error {
	if !(p.Width > 0 && p.Height > 0 && p.Width <= longest && p.Height <= longest) {
		return fmt.Errorf("a page cannot be %g by %g mm", p.Width, p.Height)
	}
	return p.Drawing.Check()
}

func (p Page) box() geometry.Box { return geometry.Box{Max: geometry.Point{X: p.Width, Y: p.Height}} }

// write writes a file that is whole.
func write(w io.Writer, file []byte) error {
	n, err := w.Write(file)
	if err == nil && n < len(file) {
		err = io.ErrShortWrite
	}
	return err
}
