package wrap

import (
	"math"
	"strings"
	"testing"

	"roundlay/render/drawing"
	"roundlay/render/printtest"
)

// Without rings a paper has none, nor their letters, in the pages and the picture;
// what was found is listed all the same.
func TestNoRings(t *testing.T) {
	t.Parallel()
	p := planOf(t, crowdedJob())
	o := on(t, Outside, "a4")
	rings := func(w *Wrap) (inPDF, inSVG int) {
		for _, page := range printtest.Trace(t, pdfOf(t, w)) {
			for _, s := range withPen(page, ringPen().Width) {
				// The pen has the width of others: a ring has many points, and is as wide.
				if len(s.Points) > 20 && math.Abs(s.Points[0].X-s.Points[len(s.Points)/2].X) < 2*ringOuter+0.1 {
					inPDF++
				}
			}
		}
		_, layer, _ := strings.Cut(string(svgOf(t, w)), `<g id="findings">`)
		layer, _, _ = strings.Cut(layer, `<g id="check-bars">`)
		return inPDF, strings.Count(layer, "<path") + strings.Count(layer, "<text")
	}
	if inPDF, inSVG := rings(wrapOf(t, p, o)); inPDF == 0 || inSVG == 0 {
		t.Fatalf("with rings there are %d in the PDF, %d in the SVG", inPDF, inSVG)
	}
	o.NoRings = true
	w := wrapOf(t, p, o)
	if inPDF, inSVG := rings(w); inPDF != 0 || inSVG != 0 {
		t.Errorf("there are %d rings in the PDF, %d marks in the SVG", inPDF, inSVG)
	}
	for i, page := range append(w.Pages, w.Whole) {
		if n := len(page.Drawing.On(drawing.Findings)); n > 0 {
			t.Errorf("page %d has %d marks of findings", i+1, n)
		}
		if says(page, "ringed") {
			t.Errorf("page %d speaks of rings", i+1)
		}
	}
	if !says(w.Whole, "crowded: ") {
		t.Error("the findings are not listed")
	}
}
