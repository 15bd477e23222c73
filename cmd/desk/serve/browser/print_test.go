package browser

import (
	"context"
	"encoding/json"
	"math"
	"testing"

	"github.com/chromedp/chromedp"

	"roundlay/geometry"
	"roundlay/render/page"
	"roundlay/render/printtest"
)

// closeEnough is how far a bar may be from its length on paper, in millimetres.
const closeEnough = 0.02

// Printing from the page keeps the check bars at their lengths and puts one page on a sheet,
// whether the browser takes the paper from the page or a person chooses it.
func TestPrint(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.click("#tab-paper")
	for _, of := range []struct {
		paper         string
		width, height float64
		option        chromedp.PDFOption
	}{
		{"a4", 210, 297, chromedp.PDFPreferCSSPageSize()},
		{"letter", 215.9, 279.4, chromedp.PDFPreferCSSPageSize()},
		{"a4", 210, 297, nil},
		{"letter", 215.9, 279.4, nil},
	} {
		p.choose("#paper-size", of.paper)
		p.quiet()
		sheets := eval[int](p, `document.querySelectorAll("#sheets .printed").length`)
		lies := eval[bool](p, `(() => { const { width, height } = document.querySelector("#sheets .printed").style; return parseFloat(width) > parseFloat(height) })()`)
		options := []chromedp.PDFOption{chromedp.PDFPrintBackground(), chromedp.PDFMargin(0)}
		if of.option != nil {
			options = append(options, of.option)
		} else {
			options = append(options, chromedp.PDFPaper(chromedp.PaperSize{Width: of.width / geometry.MillimetresPerInch, Height: of.height / geometry.MillimetresPerInch}))
			if lies {
				options = append(options, chromedp.PDFLandscape())
			}
		}
		pdf := run(p, chromedp.PrintToPDF(options...))
		p.looksLike(pdf, of.paper)
		traced := printtest.Trace(t, pdf)
		if len(traced) != sheets || sheets == 0 {
			t.Errorf("%s: %d sheets for %d pages", of.paper, len(traced), sheets)
		}
		for i, sheet := range traced {
			across, up := of.width, of.height
			if lies {
				across, up = up, across
			}
			if math.Abs(sheet.Width-across) > 0.5 || math.Abs(sheet.Height-up) > 0.5 {
				t.Errorf("%s: sheet %d is %.2f by %.2f mm, not %.1f by %.1f", of.paper, i+1, sheet.Width, sheet.Height, across, up)
			}
			bars(t, of.paper, sheet)
		}
	}
}

// looksLike compares the printed pages with the PDF file that the engine makes, dot by dot.
func (p *tab) looksLike(pdf []byte, paper string) {
	p.t.Helper()
	body, err := json.Marshal(map[string]any{"job": p.text(), "what": "wrap", "ending": "pdf", "paper": paper})
	if err != nil {
		p.t.Fatal(err)
	}
	want, err := engine.Answer(context.Background(), "download", body)
	if err != nil {
		p.t.Fatal(err)
	}
	const dpi = 50
	a, b := printtest.MuPDFPicture(p.t, pdf, 1, dpi), printtest.MuPDFPicture(p.t, want.Data, 1, dpi)
	width, height := min(a.Image.Rect.Dx(), b.Image.Rect.Dx()), min(a.Image.Rect.Dy(), b.Image.Rect.Dy())
	var off, ink float64
	for y := range height {
		for x := range width {
			off += math.Abs(float64(a.Image.GrayAt(x, y).Y) - float64(b.Image.GrayAt(x, y).Y))
			ink += 255 - float64(b.Image.GrayAt(x, y).Y)
		}
	}
	if off > alike*ink {
		p.t.Errorf("%s: what is printed differs from the file by %.3f of its ink", paper, off/ink)
	}
	p.t.Logf("%s: what is printed differs from the file by %.3f of its ink", paper, off/ink)
}

// alike is how much of the ink may lie elsewhere than in the file: the edges of lines, which
// fall on dots otherwise.
const alike = 0.1

// bars looks for the check bars on a printed sheet.
func bars(t *testing.T, paper string, sheet printtest.TracedPage) {
	t.Helper()
	for _, bar := range page.CheckBars(geometry.Inch) {
		best, drawn := math.Inf(1), 0.0
		for _, s := range sheet.Strokes {
			if math.Abs(s.Width-0.2) > 0.02 {
				continue
			}
			for _, part := range s.Parts() {
				across, up := part[len(part)-1].X-part[0].X, part[len(part)-1].Y-part[0].Y
				if len(part) != 2 || math.Abs(up) > 0.01 != bar.Up || math.Min(math.Abs(up), math.Abs(across)) > 0.01 {
					continue
				}
				if length := math.Hypot(across, up); math.Abs(length-bar.Length) < best {
					best, drawn = math.Abs(length-bar.Length), length
				}
			}
		}
		if best > closeEnough {
			t.Errorf("%s: the bar %s, up %v, comes out %.3f mm long", paper, bar.Label, bar.Up, drawn)
		}
		t.Logf("%s: bar %s, up %v: %.3f mm", paper, bar.Label, bar.Up, drawn)
	}
}

// choose takes one of the choices of a list, as the browser tells it.
func (p *tab) choose(selector, value string) {
	p.t.Helper()
	p.click(selector)
	eval[chromedp.Void](p, `(() => {
		const list = document.querySelector(`+quoted(selector)+`);
		list.value = `+quoted(value)+`;
		list.dispatchEvent(new Event("change", { bubbles: true }));
	})()`)
	p.keys("\x1b")
}
