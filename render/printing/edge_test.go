package printing

import (
	"bytes"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printtest"
)

// Two squares of grey that overlap have one edge together, to every program: black
// all round and outside, and nothing but grey within.
//
//	10     20 25     35
//	+-------+--+      |  20 to 40
//	|       |..|......|  30 to 50
func TestFillsHaveOneEdge(t *testing.T) {
	const dpi, height = 600.0, 60.0
	edge := drawing.Pen{Width: 0.4}
	page := Page{Width: 60, Height: height}
	for _, box := range []geometry.Box{
		{Min: geometry.Point{X: 10, Y: 20}, Max: geometry.Point{X: 25, Y: 40}},
		{Min: geometry.Point{X: 20, Y: 30}, Max: geometry.Point{X: 35, Y: 50}},
	} {
		page.Drawing.Add(drawing.Footprints, drawing.Fill{Points: drawing.Rectangle(box), Ink: 205, Edge: edge})
	}
	letters := load(t)
	write := func(as func(*bytes.Buffer) error) []byte {
		var file bytes.Buffer
		if err := as(&file); err != nil {
			t.Fatal(err)
		}
		return file.Bytes()
	}
	pdf := write(func(w *bytes.Buffer) error { return PDF(w, "", []Page{page}, letters) })
	svg := write(func(w *bytes.Buffer) error { return SVG(w, "", page, letters) })
	for name, picture := range map[string]func(t *testing.T) printtest.Picture{
		"our PNG": func(t *testing.T) printtest.Picture {
			return printtest.Decode(t, write(func(w *bytes.Buffer) error { return PNG(w, page, dpi, letters) }), dpi)
		},
		"the PDF by poppler":  func(t *testing.T) printtest.Picture { return printtest.PopplerPicture(t, pdf, 1, dpi) },
		"the PDF by MuPDF":    func(t *testing.T) printtest.Picture { return printtest.MuPDFPicture(t, pdf, 1, dpi) },
		"the SVG by librsvg":  func(t *testing.T) printtest.Picture { return printtest.LibrsvgPicture(t, svg, dpi) },
		"the SVG in Chromium": func(t *testing.T) printtest.Picture { return printtest.BrowserPicture(t, svg, 60, height) },
	} {
		t.Run(name, func(t *testing.T) {
			shown := picture(t)
			grey := func(x, y float64) uint8 {
				dot := geometry.MillimetresPerInch / shown.DotsPerInch
				return shown.Image.GrayAt(int(x/dot), int((height-y)/dot)).Y
			}
			for _, at := range []struct {
				x, y        float64
				least, most uint8
			}{
				{9.9, 25, 0, 60}, {17, 19.9, 0, 60}, {35.1, 45, 0, 60}, {25.1, 25, 0, 60}, {19.9, 45, 0, 60}, // just outside
				{10.15, 25, 200, 210}, {22, 35, 200, 210}, // within one, and both
				{19.9, 35, 200, 210}, {25.1, 35, 200, 210}, {22, 29.9, 200, 210}, {22, 40.1, 200, 210}, // where the other ends
				{9.5, 25, 250, 255}, {22, 51, 250, 255}, // well outside
			} {
				if got := grey(at.x, at.y); got < at.least || got > at.most {
					t.Errorf("at (%g, %g) it is %d, want %d to %d", at.x, at.y, got, at.least, at.most)
				}
			}
		})
	}
}
