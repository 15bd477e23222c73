package printing

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// The page that the formats are tried on: every kind of mark, in greys that
// repeat, and words at places that are known.
//
//	+---------------------------+ 170
//	|  ½   °   ×   Ø   −   é    | 150: signs, one by one, every 20 mm from 20
//	|                           |
//	|         ( circle )        | 80: radius 40, round the middle
//	|                           |
//	|  centred words, and words |
//	|  that end at the right    |
//	+---------------------------+
const (
	sampleWidth, sampleHeight = 148.0, 170.0
	circleRadius              = 40.0
	signsHeight               = 150.0
	sampleTitle               = `Číše <č> & “Ø” (½)`
)

var (
	circleMiddle = geometry.Point{X: 74, Y: 80}
	signs        = []string{"½", "°", "×", "Ø", "−", "é"}
)

func signPlace(i int) geometry.Point {
	return geometry.Point{X: 20 + 20*float64(i), Y: signsHeight}
}

func samplePage() Page {
	p := Page{Width: sampleWidth, Height: sampleHeight, Label: "1a"}
	d := &p.Drawing
	d.Add(drawing.Footprints,
		drawing.Fill{Points: drawing.Circle(geometry.Point{X: 60, Y: 80}, 8), Ink: 200},
		drawing.Fill{Points: drawing.Circle(geometry.Point{X: 88, Y: 80}, 8), Ink: 200})
	d.Add(drawing.Cuts, drawing.Stroke{Points: drawing.Circle(circleMiddle, circleRadius), Closed: true, Pen: drawing.Pen{Width: 0.25}})
	d.Add(drawing.Marks, drawing.Stroke{
		Points: []geometry.Point{{X: 10, Y: 130}, {X: 138, Y: 130}},
		Pen:    drawing.Pen{Width: 0.5, Cap: drawing.FlatCap, Dash: []float64{6, 4}},
	})
	for i, sign := range signs {
		d.Add(drawing.Notes, drawing.Text{At: signPlace(i), Words: sign, Size: 20, Align: drawing.Centre, Bold: i%2 == 1})
	}
	d.Add(drawing.Notes,
		drawing.Text{At: geometry.Point{X: 74, Y: 25}, Words: "set the dividers to 2 45/64 in", Size: 12, Align: drawing.Centre},
		drawing.Text{At: geometry.Point{X: 138, Y: 10}, Words: "quarter turn", Size: 12, Align: drawing.Right, Bold: true},
		drawing.Text{At: geometry.Point{X: 10, Y: 40}, Words: "upright words", Size: 12, Turn: math.Pi / 2, Ink: 90})
	return p
}

// landscape is a second page of another size.
func landscape() Page {
	p := Page{Width: 297, Height: 210}
	p.Drawing.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: 20, Y: 20}, Words: "second page", Size: 12})
	return p
}

func load(t testing.TB) *lettering.Letters {
	t.Helper()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	return letters
}

func samplePDF(t testing.TB, letters *lettering.Letters) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := PDF(&file, sampleTitle, []Page{samplePage(), landscape()}, letters); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

func sampleSVG(t testing.TB, letters *lettering.Letters) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := SVG(&file, sampleTitle, samplePage(), letters); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

func samplePNG(t testing.TB, letters *lettering.Letters, dotsPerInch float64) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := PNG(&file, samplePage(), dotsPerInch, letters); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

// busyPage is as full as a page may get: a hundred lines of so many points and
// a hundred labels.
func busyPage(points int) Page {
	p := Page{Width: 210, Height: 297}
	for i := range 100 {
		line := make([]geometry.Point, points)
		for k := range line {
			share := float64(k) / float64(points)
			line[k] = geometry.Point{X: 10 + 190*share, Y: 20 + 2*float64(i) + 5*math.Sin(20*share)}
		}
		p.Drawing.Add(drawing.Cuts, drawing.Stroke{Points: line, Pen: drawing.Pen{Width: 0.25}})
		p.Drawing.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: 20, Y: 20 + 2*float64(i)}, Words: fmt.Sprintf("cut %d, 1½ × 30°", i), Size: 8})
	}
	return p
}

func BenchmarkFiles(b *testing.B) {
	letters := load(b)
	page := busyPage(200)
	for name, file := range map[string]func(*bytes.Buffer) error{
		"pdf": func(w *bytes.Buffer) error { return PDF(w, "busy", []Page{page}, letters) },
		"svg": func(w *bytes.Buffer) error { return SVG(w, "busy", page, letters) },
		"png": func(w *bytes.Buffer) error { return PNG(w, page, 150, letters) },
	} {
		b.Run(name, func(b *testing.B) {
			size := 0
			for range b.N {
				var w bytes.Buffer
				if err := file(&w); err != nil {
					b.Fatal(err)
				}
				size = w.Len()
			}
			b.ReportMetric(float64(size), "bytes/file")
		})
	}
}
