package printing

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printtest"
)

// Every program shows the same ink at the same place. Ours, at four times the
// dots, is what the others are held against; poppler is compared with it, too, so
// that they can't all be wrong with us.
func TestProgramsAgree(t *testing.T) {
	letters := load(t)
	ours := printtest.Decode(t, samplePNG(t, letters, 1200), 1200)
	for _, show := range []struct {
		name    string
		picture func(t *testing.T) printtest.Picture
	}{
		{"ours at 150", func(t *testing.T) printtest.Picture { return printtest.Decode(t, samplePNG(t, letters, 150), 150) }},
		{"poppler", func(t *testing.T) printtest.Picture {
			return printtest.PopplerPicture(t, samplePDF(t, letters), 1, 300)
		}},
		{"MuPDF", func(t *testing.T) printtest.Picture { return printtest.MuPDFPicture(t, samplePDF(t, letters), 1, 300) }},
		{"librsvg", func(t *testing.T) printtest.Picture { return printtest.LibrsvgPicture(t, sampleSVG(t, letters), 300) }},
		{"a browser", func(t *testing.T) printtest.Picture {
			return printtest.BrowserPicture(t, sampleSVG(t, letters), sampleWidth, sampleHeight)
		}},
	} {
		t.Run(show.name, func(t *testing.T) {
			picture := show.picture(t)
			dot := geometry.MillimetresPerInch / picture.DotsPerInch
			for name, box := range sampleBoxes(letters) {
				area, middle := picture.Ink(box, sampleHeight)
				wantArea, want := ours.Ink(box, sampleHeight)
				if math.Abs(area-wantArea) > 0.12*wantArea {
					t.Errorf("%s: %.3f mm² of ink, ours has %.3f", name, area, wantArea)
				}
				if off := r2.Norm(r2.Sub(middle, want)); !(off <= 1.25*dot) {
					t.Errorf("%s: the middle of its ink is at %.3f, ours at %.3f: %.1f dots off", name, middle, want, off/dot)
				}
			}
		})
	}
}

// sampleBoxes returns where on the sample page there is ink to compare. Boxes
// are well clear of the ink, so that a shift does not cut any of it off.
func sampleBoxes(letters *lettering.Letters) map[string]geometry.Box {
	boxes := map[string]geometry.Box{
		"circle": geometry.BoxOf(circleMiddle).Grow(circleRadius + 2),
		"dashes": {Min: geometry.Point{X: 8, Y: 128}, Max: geometry.Point{X: 140, Y: 132}},
	}
	for _, m := range samplePage().Drawing.On(drawing.Notes) {
		if text, ok := m.(drawing.Text); ok {
			boxes[text.Words] = letters.Box(text).Grow(3)
		}
	}
	return boxes
}

// stuck is a file that can't be written.
type stuck struct{ wrote int }

var errStuck = errors.New("no room")

func (s *stuck) Write(b []byte) (int, error) {
	s.wrote += len(b)
	return 0, errStuck
}

func TestFailedWritesAreReported(t *testing.T) {
	letters := load(t)
	for name, write := range map[string]func(*stuck) error{
		"pdf": func(w *stuck) error { return PDF(w, "", []Page{samplePage()}, letters) },
		"svg": func(w *stuck) error { return SVG(w, "", samplePage(), letters) },
		"png": func(w *stuck) error { return PNG(w, samplePage(), 50, letters) },
	} {
		if err := write(&stuck{}); !errors.Is(err, errStuck) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What can't be printed is refused before anything is written.
func TestBadPagesAreRefused(t *testing.T) {
	letters := load(t)
	lost := samplePage()
	lost.Drawing.Add(drawing.Cuts, drawing.Stroke{Points: []geometry.Point{{X: math.NaN()}, {}}})
	for name, page := range map[string]Page{"no size": {}, "endless": {Width: 200, Height: 6000}, "lost mark": lost} {
		for format, write := range map[string]func(*stuck) error{
			"pdf": func(w *stuck) error { return PDF(w, "", []Page{samplePage(), page}, letters) },
			"svg": func(w *stuck) error { return SVG(w, "", page, letters) },
			"png": func(w *stuck) error { return PNG(w, page, 50, letters) },
		} {
			file := &stuck{}
			if err := write(file); err == nil || errors.Is(err, errStuck) || file.wrote > 0 {
				t.Errorf("%s as %s: %v, after %d bytes", name, format, err, file.wrote)
			}
		}
	}
	if err := PDF(&stuck{}, "", nil, letters); err == nil || errors.Is(err, errStuck) {
		t.Errorf("no pages: %v", err)
	}
}

// A picture has a place in memory, and a size it can't have is refused.
func TestPicturesOfNoSizeAreRefused(t *testing.T) {
	letters := load(t)
	for _, dotsPerInch := range []float64{0, -1, 0.01, 1e6, math.NaN(), math.Inf(1)} {
		file := &stuck{}
		if err := PNG(file, samplePage(), dotsPerInch, letters); err == nil || file.wrote > 0 {
			t.Errorf("%g dots to the inch: %v", dotsPerInch, err)
		}
	}
}
