package printing

import (
	"bytes"
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printtest"
)

// dashedLines are short dashed lines of the pens of a wrap, a level one a row,
// with the dashes to be seen on it, which are reckoned by hand.
func dashedLines() []dashedLine {
	band, chain := drawing.Pen{Width: 0.2, Dash: []float64{2, 1.2}}, drawing.Pen{Width: 0.2, Dash: []float64{6, 1.5, 1, 1.5}}
	return []dashedLine{
		{band, 8.4, [][2]float64{{0, 2}, {3.2, 5.2}, {6.4, 8.4}}},
		{band, 7.8, [][2]float64{{0, 7.8 / 8.4 * 2}, {7.8 / 8.4 * 3.2, 7.8 / 8.4 * 5.2}, {7.8 / 8.4 * 6.4, 7.8}}},
		{chain, 26, [][2]float64{{0, 6}, {7.5, 8.5}, {10, 16}, {17.5, 18.5}, {20, 26}}},
		{chain, 16, [][2]float64{{0, 6}, {7.5, 8.5}, {10, 16}}},
		{drawing.Pen{Width: 0.35, Dash: []float64{5, 1.5, 1, 1.5}}, 14, [][2]float64{{0, 5}, {6.5, 7.5}, {9, 14}}},
	}
}

type dashedLine struct {
	pen    drawing.Pen
	length float64
	dashes [][2]float64
}

const dashedLeft, dashedRow, dashedHeight = 10.0, 8.0, 60.0

func (l dashedLine) at(row int) float64 { return dashedHeight - dashedRow*float64(row+1) }

func dashedPage() Page {
	p := Page{Width: 60, Height: dashedHeight}
	for i, l := range dashedLines() {
		p.Drawing.Add(drawing.Marks, drawing.Stroke{
			Points: []geometry.Point{{X: dashedLeft, Y: l.at(i)}, {X: dashedLeft + l.length, Y: l.at(i)}}, Pen: l.pen,
		})
	}
	return p
}

// A short line of dashes shows every one at its length, in every file and to
// every program.
func TestShortLinesAreDashed(t *testing.T) {
	const dpi = 600
	letters := load(t)
	write := func(as func(*bytes.Buffer) error) []byte {
		var file bytes.Buffer
		if err := as(&file); err != nil {
			t.Fatal(err)
		}
		return file.Bytes()
	}
	pdf := write(func(w *bytes.Buffer) error { return PDF(w, "", []Page{dashedPage()}, letters) })
	svg := write(func(w *bytes.Buffer) error { return SVG(w, "", dashedPage(), letters) })
	for name, picture := range map[string]func(t *testing.T) printtest.Picture{
		"our PNG": func(t *testing.T) printtest.Picture {
			return printtest.Decode(t, write(func(w *bytes.Buffer) error { return PNG(w, dashedPage(), dpi, letters) }), dpi)
		},
		"the PDF by poppler":  func(t *testing.T) printtest.Picture { return printtest.PopplerPicture(t, pdf, 1, dpi) },
		"the PDF by MuPDF":    func(t *testing.T) printtest.Picture { return printtest.MuPDFPicture(t, pdf, 1, dpi) },
		"the SVG by librsvg":  func(t *testing.T) printtest.Picture { return printtest.LibrsvgPicture(t, svg, dpi) },
		"the SVG in Chromium": func(t *testing.T) printtest.Picture { return printtest.BrowserPicture(t, svg, 60, dashedHeight) },
	} {
		t.Run(name, func(t *testing.T) {
			shown := picture(t)
			for i, l := range dashedLines() {
				checkDashes(t, shown, l, l.at(i))
			}
		})
	}
}

// checkDashes holds the runs of ink along a level line against its dashes.
func checkDashes(t *testing.T, shown printtest.Picture, l dashedLine, y float64) {
	t.Helper()
	dot := geometry.MillimetresPerInch / shown.DotsPerInch
	got := runsOfInk(shown, y)
	if len(got) != len(l.dashes) {
		t.Errorf("%.1f mm of %v: %d dashes, want %d: %.2f", l.length, l.pen.Dash, len(got), len(l.dashes), got)
		return
	}
	for i, d := range l.dashes {
		if off := max(math.Abs(got[i][0]-d[0]), math.Abs(got[i][1]-d[1])); off > 1.1*dot {
			t.Errorf("%.1f mm of %v: a dash from %.2f to %.2f, want %.2f to %.2f", l.length, l.pen.Dash, got[i][0], got[i][1], d[0], d[1])
		}
	}
}

// runsOfInk returns from where to where there is ink along a level line, in
// millimetres from the left end of the dashed lines.
func runsOfInk(shown printtest.Picture, y float64) (runs [][2]float64) {
	dot := geometry.MillimetresPerInch / shown.DotsPerInch
	row := int((dashedHeight - y) / dot)
	inked := false
	for column := range shown.Image.Rect.Dx() {
		x := float64(column)*dot - dashedLeft
		ink := shown.Image.GrayAt(column, row).Y < 128
		switch {
		case ink && !inked:
			runs = append(runs, [2]float64{x, x + dot})
		case ink:
			runs[len(runs)-1][1] = x + dot
		}
		inked = ink
	}
	return runs
}

// In a PDF file the dashes of a line are one path.
func TestDashesAreOnePath(t *testing.T) {
	var file bytes.Buffer
	if err := PDF(&file, "", []Page{dashedPage()}, load(t)); err != nil {
		t.Fatal(err)
	}
	strokes := printtest.Trace(t, file.Bytes())[0].Strokes
	if len(strokes) != len(dashedLines()) {
		t.Fatalf("%d paths, want %d", len(strokes), len(dashedLines()))
	}
	for i, l := range dashedLines() {
		if n := len(strokes[i].Parts()); n != len(l.dashes) {
			t.Errorf("%d dashes, want %d", n, len(l.dashes))
		}
	}
}
