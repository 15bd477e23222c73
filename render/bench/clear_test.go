package bench

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/printtest"
)

// What MuPDF finds in the files: every word but the check bars' is 12 points or
// larger, all lies inside the printer's margin, and no letter touches another, a
// box, a rule, a bar or the picture.
func TestSheetIsLargeAndClear(t *testing.T) {
	const least, margin = 12, 6.0
	for name, plans := range trials(t) {
		papers := []string{""}
		if len(plans) == 1 {
			papers = append(papers, "150x190mm")
		}
		for _, paper := range papers {
			pdf := pdfOf(t, sheetOf(t, plans, paper))
			traced := printtest.Trace(t, pdf)
			for i, letters := range printtest.Letters(t, pdf) {
				page := traced[i]
				inside := geometry.Box{
					Min: geometry.Point{X: margin, Y: margin}, Max: geometry.Point{X: page.Width - margin, Y: page.Height - margin},
				}.Grow(0.01)
				where := fmt.Sprintf("%s on %s, page %d", name, paper, i+1)
				if len(letters) < 100 {
					t.Fatalf("%s: only %d letters were found", where, len(letters))
				}
				var bars strings.Builder
				picture := geometry.EmptyBox()
				for _, f := range page.Fills {
					picture = picture.Union(geometry.BoxOf(f.Points...))
				}
				boxes := make([]geometry.Box, len(page.Strokes))
				for i, s := range page.Strokes {
					boxes[i] = geometry.BoxOf(s.Points...).Grow(s.Width / 2)
				}
				for k, l := range letters {
					ink := inked(l)
					if !within(ink, inside) {
						t.Errorf("%s: %q lies at %.1f, outside the margin", where, l.Sign, ink)
					}
					for _, other := range letters[:k] {
						if overlap(ink, inked(other)) {
							t.Errorf("%s: %q runs into %q at %.1f", where, l.Sign, other.Sign, ink)
						}
					}
					if l.Size < least-1e-6 {
						bars.WriteString(l.Sign) // told by what they say, below
						continue
					}
					for i, s := range page.Strokes {
						if overlap(ink, boxes[i]) && meets(ink, s) {
							t.Errorf("%s: a line runs through %q at %.1f", where, l.Sign, ink)
						}
					}
					if overlap(ink, picture) {
						t.Errorf("%s: %q stands on the picture, at %.1f", where, l.Sign, ink)
					}
				}
				for _, s := range append(page.Strokes, page.Fills...) {
					if box := geometry.BoxOf(s.Points...).Grow(s.Width / 2); !within(box, inside) {
						t.Errorf("%s: something is drawn within %.1f, outside the margin", where, box)
					}
				}
				want := "100mm100mm"
				if plans[0].Job.Length == geometry.Inch {
					want += "4in4in"
				}
				if !sameLetters(bars.String(), want) {
					t.Errorf("%s: words smaller than %d points: %q, and only the bars' may be", where, least, bars.String())
				}
			}
		}
	}
}

// inked returns the part of a letter's box that ink may fill. MuPDF's box goes
// from the font's deepest tail to its highest accent: the room above capitals is
// left out, and a hair on the other sides. A letter that is turned, as on the bar
// up, has its top to the left.
func inked(l printtest.Letter) geometry.Box {
	const accents, hair = 0.2, 0.05
	b := l.Box.Grow(-hair)
	if l.Turned {
		b.Min.X += accents * (b.Max.X - b.Min.X)
	} else {
		b.Max.Y -= accents * (b.Max.Y - b.Min.Y)
	}
	return b
}

func within(a, b geometry.Box) bool {
	return a.Min.X >= b.Min.X && a.Min.Y >= b.Min.Y && a.Max.X <= b.Max.X && a.Max.Y <= b.Max.Y
}

func overlap(a, b geometry.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// meets reports whether a stroke comes into a box.
func meets(b geometry.Box, s printtest.TracedPath) bool {
	points := s.Points
	if s.Closed {
		points = append(slices.Clone(points), points[0])
	}
	for i := 1; i < len(points); i++ {
		if overlap(b, geometry.BoxOf(points[i-1], points[i]).Grow(s.Width/2)) {
			return true
		}
	}
	return false
}

func sameLetters(a, b string) bool {
	x, y := strings.Split(a, ""), strings.Split(b, "")
	slices.Sort(x)
	slices.Sort(y)
	return slices.Equal(x, y)
}

// The same job makes the same bytes, and the file asks not to be scaled.
func TestSheetPDF(t *testing.T) {
	plans := plansOf(t, ringsJob)
	a, b := pdfOf(t, newSheet(t, plans, "")), pdfOf(t, newSheet(t, plans, ""))
	if !bytes.Equal(a, b) {
		t.Error("two files of one job differ")
	}
	if !bytes.Contains(a, []byte("/PrintScaling/None")) {
		t.Error("the file does not ask to be printed as it is")
	}
	for i, page := range printtest.Trace(t, a) {
		across, up := 0, 0
		for _, s := range page.Strokes {
			a, b := s.Points[0], s.Points[len(s.Points)-1]
			if len(s.Points) == 2 && math.Abs(s.Length()-100) < 0.01 {
				if math.Abs(a.Y-b.Y) < 0.01 {
					across++
				} else if math.Abs(a.X-b.X) < 0.01 {
					up++
				}
			}
		}
		if across != 1 || up != 1 {
			t.Errorf("page %d has %d bars of 100 mm across and %d up", i+1, across, up)
		}
	}
}

// Printed in greys, there is ink on every page, in the picture in many greys, and
// none in the margin.
func TestSheetInGrey(t *testing.T) {
	pdf := pdfOf(t, sheetOf(t, plansOf(t, ringsJob), ""))
	shown := printtest.PopplerPicture(t, pdf, 1, 75)
	greys := map[uint8]int{}
	for _, dot := range shown.Image.Pix {
		greys[dot]++
	}
	if len(greys) < 40 {
		t.Errorf("only %d greys in the picture", len(greys))
	}
	bounds := shown.Image.Bounds()
	const edge = 16 // dots: 5.4 mm
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			inside := x >= edge && x < bounds.Max.X-edge && y >= edge && y < bounds.Max.Y-edge
			if !inside && shown.Image.GrayAt(x, y).Y < 200 {
				t.Fatalf("ink at dot (%d, %d), in the margin", x, y)
			}
		}
	}
}
