package bench

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/report"
)

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

// Every cut of every blank has one box to tick with its own number, or the line
// that it is of has one with its numbers, and they come in the order to cut them.
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
			for _, pass := range p.Order() {
				for _, c := range pass.Chains {
					for turns := range c.Times {
						want = append(want, report.Line(p.Copy(c, turns), c.Closed))
					}
				}
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

// A heading of the cut list, and what is said under it, stands on the page of the first wheel,
// wherever the page ends.
func TestHeadingsStayWithTheirWheel(t *testing.T) {
	text, err := os.ReadFile("../../testdata/gallery/star-footed-tumbler.toml")
	if err != nil {
		t.Fatal(err)
	}
	plans := plansOf(t, string(text))
	for height := 240; height < 300; height += 6 {
		found := 0
		for i, p := range newSheet(t, plans, fmt.Sprintf("210x%d mm", height)).Pages {
			for _, heading := range []string{"3 Cut, and tick", "6 Cut the base, and tick"} {
				if _, below, ok := strings.Cut(said(p), heading); ok {
					found++
					if !strings.Contains(below, "Wheel 1 of") {
						t.Errorf("on paper %d mm high, page %d ends with %q", height, i+1, heading)
					}
				}
			}
		}
		if found != 2 {
			t.Errorf("on paper %d mm high there are %d headings", height, found)
		}
	}
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
		"56.6 mm",                          // the chord of a quarter: 80 / √2
		"ring, drawn 251.3 0.50 1.00 4.50", // all round, 80π; 90° at 0.5 mm deep is 1 mm wide along a cylinder's round, and leaves 4.5 of 5
		"1→2→3→4→1", "each box one line from repeat to repeat: do not lift the wheel in it",
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

// Each finish says what it asks of lands, rim and annealing, and the acid one
// where it is done.
func TestFinishes(t *testing.T) {
	for finish, wants := range map[string][]string{
		"as cut": {"Lands", "rim", "annealing"}, "felt": {"Lands", "Rim", "annealing", "wet"},
		"acid": {"licensed", "Never at this bench", "Lands", "Rim", "annealing"}, "reheat": {"Lands", "Rim", "anneal it again"},
		"undecided": {"Felt and compound", "licensed", "Reheating", "annealing"},
	} {
		text := allWords(newSheet(t, retold(t, plansOf(t, ringsJob), strings.Replace(ringsJob, `"felt"`, `"`+finish+`"`, 1)), ""))
		for _, want := range append(wants, "Wet, always", "Eye protection", "residual-current switch", "Annealed glass only",
			"not a promise of strength", "Local rules and qualified advice", "silver paint marker", "oil marker washes off") {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the sheet does not say %q", finish, want)
			}
		}
	}
}

// Pages are numbered through the file: that of the set, those of its blanks, and the last.
func TestPagesAreNumberedThrough(t *testing.T) {
	pages := sheetOf(t, plansOf(t, setJob()), "").Pages
	for i, page := range pages {
		if want := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(said(page), want) {
			t.Errorf("page %d of %d does not say %q", i+1, len(pages), want)
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
	plans := retold(t, plansOf(t, setJob()), strings.Replace(setJob(), "Twelve for a long table", strings.Repeat("Long title ", 9), 1))
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
		t.Error("the sheet does not say the rule of its order")
	}
	own := strings.Replace(ringsJob, "rate = 40", "rate = 40\norder = [\"three lines\"]", 1)
	if text := allWords(newSheet(t, retold(t, plansOf(t, ringsJob), own), "")); strings.Contains(text, rule) || !strings.Contains(text, "The order is the job's own") {
		t.Error("the sheet says a rule that the job overrules")
	}
}

// What the check found is listed with its cuts, its place and its cure.
func TestFindingsOnTheSheet(t *testing.T) {
	plans := plansOf(t, ringsJob)
	text := allWords(sheetOf(t, plans, ""))
	for _, g := range plans[0].Groups() {
		worst := g.Worst()
		for _, want := range append([]string{strings.ToUpper(g.Kind.String()), "Cure: " + report.Cure(plans[0], worst)}, fmt.Sprintf("cut %d", worst.Cuts[0])) {
			if !strings.Contains(text, want) {
				t.Errorf("the sheet does not say %q of finding %s", want, g.Letter)
			}
		}
	}
	if len(plans[0].Groups()) == 0 {
		t.Fatal("nothing is found")
	}
}

func TestSmallPaperIsRefused(t *testing.T) {
	plans := plansOf(t, ringsJob)
	o := page.DefaultOptions(geometry.Millimetre)
	o.Paper, _ = page.ParsePaper("120x180mm")
	if _, err := New(context.Background(), plans, o, nil); err == nil || !strings.Contains(err.Error(), "150.0 mm by 190.0 mm or more") {
		t.Errorf("paper of 120 by 180 mm: %v", err)
	}
}
