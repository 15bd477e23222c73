package printing

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// A place is written to the thousandth of a millimetre, downwards from the page's
// head: 5.125 mm up a page of 25.4 mm is 20.275 mm down it; and a picture has the
// next whole dots: 25.48 mm at 300 to the inch are 300.94 of them, 25.36 mm 299.53.
func TestPlacesToTheThousandth(t *testing.T) {
	page := Page{Width: 25.48, Height: 25.4}
	page.Drawing.Add(drawing.Cuts, drawing.Stroke{
		Points: []geometry.Point{{X: 5.001, Y: 5.125}, {X: 15.001, Y: 5.125}}, Pen: drawing.Pen{Width: 0.3},
	})
	var file bytes.Buffer
	if err := SVG(&file, "", page, load(t)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(file.String(), "M5.001 20.275") {
		t.Errorf("the line begins elsewhere: %s", file.String())
	}
	for mm, dots := range map[float64]int{25.4: 300, 25.48: 301, 25.36: 300, 25.45: 301, 25.43: 300} {
		file.Reset()
		if err := PNG(&file, Page{Width: 25.4, Height: mm}, 300, load(t)); err != nil {
			t.Fatal(err)
		}
		if got, err := png.DecodeConfig(&file); err != nil || got.Width != 300 || got.Height != dots {
			t.Errorf("%g mm are %d dots, %v", mm, got.Height, err)
		}
	}
}
