package wrap

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/page"
	"roundlay/render/printtest"
)

// baseJob is a tumbler with a base of 60 mm in eight sectors under five repeats of its side.
const baseJob = `
title = "Under the foot"
length = "mm"
[blank]
name = "tumbler"
floor = 12
base = 60
hollow = [14, 1]
station = [{height=0, across=66, wall=8}, {height=98, across=78, wall=2.2}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 40
thick = 6
angle = 90
[layout]
repeats = 5
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.8
height = 0.4
[base]
repeats = 8
[[motif]]
kind = "fan"
rays = 1
hub = 0
face = "base"
wheel = "mitre"
depth = 1
`

func roundOf(t *testing.T, p *pattern.Plan, change func(*Options)) *Wrap {
	t.Helper()
	o := DefaultOptions(p.Job.Length)
	o.Side = Base
	if change != nil {
		change(&o)
	}
	w, err := New(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// circleIn returns the middle of the path of a page whose points all lie on one circle of a
// radius round it.
func circleIn(p printtest.TracedPage, radius float64) (middle geometry.Point, ok bool) {
	for _, path := range p.Strokes {
		for _, part := range path.Parts() {
			box := geometry.BoxOf(part...)
			width, height := box.Size()
			middle = geometry.Point{X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2}
			ok = len(part) > 60 && math.Abs(width-2*radius) < 0.01 && math.Abs(height-2*radius) < 0.01
			for _, q := range part {
				ok = ok && math.Abs(math.Hypot(q.X-middle.X, q.Y-middle.Y)-radius) < 0.005
			}
			if ok {
				return middle, true
			}
		}
	}
	return middle, false
}

// The paper as MuPDF sees it in the PDF: the circle of the base, those of the band and of the
// hollow, and ticks at the angles of the side's marks, from the top clockwise.
func TestRoundPaperTraced(t *testing.T) {
	p := printtest.Plan(t, baseJob)
	for _, name := range []string{"plain", "mirrored"} {
		w := roundOf(t, p, func(o *Options) { o.Mirror = name == "mirrored" })
		pages := printtest.Trace(t, pdfOf(t, w))
		if len(pages) != 1 {
			t.Fatalf("%d pages", len(pages))
		}
		middle, ok := circleIn(pages[0], 30)
		if !ok {
			t.Fatalf("%s: no circle of 60 mm across on the page", name)
		}
		found := map[int]bool{}
		for _, path := range pages[0].Strokes {
			for _, part := range path.Parts() {
				if len(part) != 2 {
					continue
				}
				out, in := polar(part[0], middle), polar(part[1], middle)
				if out.Y < in.Y {
					out, in = in, out
				}
				if math.Abs(out.Y-30) < 0.005 && math.Abs(in.Y-25) < 0.005 {
					turn := out.X
					if name == "mirrored" {
						turn = -turn
					}
					k := math.Round(turn / 72)
					if math.Abs(turn-72*k) > 0.02 { // 0.01 mm at the edge
						t.Errorf("%s: a tick at %.3f°", name, turn)
					}
					found[int(k+5)%5] = true
				}
			}
		}
		if len(found) != 5 {
			t.Errorf("%s: ticks %v, wanted five", name, found)
		}
	}
}

// Printed again with what a ruler said of a printer that is not true, the paper is drawn so that
// it comes out round: what MuPDF sees is out by just as much.
func TestRoundPaperCorrected(t *testing.T) {
	p := printtest.Plan(t, baseJob)
	w := roundOf(t, p, func(o *Options) { o.Printed = page.Printed{Short: 99.2, Long: 100.4} })
	box := geometry.EmptyBox()
	for _, path := range printtest.Trace(t, pdfOf(t, w))[0].Strokes {
		for _, part := range path.Parts() {
			if len(part) > 100 && box.Empty() { // the paper's outline is drawn first
				box = geometry.BoxOf(part...)
			}
		}
	}
	width, height := box.Size()
	if math.Abs(width*0.992-60) > 0.01 || math.Abs(height*1.004-60) > 0.01 {
		t.Errorf("it comes out %.3f by %.3f mm, wanted 60", width*0.992, height*1.004)
	}
}

// polar returns the angle of a place from the top of a circle clockwise, in degrees, and how
// far it is from the middle.
func polar(q, middle geometry.Point) geometry.Point {
	x, y := q.X-middle.X, q.Y-middle.Y
	return geometry.Point{X: math.Atan2(x, y) * 180 / math.Pi, Y: math.Hypot(x, y)}
}

// Each ray lies on the middle line of its sector, as long as it is cut, and its name is that in
// the lists.
func TestRoundPaperCuts(t *testing.T) {
	p := printtest.Plan(t, baseJob)
	var svg bytes.Buffer
	if err := roundOf(t, p, nil).SVG(&svg); err != nil {
		t.Fatal(err)
	}
	text := svg.String()
	for i := range 8 {
		if id := fmt.Sprintf(`id="cut-%d"`, p.Totals().Cuts+i+1); !strings.Contains(text, id) {
			t.Errorf("no %s", id)
		}
	}
	for _, group := range []string{"paper", "marks", "cuts", "footprints", "check-bars", "notes"} {
		if !strings.Contains(text, `id="`+group+`"`) {
			t.Errorf("no layer %s", group)
		}
	}
}

// A base that is wider than the paper comes in pieces, whose match lines and crosses lie
// together: the same places of the base on both.
func TestRoundPaperInPieces(t *testing.T) {
	wide := strings.NewReplacer("base = 60", "base = 240", "across=66", "across=250", "across=78", "across=260").Replace(baseJob)
	p := printtest.Plan(t, wide)
	w := roundOf(t, p, func(o *Options) { o.Paper, _ = page.ParsePaper("a4") })
	if len(w.Pages) < 2 {
		t.Fatalf("%d pages for 240 mm on A4", len(w.Pages))
	}
	pages := printtest.Trace(t, pdfOf(t, w))
	tiles, whole := 0, 0
	for _, one := range pages {
		if _, ok := circleIn(one, 120); ok {
			whole++
		}
		for _, path := range one.Strokes {
			for _, part := range path.Parts() {
				// What there is of the circle has its radius.
				if n := len(part); n > 100 {
					tiles++
					if r := through(part[0], part[n/2], part[n-1]); math.Abs(r-120) > 0.05 {
						t.Errorf("an arc of %g mm radius", r)
					}
				}
			}
		}
	}
	if whole > 0 || tiles < 2 {
		t.Errorf("%d whole circles, %d arcs", whole, tiles)
	}
}

// through returns the radius of the circle through three points.
func through(a, b, c geometry.Point) float64 {
	ab, bc, ca := math.Hypot(a.X-b.X, a.Y-b.Y), math.Hypot(b.X-c.X, b.Y-c.Y), math.Hypot(c.X-a.X, c.Y-a.Y)
	area := math.Abs((b.X-a.X)*(c.Y-a.Y)-(c.X-a.X)*(b.Y-a.Y)) / 2
	return ab * bc * ca / (4 * area)
}

// A job without a base has no paper for it.
func TestNoRoundPaper(t *testing.T) {
	text, _, _ := strings.Cut(baseJob, "[base]")
	p := printtest.Plan(t, text)
	o := DefaultOptions(p.Job.Length)
	o.Side = Base
	if _, err := New(context.Background(), p, o); err == nil || !strings.Contains(err.Error(), "[base]") {
		t.Errorf("%v", err)
	}
}

// Eight sectors step a circle of 2 mm radius by 2 × 2 × sin 22.5° = 1.53 mm. No dividers hold
// that: the paper says so in place of a setting, and gives those of the larger circles.
func TestRoundPaperWithoutSetting(t *testing.T) {
	p := printtest.Plan(t, strings.Replace(baseJob, "[base]", "[base]\nband = [2, 27]", 1))
	drawn := roundOf(t, p, nil).Pages[0]
	for _, words := range []string{"Base band inside, 2.0 mm from the middle, 4.0 mm across: no setting: steps of 1.53 mm", "54.0 mm across: set 20.7 mm"} {
		if !says(drawn, words) {
			t.Errorf("the page does not say %q:\n%s", words, wordsOf(drawn.Drawing))
		}
	}
}
