package page

import (
	"bytes"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// A letter page with the bars of an inch job at one place, as on every sheet.
//
//	|
//	|  100 mm to the right of the line, 4 in to its left
//	+-------  100 mm above the line, 4 in below
var (
	corner = geometry.Point{X: 20, Y: 25}
	letter = geometry.Box{Max: geometry.Point{X: 215.9, Y: 279.4}}
)

func barPage(t *testing.T) (printing.Page, *lettering.Letters) {
	t.Helper()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	bars := printing.Page{Width: letter.Max.X, Height: letter.Max.Y}
	for _, bar := range CheckBars(geometry.Inch) {
		bars.Drawing.Add(drawing.CheckBars, bar.Marks(corner)...)
	}
	return bars, letters
}

func barPDF(t *testing.T) []byte {
	t.Helper()
	bars, letters := barPage(t)
	var pdf bytes.Buffer
	if err := printing.PDF(&pdf, "Check bars", []printing.Page{bars}, letters); err != nil {
		t.Fatal(err)
	}
	return pdf.Bytes()
}

func TestBarsOfAJob(t *testing.T) {
	lengths := func(unit geometry.Unit) (across, up []float64) {
		for _, bar := range CheckBars(unit) {
			if bar.Up {
				up = append(up, bar.Length)
			} else {
				across = append(across, bar.Length)
			}
		}
		return across, up
	}
	if across, up := lengths(geometry.Millimetre); len(across) != 1 || len(up) != 1 || across[0] != 100 || up[0] != 100 {
		t.Errorf("millimetres: %v across, %v up", across, up)
	}
	// 25.4 mm to the inch: the international yard and pound agreement, 1959.
	if across, up := lengths(geometry.Inch); len(across) != 2 || len(up) != 2 || across[1] != 101.6 || up[1] != 101.6 {
		t.Errorf("inches: %v across, %v up", across, up)
	}
}

func TestBarsKeepToTheirBox(t *testing.T) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, bar := range CheckBars(geometry.Inch) {
		box, filled := bar.Box(corner), geometry.EmptyBox()
		for _, m := range bar.Marks(corner) {
			switch m := m.(type) {
			case drawing.Stroke:
				filled = filled.Union(geometry.BoxOf(m.Points...).Grow(m.Pen.Width / 2))
			case drawing.Text:
				// The box of a text has room for tails, which these have not.
				foot := letters.Box(m)
				filled = filled.Union(foot.Grow(-foot.Distance2(geometry.BoxOf(m.At)) - 0.75))
			}
		}
		if filled.Min.X < box.Min.X-1e-9 || filled.Min.Y < box.Min.Y-1e-9 || filled.Max.X > box.Max.X+1e-9 || filled.Max.Y > box.Max.Y+1e-9 {
			t.Errorf("%+v fills %v, its box is %v", bar, filled, box)
		}
	}
}

// The strokes in the file, after every matrix in it.
func TestBarsAreTrueInThePDF(t *testing.T) {
	pages := printtest.Trace(t, barPDF(t))
	if len(pages) != 1 || math.Abs(pages[0].Width-letter.Max.X) > 0.001 || math.Abs(pages[0].Height-letter.Max.Y) > 0.001 {
		t.Fatalf("pages %v, want one of 215.9 by 279.4 mm", pages)
	}
	for _, bar := range CheckBars(geometry.Inch) {
		want := bar.Place(corner, bar.Length, 0)
		found := false
		for _, s := range pages[0].Strokes {
			if len(s.Points) == 2 && r2.Norm(r2.Sub(s.Points[0], corner)) < 0.01 && r2.Norm(r2.Sub(s.Points[1], want)) < 0.01 {
				found = true
				if length := r2.Norm(r2.Sub(s.Points[1], s.Points[0])); math.Abs(length-bar.Length) > 0.001 {
					t.Errorf("%s, up %v: %v mm long, want %v", bar.Label, bar.Up, length, bar.Length)
				}
			}
		}
		if !found {
			t.Errorf("%s, up %v: no stroke from %v to %v", bar.Label, bar.Up, corner, want)
		}
	}
}
