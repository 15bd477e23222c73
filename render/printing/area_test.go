package printing

import (
	"bytes"
	"image/color"
	"image/png"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printtest"
)

// An area of two squares that overlap, with a hole in the first: 10 by 10 mm
// each, 5 apart, and the hole 4 by 4 mm.
//
//	+------+------+
//	|  []  |      |
//	+------+------+
func areaPage() (page Page, ink float64) {
	square := func(x, y, side float64) []geometry.Point {
		return []geometry.Point{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
	}
	hole := square(10.5, 13, 4)
	hole[1], hole[3] = hole[3], hole[1] // the other way round
	page = Page{Width: 40, Height: 40}
	page.Drawing.Add(drawing.Cuts, drawing.Area{Outlines: [][]geometry.Point{square(10, 10, 10), square(15, 10, 10), hole}})
	return page, 15*10 - 4*4
}

// Where two outlines of an area overlap there is no hole, and where one runs the
// other way there is, in every kind of file.
func TestAreasFillAlike(t *testing.T) {
	letters := load(t)
	page, want := areaPage()
	const dpi = 300
	pictures := map[string]func(t *testing.T) printtest.Picture{
		"SVG": func(t *testing.T) printtest.Picture {
			var svg bytes.Buffer
			if err := SVG(&svg, "", page, letters); err != nil {
				t.Fatal(err)
			}
			return printtest.LibrsvgPicture(t, svg.Bytes(), dpi)
		},
		"PDF": func(t *testing.T) printtest.Picture {
			var pdf bytes.Buffer
			if err := PDF(&pdf, "", []Page{page}, letters); err != nil {
				t.Fatal(err)
			}
			return printtest.PopplerPicture(t, pdf.Bytes(), 1, dpi)
		},
		"PNG": func(t *testing.T) printtest.Picture {
			var png bytes.Buffer
			if err := PNG(&png, page, dpi, letters); err != nil {
				t.Fatal(err)
			}
			return printtest.Decode(t, png.Bytes(), dpi)
		},
	}
	for name, picture := range pictures {
		t.Run(name, func(t *testing.T) {
			got, _ := picture(t).Ink(page.box(), page.Height)
			if got < want-1 || got > want+1 {
				t.Errorf("%.2f mm² of ink, want %.2f", got, want)
			}
		})
	}
}

// A page with a colour on it is a picture in colour; one without stays grey.
func TestColoursInPictures(t *testing.T) {
	letters := load(t)
	page, _ := areaPage()
	shown := func() color.Model {
		var file bytes.Buffer
		if err := PNG(&file, page, 50, letters); err != nil {
			t.Fatal(err)
		}
		picture, err := png.Decode(&file)
		if err != nil {
			t.Fatal(err)
		}
		return picture.ColorModel()
	}
	if shown() != color.GrayModel {
		t.Error("a page in greys is not a grey picture")
	}
	page.Drawing.Add(drawing.Notes, drawing.Fill{
		Points: []geometry.Point{{X: 1, Y: 1}, {X: 5, Y: 1}, {X: 5, Y: 5}}, Ink: drawing.Colour(10, 90, 120),
	})
	if shown() == color.GrayModel {
		t.Error("a page in colour is a grey picture")
	}
}
