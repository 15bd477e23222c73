package printing

import (
	"io"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// dot is a mark of a kind that no file is written with yet.
type dot struct{ drawing.Mark }

// Every way to write a page refuses a mark it can't draw, and says which: it
// leaves nothing out unnoticed. Without that mark the page is written.
func TestUnknownMarksAreRefused(t *testing.T) {
	letters := load(t)
	line := drawing.Stroke{Points: []geometry.Point{{X: 1, Y: 1}, {X: 9, Y: 9}}, Pen: drawing.Pen{Width: 0.3}}
	for name, write := range map[string]func(Page) error{
		"SVG": func(p Page) error { return SVG(io.Discard, "dots", p, letters) },
		"PDF": func(p Page) error { return PDF(io.Discard, "dots", []Page{p}, letters) },
		"PNG": func(p Page) error { return PNG(io.Discard, p, 72, letters) },
	} {
		for _, layer := range drawing.Layers() {
			p := Page{Width: 10, Height: 10}
			p.Drawing.Add(layer, line)
			if err := write(p); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			p.Drawing.Add(layer, dot{line}, line)
			if err := write(p); err == nil || !strings.Contains(err.Error(), "printing.dot") {
				t.Errorf("%s: an unknown mark on %v: %v", name, layer, err)
			}
		}
	}
}
