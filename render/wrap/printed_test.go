package wrap

import (
	"bytes"
	"context"
	"math"
	"regexp"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// On a printer that is not true a corrected wrap comes out as a true printer
// makes the plain one: every line, to a micrometre or two, of as many pieces, on
// pages of the same size that lie the same way. How the bars come out is
// TestEveryPage's.
func TestCorrectedWrapComesOutTrue(t *testing.T) {
	t.Parallel()
	p := planOf(t, leafJob(taperedGlass, 5))
	for _, by := range []page.Printed{{Short: 98, Long: 101.5}, {Short: 103, Long: 96}} {
		o := on(t, Outside, "420x420mm")
		plain := wrapOf(t, p, o)
		o.Printed = by
		corrected := wrapOf(t, p, o)
		if len(plain.Pages) != 1 || len(corrected.Pages) != 1 || corrected.Pages[0].Width != 420 || corrected.Pages[0].Height != 420 {
			t.Fatalf("%d pages, corrected %d of %g by %g mm", len(plain.Pages), len(corrected.Pages), corrected.Pages[0].Width, corrected.Pages[0].Height)
		}
		want := withPen(printtest.Trace(t, pdfOf(t, plain))[0], cutPen().Width)
		got := withPen(printtest.Trace(t, pdfOf(t, corrected))[0], cutPen().Width)
		if len(got) != len(want) || len(got) == 0 {
			t.Fatalf("%d lines, plain %d", len(got), len(want))
		}
		across, up := by.Short/100, by.Long/100
		printer := func(q geometry.Point) geometry.Point { return geometry.Point{X: q.X * across, Y: q.Y * up} }
		// The page may be laid out a little otherwise: compare from the first place.
		from, to := printer(got[0].Points[0]), want[0].Points[0]
		var worst float64
		for i := range got {
			for _, k := range []int{0, -1} {
				a, b := got[i].Points, want[i].Points
				if k < 0 {
					a, b = a[len(a)-1:], b[len(b)-1:]
				}
				off := r2.Norm(r2.Sub(r2.Sub(printer(a[0]), from), r2.Sub(b[0], to)))
				worst = max(worst, off)
			}
		}
		t.Logf("%v: worst %.4f mm", by, worst)
		if worst > 0.005 {
			t.Errorf("%v: a place is %.4f mm off", by, worst)
		}
		if !says(corrected.Pages[0], by.Corrected()) || says(plain.Pages[0], "Corrected") {
			t.Error("the page does not say that it is corrected")
		}
	}
}

// Correcting a printer turns no pages: what is printed again lies as it did.
func TestCorrectionKeepsPagesAsTheyLie(t *testing.T) {
	t.Parallel()
	turned := 0
	for name, stations := range map[string]string{"straight": straightGlass, "tapered": taperedGlass, "tall": tallGlass, "barrel": barrelGlass} {
		p := planOf(t, leafJob(stations, 5))
		for _, sheet := range []string{"a4", "letter", "legal"} {
			for side := range WallSides() {
				lies := func(by page.Printed) bool {
					o := on(t, Side(side), sheet)
					o.Printed = by
					a, err := newComposer(p, o)
					if err != nil {
						t.Fatal(err)
					}
					l, ok := a.layout()
					if !ok {
						t.Fatalf("%s, %v, %s: no layout", name, Side(side), sheet)
					}
					return l.Width > l.Height
				}
				if lies(page.TruePrinter()) != lies(page.Printed{Short: 95, Long: 105}) {
					t.Errorf("%s, %v, %s: the pages turn when they are corrected", name, Side(side), sheet)
				}
				if lies(page.TruePrinter()) {
					turned++
				}
			}
		}
	}
	if turned == 0 || turned == 4*3*3 {
		t.Errorf("%d of the cases lie on their sides: they try nothing", turned)
	}
}

// A printer that errs along the sides of its sheets is learnt by a test page, which
// is portrait, and printed true by on pages that are landscape. It is played by
// drawing each page the way it comes to lie on the sheet.
func TestCorrectionIsByThePapersSides(t *testing.T) {
	t.Parallel()
	const short, long = 0.987, 1.013
	demo := demoPlan(t)
	printer := func(p printtest.TracedPage) printtest.TracedPage {
		across, up := short, long
		if p.Width > p.Height {
			across, up = long, short
		}
		for _, s := range p.Strokes {
			for i, q := range s.Points {
				s.Points[i] = geometry.Point{X: across * q.X, Y: up * q.Y}
			}
		}
		return p
	}
	for _, sheet := range []string{"a4", "letter"} {
		o := on(t, Outside, sheet)
		test, err := NewTestPage(context.Background(), demo, o)
		if err != nil {
			t.Fatal(err)
		}
		measured := printer(printtest.Trace(t, pdfOf(t, test))[0])
		bars := page.CheckBars(geometry.Millimetre)
		o.Printed.Short, _ = barOn(measured, bars[0], 100*short)
		o.Printed.Long, _ = barOn(measured, bars[1], 100*long)

		plain := printtest.Trace(t, pdfOf(t, wrapOf(t, demo, on(t, Outside, sheet))))
		corrected := printtest.Trace(t, pdfOf(t, wrapOf(t, demo, o)))
		if len(corrected) != len(plain) || plain[0].Width < plain[0].Height {
			t.Fatalf("%s: %d pages and %d, %g mm wide", sheet, len(plain), len(corrected), plain[0].Width)
		}
		printed := printer(corrected[0])
		for _, bar := range bars {
			if length, ok := barOn(printed, bar, 100); !ok || math.Abs(length-100) > 0.01 {
				t.Errorf("%s: the bar, up %v, comes out %.3f mm long", sheet, bar.Up, length)
			}
		}
		want, got := withPen(plain[0], cutPen().Width), withPen(printed, cutPen().Width)
		if len(got) != len(want) || len(got) == 0 {
			t.Fatalf("%s: %d lines, plain %d", sheet, len(got), len(want))
		}
		for i := range got { // lengths, wherever the page has them
			if off := math.Abs(got[i].Length() - want[i].Length()); off > 0.005 {
				t.Errorf("%s: a line of %.3f mm comes out %.3f mm long", sheet, want[i].Length(), got[i].Length())
			}
		}
	}
}

// Each bar says which flag takes what a ruler says of it: on a page that lies on its
// side the bar across runs along the long side of the paper.
func TestBarsNameTheirFlags(t *testing.T) {
	t.Parallel()
	demo := demoPlan(t)
	test, err := NewTestPage(context.Background(), demo, on(t, Outside, "a4"))
	if err != nil {
		t.Fatal(err)
	}
	for _, drawn := range []printing.Page{test.Pages[0], wrapOf(t, demo, on(t, Outside, "a4")).Pages[0]} {
		landscape := drawn.Width > drawn.Height
		named := 0
		for _, text := range textsOn(drawn) {
			flag, found := strings.CutPrefix(text.Words, "100 mm: ")
			if !found {
				continue
			}
			named++
			if up := text.Turn != 0; (flag == "--printed-up") != (up != landscape) {
				t.Errorf("landscape %v: the bar, up %v, has %s", landscape, up, flag)
			}
		}
		if named != 2 {
			t.Errorf("landscape %v: %d bars have a flag", landscape, named)
		}
	}
}

// The test page has a square, a circle and rulers that are what they say.
func TestTestPage(t *testing.T) {
	t.Parallel()
	demo := demoPlan(t)
	for _, sheet := range []string{"a4", "letter"} {
		w, err := NewTestPage(context.Background(), demo, on(t, Outside, sheet))
		if err != nil {
			t.Fatal(err)
		}
		if w.Pages[0].Width >= w.Pages[0].Height {
			t.Errorf("%s: the test page is %g by %g mm", sheet, w.Pages[0].Width, w.Pages[0].Height)
		}
		page := printtest.Trace(t, pdfOf(t, w))[0]
		var square, circle bool
		diagonals := 0
		longest := map[bool]float64{} // ruler's line, by whether it is up
		for _, s := range page.Strokes {
			box := geometry.BoxOf(s.Points...)
			wide, tall := box.Size()
			size80 := math.Abs(wide-80) < 0.01 && math.Abs(tall-80) < 0.01
			switch {
			case s.Closed && len(s.Points) == 4 && size80:
				square = true
			case s.Closed && len(s.Points) > 100 && size80:
				middle := r2.Scale(0.5, r2.Add(box.Min, box.Max))
				circle = true
				for _, q := range s.Points {
					if off := math.Abs(r2.Norm(r2.Sub(q, middle)) - 40); off > 0.002 {
						t.Fatalf("%s: the circle is %.4f mm off", sheet, off)
					}
				}
			case len(s.Parts()) > 10 && math.Abs(s.Length()-80*math.Sqrt2) < 0.01: // dashed
				diagonals++
			case len(s.Points) == 2 && math.Abs(s.Width-0.15) < 0.005 && (wide < 0.01 || tall < 0.01):
				longest[wide < 0.01] = max(longest[wide < 0.01], s.Length())
			}
		}
		if !square || !circle || diagonals != 2 {
			t.Errorf("%s: square %v, circle %v, %d diagonals", sheet, square, circle, diagonals)
		}
		for up, length := range longest {
			// A whole number of millimetres or of sixteenths, most of the page long.
			if off := math.Abs(math.Remainder(length, 1)); off > 0.01 && math.Abs(math.Remainder(length, 25.4/16)) > 0.01 || length < 100 {
				t.Errorf("%s: the ruler, up %v, is %.3f mm long", sheet, up, length)
			}
		}
	}
}

// The demo's picture is small enough to send, and its pages are whole
// millimetres; its layers are there by name.
func TestPictureIsSmall(t *testing.T) {
	w := wrapOf(t, demoPlan(t), DefaultOptions(geometry.Inch))
	file := svgOf(t, w)
	if len(file) >= 130_000 {
		t.Errorf("the demo's SVG has %d bytes", len(file))
	}
	t.Logf("%d bytes", len(file))
	size := regexp.MustCompile(`^<svg [^>]*width="\d+mm" height="\d+mm" viewBox="0 0 \d+ \d+"`)
	if !size.Match(file) {
		t.Errorf("the page is no whole number of millimetres: %.200s", file)
	}
	for _, layer := range drawing.Layers() {
		if !bytes.Contains(file, []byte("\n<g id=\""+layer.String()+"\">\n")) {
			t.Errorf("no layer %v", layer)
		}
	}
}
