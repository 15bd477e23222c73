package wrap

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// printed is a page of some wrap, with what it takes to know it.
type printed struct {
	name   string
	number int // of the page, from 1
	page   printing.Page
	unit   geometry.Unit
	by     page.Printed
	test   bool // whether it is the test page
}

// everyPage returns every page of every side on every paper, and of glasses and
// printers that make other pages.
func everyPage(t *testing.T) []printed {
	t.Helper()
	var all []printed
	add := func(name string, p *pattern.Plan, o Options) {
		for i, page := range wrapOf(t, p, o).Pages {
			all = append(all, printed{fmt.Sprintf("%s, page %d", name, i+1), i + 1, page, p.Job.Length, o.Printed, false})
		}
	}
	demo := demoPlan(t)
	sheets := []string{"150x150mm", "13x19in"}
	for _, p := range page.Papers() {
		sheets = append(sheets, p.Name)
	}
	for _, sheet := range sheets {
		for side := range WallSides() {
			add(fmt.Sprintf("demo, %s, %s", Side(side), sheet), demo, on(t, Side(side), sheet))
		}
		test, err := NewTestPage(context.Background(), demo, on(t, Outside, sheet))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, printed{"test page, " + sheet, 1, test.Pages[0], demo.Job.Length, page.TruePrinter(), true})
	}
	for _, glass := range []struct{ name, stations string }{{"tall", tallGlass}, {"barrel", barrelGlass}, {"waist", waistGlass}} {
		p := planOf(t, leafJob(glass.stations, 5))
		for side := range WallSides() {
			add(fmt.Sprintf("%s, %s", glass.name, Side(side)), p, on(t, Side(side), "a4"))
		}
	}
	for name, text := range map[string]string{"foot": bandJob(footGlass, 20, 92, "floor = 16"),
		"lip": bandJob(lipGlass, 20, 85, "floor = 16"), "bowl": bandJob(bowlGlass, 70, 110, "floor = 58\npaper = [60, \"rim\"]"), "crowded": crowdedJob(), "swags": swagJob(taperedGlass, 6), "crowded barrel": crowdedBarrel()} {
		for side := range WallSides() {
			add(fmt.Sprintf("%s, %s", name, Side(side)), planOf(t, text), on(t, Side(side), "a4"))
		}
	}
	for _, by := range []page.Printed{{Short: 98, Long: 101.5}, {Short: 104.9, Long: 95.1}, {Short: 100, Long: 97.3}} {
		for side := range WallSides() {
			o := on(t, Side(side), "letter")
			o.Printed = by
			add(fmt.Sprintf("demo, %s, printed %v", Side(side), by), demo, o)
		}
	}
	return all
}

func inOnePDF(t *testing.T, all []printed) []byte {
	t.Helper()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	pages := make([]printing.Page, len(all))
	for i, p := range all {
		pages[i] = p.page
	}
	var file bytes.Buffer
	if err := printing.PDF(&file, "every page", pages, letters); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

// Every page: nothing on it is cut off or overprinted, and its bars are true as
// MuPDF traces them, in the file as it is and after Ghostscript has taken it
// apart and written it anew.
func TestEveryPage(t *testing.T) {
	t.Parallel()
	all := everyPage(t)
	t.Run("clear", func(t *testing.T) {
		t.Parallel()
		checkClear(t, all)
	})
	file := inOnePDF(t, all)
	t.Logf("%d pages", len(all))
	t.Run("MuPDF", func(t *testing.T) {
		t.Parallel()
		checkBars(t, all, printtest.Trace(t, file))
	})
	// Ghostscript takes its time: the demo's first page, each side on each paper.
	var first []printed
	for _, p := range all {
		if p.number == 1 && !p.test && strings.HasPrefix(p.name, "demo") {
			first = append(first, p)
		}
	}
	t.Run("Ghostscript", func(t *testing.T) {
		t.Parallel()
		gs := printtest.Program(t, "gs")
		anew := filepath.Join(t.TempDir(), "anew.pdf")
		printtest.Run(t, gs, "-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pdfwrite", "-sOutputFile="+anew,
			printtest.File(t, "first.pdf", inOnePDF(t, first)))
		data, err := os.ReadFile(anew)
		if err != nil {
			t.Fatal(err)
		}
		checkBars(t, first, printtest.Trace(t, data))
	})
}

func checkBars(t *testing.T, all []printed, pages []printtest.TracedPage) {
	t.Helper()
	if len(pages) != len(all) {
		t.Fatalf("%d pages, want %d", len(pages), len(all))
	}
	var worst float64
	for i, p := range all {
		// The printer errs along the sides of the sheet, which it turns to a page.
		across, up := p.by.Short/100, p.by.Long/100
		if pages[i].Width > pages[i].Height {
			across, up = up, across
		}
		for _, bar := range page.CheckBars(p.unit) {
			scale := across
			if bar.Up {
				scale = up
			}
			// What the printer makes of the stroke in the file.
			length, ok := barOn(pages[i], bar, bar.Length/scale)
			if off := math.Abs(length*scale - bar.Length); !ok || off > 0.01 {
				t.Errorf("%s: the bar %s, up %v, comes out %.3f mm long", p.name, bar.Label, bar.Up, length*scale)
			} else {
				worst = max(worst, off)
			}
		}
	}
	t.Logf("worst %.4f mm", worst)
}

// barOn returns the length of the stroke nearest to a length among those that
// are drawn with the bars' pen and run their way.
func barOn(page printtest.TracedPage, bar page.Bar, near float64) (length float64, ok bool) {
	for _, s := range withPen(page, barWidth) {
		d := r2.Sub(s.Points[len(s.Points)-1], s.Points[0])
		if bar.Up {
			d.X, d.Y = d.Y, d.X
		}
		if len(s.Points) == 2 && math.Abs(d.Y) < 0.01 && math.Abs(d.X) > 90 && math.Abs(d.X) < 110 &&
			(!ok || math.Abs(s.Length()-near) < math.Abs(length-near)) {
			length, ok = s.Length(), true
		}
	}
	return length, ok
}

// The bars as programs show them, of one page for each side: to a dot.
func TestBarsAreTrueAsShown(t *testing.T) {
	t.Parallel()
	demo := demoPlan(t)
	place := on(t, Outside, "letter").Portrait().Bar // the same whichever side and way the page lies
	var browsed []printtest.Sized
	for side := range WallSides() {
		w := wrapOf(t, demo, on(t, Side(side), "letter"))
		pdf, svg := pdfOf(t, w), svgOf(t, w)
		browsed = append(browsed, printtest.Sized{SVG: svg, Width: w.Whole.Width, Height: w.Whole.Height})
		type shown struct {
			name    string
			height  float64
			picture func(t *testing.T) printtest.Picture
		}
		shows := []shown{
			{"poppler at 600", w.Pages[0].Height, func(t *testing.T) printtest.Picture { return printtest.PopplerPicture(t, pdf, 1, 600) }},
			{"librsvg at 300", w.Whole.Height, func(t *testing.T) printtest.Picture { return printtest.LibrsvgPicture(t, svg, 300) }},
		}
		if Side(side) == Outside { // other sides differ in nothing that these could show
			shows = append(shows, shown{"MuPDF at 300", w.Pages[0].Height, func(t *testing.T) printtest.Picture {
				return printtest.MuPDFPicture(t, pdf, 1, 300)
			}}, shown{"our own at 300", w.Pages[0].Height, func(t *testing.T) printtest.Picture {
				var png bytes.Buffer
				if err := w.PagePNG(&png, 1, 300); err != nil {
					t.Fatal(err)
				}
				return printtest.Decode(t, png.Bytes(), 300)
			}},
				shown{"the printing system at 600", w.Pages[0].Height, func(t *testing.T) printtest.Picture {
					return uprightAgain(printtest.Spooled(t, pdf), w.Pages[0].Width)
				}})
		}
		for _, show := range shows {
			t.Run(Side(side).String()+"/"+show.name, func(t *testing.T) {
				t.Parallel()
				ticks(t, show.picture(t), page.CheckBars(geometry.Inch), place, show.height)
			})
		}
	}
	t.Run("a browser", func(t *testing.T) {
		t.Parallel()
		for side, picture := range printtest.BrowserPictures(t, browsed) {
			t.Run(Side(side).String(), func(t *testing.T) {
				ticks(t, picture, page.CheckBars(geometry.Inch), place, browsed[side].Height)
			})
		}
	})
}

// uprightAgain turns a page back that was put on its side to go with the paper.
func uprightAgain(p printtest.Picture, width float64) printtest.Picture {
	if across, _ := p.Size(); math.Abs(across-width) > 1 {
		return p.Turned()
	}
	return p
}

// What the bars are drawn with, in millimetres: their pen, and how tall the ticks
// between and at the ends stand.
const barWidth, stepTick, endTick = 0.2, 1.5, 3.0

// ticks checks that the ticks at both ends of each bar lie as far apart as it is
// long, to a dot, where the page puts them.
func ticks(t *testing.T, picture printtest.Picture, bars []page.Bar, place func(page.Bar) geometry.Point, height float64) {
	t.Helper()
	dot := geometry.MillimetresPerInch / picture.DotsPerInch
	for _, bar := range bars {
		corner := place(bar)
		// Between the tips of the long ticks and of the short ones.
		tick := func(along float64) geometry.Point {
			area := geometry.BoxOf(bar.Place(corner, along-0.8, stepTick+0.3), bar.Place(corner, along+0.8, endTick-0.3))
			ink, middle := picture.Ink(area, height)
			if ink < barWidth/2 {
				t.Fatalf("%s, up %v: no tick at %v mm", bar.Label, bar.Up, along)
			}
			return middle
		}
		start, end := tick(0), tick(bar.Length)
		if length := r2.Norm(r2.Sub(end, start)); math.Abs(length-bar.Length) > dot {
			t.Errorf("%s, up %v: %.3f mm from tick to tick, %.2f dots off", bar.Label, bar.Up, length, (length-bar.Length)/dot)
		}
		from := bar.Place(corner, 0, (stepTick+endTick)/2)
		if off := r2.Norm(r2.Sub(start, from)); off > 1.5*dot {
			t.Errorf("%s, up %v: begins %.2f dots from its place", bar.Label, bar.Up, off/dot)
		}
	}
}
