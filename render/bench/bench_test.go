package bench

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render"
	"roundlay/render/drawing"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// ringsJob has a gang wheel, a finding, a blank out of round, cuts that run on
// from repeat to repeat, and odd and even repeats that differ. Its names are as
// long as they come.
const ringsJob = `title = "A trial of all that a bench sheet has to tell, in a title that is far too long for its line"
length = "mm"
[blank]
name = "the third glass from the left, with a seed in its foot"
floor = 14
station = [{height=0, across=[70, 71.5], wall=8}, {height=100, across=80, wall=3}]
[[wheel]]
name = "three lines"
edge = "gang"
across = 100
thick = 12
angle = 90
mitres = 3
spacing = 3
[[wheel]]
name = "a mitre with a long name, dressed last week, to be used up"
edge = "mitre"
across = 80
thick = 6
angle = 90
tip = 0.2
[shop]
rate = 40
finish = "felt"
[layout]
repeats = 4
[[motif]]
kind = "ring"
wheel = "three lines"
depth = 0.6
at = [0, 0.1]
height = 0.1
[[motif]]
kind = "leaf"
wheel = "a mitre with a long name, dressed last week, to be used up"
depth = 0.5
at = [0, 0.6]
width = 0.8
height = 0.6
fronds = 14
on = "odd"
`

// setJob is twelve blanks with thirty cuts to a repeat, in inches.
func setJob() string {
	var b strings.Builder
	b.WriteString("title = \"Twelve for a long table\"\nlength = \"in\"\n")
	for i := range 12 {
		fmt.Fprintf(&b, "[[blank]]\nname = \"no. %d\"\nfloor = \"1/2\"\nstation = [{height=0, across=%.2f, wall=\"3/8\"}, {height=%.2f, across=%.2f, wall=\"5/64\"}]\n",
			i+1, 2.5+0.01*float64(i%5), 3.8+0.02*float64(i%7), 3+0.01*float64(i%4))
	}
	b.WriteString(`
[[wheel]]
name = "small mitre"
edge = "mitre"
across = 3
thick = "1/4"
angle = 90
[[wheel]]
name = "wide mitre"
edge = "mitre"
across = 4
thick = "3/8"
angle = 120
[layout]
repeats = 5
[[motif]]
kind = "leaf"
wheel = "small mitre"
depth = "1/32"
at = [0, 0.62]
width = 0.68
height = 0.7
fronds = 10
[[motif]]
kind = "fan"
wheel = "wide mitre"
depth = "1/64"
at = [0, 0.12]
width = 0.9
height = 0.2
rays = 9
`)
	return b.String()
}

func plansOf(t testing.TB, text string) []*pattern.Plan {
	t.Helper()
	j, err := job.Read("trial", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	plans, err := pattern.Lay(j, j.Blanks...)
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// trials are jobs whose sheets are looked at.
func trials(t testing.TB) map[string][]*pattern.Plan {
	t.Helper()
	_, demo := job.Demo()
	all := map[string][]*pattern.Plan{
		"demo": plansOf(t, string(demo)), "rings": plansOf(t, ringsJob), "set": plansOf(t, setJob()),
	}
	for _, name := range []string{"quilted-highball", "trellis-beaker"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "gallery", name+".toml"))
		if err != nil {
			t.Fatal(err)
		}
		all[name] = plansOf(t, string(text))
	}
	return all
}

func sheetOf(t testing.TB, plans []*pattern.Plan, paper string) *Sheet {
	t.Helper()
	o := render.DefaultOptions(plans[0].Job.Length)
	if paper != "" {
		var err error
		if o.Paper, err = render.ParsePaper(paper); err != nil {
			t.Fatal(err)
		}
	}
	s, err := New(plans, o, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func pdfOf(t testing.TB, s *Sheet) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := s.PDF(&file); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

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

// ticks returns the words beside the boxes to tick of a page, as they are read.
func ticks(page printing.Page) []string {
	var found []string
	for _, m := range page.Drawing.On(drawing.Marks) {
		s, ok := m.(drawing.Stroke)
		if !ok || !s.Closed {
			continue
		}
		box := geometry.BoxOf(s.Points...)
		for _, m := range page.Drawing.On(drawing.Notes) {
			if text, ok := m.(drawing.Text); ok && text.At.Y > box.Min.Y && text.At.Y < box.Max.Y &&
				text.At.X > box.Max.X && text.At.X < box.Max.X+2 {
				found = append(found, text.Words)
			}
		}
	}
	return found
}

// Every cut of every blank has one box to tick with its own number, and they
// come in the order to cut them.
func TestEveryCutHasItsBox(t *testing.T) {
	for name, plans := range trials(t) {
		s := sheetOf(t, plans, "")
		for _, p := range plans {
			var got, want []string
			for _, page := range s.Pages {
				if strings.HasPrefix(page.Label, p.Blank.Name+" ") {
					got = append(got, ticks(page)...)
				}
			}
			for _, id := range p.Sequence() {
				want = append(want, fmt.Sprint(id))
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s, %s: boxes %v, the order is %v", name, p.Blank.Name, got, want)
			}
		}
	}
}

// said returns all that a page says.
func said(page printing.Page) string {
	var all []string
	for _, m := range page.Drawing.On(drawing.Notes) {
		if text, ok := m.(drawing.Text); ok {
			all = append(all, text.Words)
		}
	}
	return strings.Join(all, " ")
}

func allWords(s *Sheet) string {
	var all []string
	for _, p := range s.Pages {
		all = append(all, said(p))
	}
	return strings.Join(all, " ")
}

// A ring round a straight glass 80 mm across is π × 80 = 251.3 mm of groove, in
// four cuts of 62.8 mm each. At 25 mm a minute that is 10 minutes.
func TestSheetByHand(t *testing.T) {
	s := sheetOf(t, plansOf(t, `title = "One ring"
length = "mm"
[blank]
name = "straight"
floor = 10
station = [{height=0, across=80, wall=5}, {height=100, across=80, wall=5}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 6
angle = 90
[shop]
rate = 25
[layout]
repeats = 4
[[motif]]
kind = "ring"
wheel = "mitre"
depth = 0.5
at = [0, 0.5]
width = 1
height = 0.2
rings = 1
lines = 1
`), "")
	text := allWords(s)
	for _, want := range []string{
		"56.6 mm",                         // the chord of a quarter: 80 / √2
		"ring, drawn 62.8 0.50 1.00 4.50", // 90° at 0.5 mm deep is 1 mm wide along a cylinder's round, and leaves 4.5 of 5
		"goes on into the next: do not lift the wheel there",
		"4 cuts, 0.25 m of groove, 10 minutes",
		"Mitre of 90°, 100.0 mm across, 6.0 mm thick",
		"Checked: nothing is crowded",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q:\n%s", want, text)
		}
	}
	if len(s.Pages) != 2 {
		t.Errorf("%d pages, want one for the blank and one for the bench", len(s.Pages))
	}
}

// Two pages a blank will do for thirty cuts to a repeat.
func TestPagesToABlank(t *testing.T) {
	plans := plansOf(t, setJob())
	if n := len(plans[0].Cuts); n < 30 {
		t.Fatalf("%d cuts to a repeat", n)
	}
	for _, paper := range []string{"letter", "a4"} {
		if got := len(sheetOf(t, plans, paper).Pages); got > 2*12+3 {
			t.Errorf("%s: %d pages for twelve blanks", paper, got)
		}
	}
}

// Each finish tells what it asks of lands, rim and annealing, and the acid one
// where it is done.
func TestFinishes(t *testing.T) {
	for finish, wants := range map[string][]string{
		"as cut": {"Lands", "rim", "annealing"}, "felt": {"Lands", "Rim", "annealing", "wet"},
		"acid": {"licensed", "Never at this bench", "Lands", "Rim", "annealing"}, "reheat": {"Lands", "Rim", "anneal it again"},
		"undecided": {"Felt and compound", "licensed", "Reheating", "annealing"},
	} {
		text := allWords(sheetOf(t, plansOf(t, strings.Replace(ringsJob, `"felt"`, `"`+finish+`"`, 1)), ""))
		for _, want := range append(wants, "Wet, always", "Eye protection", "residual-current switch", "Annealed glass only",
			"not a promise of strength", "Local rules and qualified advice", "silver paint marker", "oil marker washes off") {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the sheet does not say %q", finish, want)
			}
		}
	}
}

// The cautions are on every page.
func TestCautionsOnEveryPage(t *testing.T) {
	for i, page := range sheetOf(t, plansOf(t, setJob()), "").Pages {
		for _, want := range []string{"wet", "eye protection", "Electricity", "annealed", "no promise of strength"} {
			if !strings.Contains(strings.ToLower(said(page)), strings.ToLower(want)) {
				t.Errorf("page %d does not say %q", i+1, want)
			}
		}
	}
}

// The set's page lists every blank, the one to practise on first.
func TestSetPage(t *testing.T) {
	plans := plansOf(t, setJob())
	s := sheetOf(t, plans, "")
	var want []string
	for _, standing := range pattern.Rank(plans) {
		want = append(want, standing.Member.Blank.Name)
	}
	if got := ticks(s.Pages[0]); !slices.Equal(got, want) {
		t.Errorf("the set's page lists %v, the ranking is %v", got, want)
	}
}

// The pages follow the order of the set's page, and none loses its blank's name to
// a long title.
func TestPagesAreNamedInOrder(t *testing.T) {
	plans := plansOf(t, strings.Replace(setJob(), "Twelve for a long table", strings.Repeat("Long title ", 9), 1))
	s := sheetOf(t, plans, "")
	var got, want []string
	for _, page := range s.Pages {
		name := strings.TrimRight(page.Label, "0123456789 ")
		if !strings.Contains(said(page), page.Label[:strings.LastIndex(page.Label, " ")]) && name != "set" && name != "bench" {
			t.Errorf("page %q does not say whose it is: %.80s", page.Label, said(page))
		}
		if strings.HasPrefix(page.Label, "no. ") && strings.HasSuffix(page.Label, " 1") {
			got = append(got, strings.TrimSuffix(page.Label, " 1"))
		}
	}
	for _, standing := range pattern.Rank(plans) {
		want = append(want, standing.Member.Blank.Name)
	}
	if !slices.Equal(got, want) {
		t.Errorf("pages of %v, the order is %v", got, want)
	}
}

// A row of more boxes than a page holds says once more what is cut where it goes
// on.
func TestLongRowsGoOn(t *testing.T) {
	s := sheetOf(t, plansOf(t, `title = "Many"
length = "mm"
[blank]
station = [{height=0, across=80, wall=5}, {height=100, across=80, wall=5}]
[limits]
reach = 0
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 6
angle = 90
[layout]
repeats = 48
[[motif]]
kind = "olives"
wheel = "mitre"
depth = 0.2
olives = 2
rows = 8
`), "")
	for i, page := range s.Pages[:len(s.Pages)-1] {
		if len(ticks(page)) > 0 && !strings.Contains(said(page), "olive, ") {
			t.Errorf("page %d has boxes and does not say what is cut: %.200s", i+1, said(page))
		}
	}
	if len(s.Pages) < 4 {
		t.Fatalf("only %d pages: no row goes on", len(s.Pages))
	}
}

// Where the job asks for an order of its own, nothing on the sheet says another.
func TestOverruledOrder(t *testing.T) {
	const rule = "Deep before shallow"
	if text := allWords(sheetOf(t, plansOf(t, ringsJob), "")); !strings.Contains(text, rule) || strings.Contains(text, "job's own") {
		t.Error("the sheet does not tell the rule of its order")
	}
	own := strings.Replace(ringsJob, "rate = 40", "rate = 40\norder = [\"three lines\"]", 1)
	if text := allWords(sheetOf(t, plansOf(t, own), "")); strings.Contains(text, rule) || !strings.Contains(text, "The order is the job's own") {
		t.Error("the sheet tells a rule that the job overrules")
	}
}

// What the check found is told with its cuts, its place and its cure.
func TestFindingsOnTheSheet(t *testing.T) {
	plans := plansOf(t, ringsJob)
	text := allWords(sheetOf(t, plans, ""))
	for _, g := range plans[0].Groups() {
		worst := g.Worst()
		for _, want := range append([]string{strings.ToUpper(g.Kind.String()), worst.Cure.Text}, fmt.Sprintf("cut %d", worst.Cuts[0])) {
			if !strings.Contains(text, want) {
				t.Errorf("the sheet does not say %q of finding %s", want, g.Letter)
			}
		}
	}
	if len(plans[0].Groups()) == 0 {
		t.Fatal("nothing is found")
	}
}

// The same job makes the same bytes, and the file asks not to be scaled.
func TestSheetPDF(t *testing.T) {
	plans := plansOf(t, ringsJob)
	a, b := pdfOf(t, sheetOf(t, plans, "")), pdfOf(t, sheetOf(t, plans, ""))
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

func TestSmallPaperIsRefused(t *testing.T) {
	plans := plansOf(t, ringsJob)
	o := render.DefaultOptions(geometry.Millimetre)
	o.Paper, _ = render.ParsePaper("120x180mm")
	if _, err := New(plans, o, nil); err == nil || !strings.Contains(err.Error(), "150.0 mm by 190.0 mm or more") {
		t.Errorf("paper of 120 by 180 mm: %v", err)
	}
}

// What the sheet of a set of twelve costs, beside the planning before it and as
// many pages with a single line on each.
func BenchmarkSetOfTwelve(b *testing.B) {
	text := setJob()
	plans := plansOf(b, text)
	o := render.DefaultOptions(plans[0].Job.Length)
	s := sheetOf(b, plans, "")
	b.Run("plan", func(b *testing.B) {
		for b.Loop() {
			plansOf(b, text)
		}
	})
	b.Run("wraps", func(b *testing.B) {
		for b.Loop() {
			for _, p := range plans {
				w, err := render.NewWrap(p, o)
				if err != nil {
					b.Fatal(err)
				}
				var file bytes.Buffer
				if err := w.PDF(&file); err != nil {
					b.Fatal(err)
				}
				if err := w.SVG(&file); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("sheet", func(b *testing.B) {
		for b.Loop() {
			pdfOf(b, sheetOf(b, plans, ""))
		}
	})
	b.Run("bound: as many all but empty pages", func(b *testing.B) {
		empty := *s
		empty.Pages = nil
		for _, p := range s.Pages {
			var d drawing.Drawing
			d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: 20, Y: 20}, Words: "page", Size: 12})
			empty.Pages = append(empty.Pages, printing.Page{Width: p.Width, Height: p.Height, Drawing: d})
		}
		for b.Loop() {
			pdfOf(b, &empty)
		}
	})
}
