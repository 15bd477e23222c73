package wrap

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// The glasses that paper is tried on, in millimetres: stations of height,
// diameter and wall.
const (
	// A straight glass whose wall tapers in one line, so that its inside is a cone.
	straightGlass = `{height=0, across=84, wall=8}, {height=120, across=84, wall=2}`
	// A taper: 1 in 12 a side.
	taperedGlass = `{height=0, across=70, wall=7}, {height=120, across=90, wall=2}`
	tallGlass    = `{height=0, across=90, wall=8}, {height=330, across=120, wall=5}`
	barrelGlass  = `{height=0, across=70, wall=6}, {height=25, across=80, wall=5}, {height=50, across=84, wall=4.5}, {height=75, across=80, wall=4}, {height=100, across=72, wall=3.2}`
	waistGlass   = `{height=0, across=80, wall=6}, {height=25, across=73, wall=5}, {height=50, across=70, wall=4.5}, {height=75, across=73, wall=4}, {height=100, across=80, wall=3.2}`
)

// leafJob returns a job with a leaf in each repeat of a glass.
func leafJob(stations string, repeats int) string {
	return fmt.Sprintf(`title = "Trial"
length = "mm"
[blank]
name = "glass"
floor = 16
station = [%s]
[limits]
reach = 0
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[layout]
repeats = %d
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 0.5
width = 0.6
height = 0.9
fronds = 6
`, stations, repeats)
}

// planOf returns a job's plan, which its tests share.
func planOf(t testing.TB, text string) *pattern.Plan {
	t.Helper()
	return printtest.Plan(t, text)
}

// demoPlan lays out the built-in demo.
func demoPlan(t testing.TB) *pattern.Plan {
	t.Helper()
	_, data := job.Demo()
	return planOf(t, string(data))
}

// knownWraps has the wraps that were drawn in this run of tests, by what was asked for.
var knownWraps sync.Map

type wrapOrder struct {
	plan    *pattern.Plan
	options Options
}

// wrapOf returns a plan's wrap, which its tests share: none changes it.
func wrapOf(t testing.TB, p *pattern.Plan, o Options) *Wrap {
	t.Helper()
	draw, _ := knownWraps.LoadOrStore(wrapOrder{p, o}, sync.OnceValues(func() (*Wrap, error) {
		return New(context.Background(), p, o)
	}))
	w, err := draw.(func() (*Wrap, error))()
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// on returns the options for a side and a paper.
func on(t testing.TB, side Side, paper string) Options {
	t.Helper()
	p, err := page.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	o := DefaultOptions(geometry.Millimetre)
	o.Side, o.Paper = side, p
	return o
}

// huge is paper that any wrap goes on in one piece.
const huge = "1400x900mm"

func pdfOf(t testing.TB, w *Wrap) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := w.PDF(&file); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

func svgOf(t testing.TB, w *Wrap) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := w.SVG(&file); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

// withPen returns the strokes of a page that were drawn with a line of a width,
// which separates cuts (0.45 mm), the paper's edges (0.3) and crosses (0.25).
func withPen(page printtest.TracedPage, width float64) []printtest.TracedPath {
	var found []printtest.TracedPath
	for _, s := range page.Strokes {
		if math.Abs(s.Width-width) < 0.005 {
			found = append(found, s)
		}
	}
	return found
}

// rolled is a one-piece wrap on a cone as it was traced, rolled up again by
// nothing but its own edges: its two ends, and where they would meet.
type rolled struct {
	left, right [2]geometry.Point // each from its lower to its upper end
}

// roll finds the two ends of a one-piece wrap: the edges that are straight and
// run up the page.
func roll(t testing.TB, page printtest.TracedPage) rolled {
	t.Helper()
	var ends [][2]geometry.Point
	for _, s := range withPen(page, edgePen().Width) {
		a, b := s.Points[0], s.Points[len(s.Points)-1]
		if len(s.Points) == 2 && s.Length() > 50 && math.Abs(b.Y-a.Y) > 10 { // a dish's all but lie level
			if a.Y > b.Y {
				a, b = b, a
			}
			ends = append(ends, [2]geometry.Point{a, b})
		}
	}
	if len(ends) != 2 {
		t.Fatalf("%d straight edges up the page, want the wrap's two ends", len(ends))
	}
	if ends[0][0].X > ends[1][0].X {
		ends[0], ends[1] = ends[1], ends[0]
	}
	return rolled{ends[0], ends[1]}
}

// apex returns where the ends meet; ok is false if they run side by side.
func (r rolled) apex() (apex geometry.Point, ok bool) {
	u, v := r2.Sub(r.left[1], r.left[0]), r2.Sub(r.right[1], r.right[0])
	cross := r2.Cross(u, v)
	if math.Abs(cross) < 1e-3 {
		return apex, false
	}
	return r2.Add(r.left[0], r2.Scale(r2.Cross(r2.Sub(r.right[0], r.left[0]), v)/cross, u)), true
}

// girth returns the length round the rolled wrap at a share of its height.
func (r rolled) girth(share float64) float64 {
	at := func(end [2]geometry.Point) geometry.Point {
		return r2.Add(end[0], r2.Scale(share, r2.Sub(end[1], end[0])))
	}
	a, b := at(r.left), at(r.right)
	apex, cone := r.apex()
	if !cone {
		return r2.Norm(r2.Sub(b, a))
	}
	return r2.Norm(r2.Sub(a, apex)) * r.opening(apex)
}

// opening returns the angle between the ends on paper.
func (r rolled) opening(apex geometry.Point) float64 {
	return angleBetween(r2.Sub(r.left[0], apex), r2.Sub(r.right[0], apex))
}

func angleBetween(a, b geometry.Point) float64 {
	return math.Abs(math.Atan2(r2.Cross(a, b), r2.Dot(a, b)))
}

// place returns where a place on paper comes to lie: which share of the turn on
// from the left end, and which share of the way up.
func (r rolled) place(p geometry.Point) (turn, up float64) {
	apex, cone := r.apex()
	if !cone {
		across, along := r2.Sub(r.right[0], r.left[0]), r2.Sub(r.left[1], r.left[0])
		off := r2.Sub(p, r.left[0])
		return r2.Dot(off, across) / r2.Norm2(across), r2.Dot(off, along) / r2.Norm2(along)
	}
	low, high := r2.Norm(r2.Sub(r.left[0], apex)), r2.Norm(r2.Sub(r.left[1], apex))
	turn = math.Atan2(r2.Cross(r2.Sub(p, apex), r2.Sub(r.left[0], apex)), r2.Dot(r2.Sub(p, apex), r2.Sub(r.left[0], apex)))
	if low > high {
		turn = -turn // the apex lies above
	}
	return turn / r.opening(apex), (r2.Norm(r2.Sub(p, apex)) - low) / (high - low)
}

// says reports whether words stand on a page, over the ends of lines.
func says(page printing.Page, words string) bool {
	var all []string
	for _, t := range textsOn(page) {
		all = append(all, t.Words)
	}
	return strings.Contains(strings.Join(all, " "), words)
}

func textsOn(page printing.Page) []drawing.Text {
	var all []drawing.Text
	for _, layer := range drawing.Layers() {
		for _, m := range page.Drawing.On(layer) {
			if text, ok := m.(drawing.Text); ok {
				all = append(all, text)
			}
		}
	}
	return all
}

// keptPicture checks that a picture that is kept is what is drawn now, or remakes
// it where ROUNDLAY_UPDATE is set.
func keptPicture(t *testing.T, path string, drawn []byte) {
	t.Helper()
	if os.Getenv("ROUNDLAY_UPDATE") != "" {
		if err := os.WriteFile(path, drawn, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(kept, drawn) {
		t.Errorf("%s is not what is drawn now; look, and remake it with ROUNDLAY_UPDATE=1", path)
	}
}
