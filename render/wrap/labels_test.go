package wrap

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// swagJob returns a job whose cuts fill the glass up to the band's ends: leaves,
// arcs hung from one another above them, and a ring at the foot.
func swagJob(stations string, repeats int) string {
	return strings.Replace(leafJob(stations, repeats), "height = 0.9\n", "height = 0.7\nat = [0, 0.41]\n", 1) + `[[motif]]
kind = "swag"
wheel = "mitre"
depth = 0.5
at = [0, 0.9]
width = 1
height = 0.16
rows = 2
[[motif]]
kind = "ring"
wheel = "mitre"
depth = 0.5
at = [0, 0.02]
width = 1
height = 0.05
rings = 1
lines = 1
`
}

func sheetOf(t testing.TB, text string, o Options) *facePaper {
	t.Helper()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	s, err := newFacePaper(planOf(t, text), o, letters)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// hidden checks that nothing written on a page stands on a line to be cut: no
// words, and no white ground of theirs.
func hidden(t *testing.T, p printed, letters *lettering.Letters) {
	t.Helper()
	var cuts []geometry.Outline
	for _, m := range p.page.Drawing.On(drawing.Cuts) {
		line := drawing.Thinned(m.(drawing.Stroke).Points, 0.02)
		for i := 1; i < len(line); i++ {
			cuts = append(cuts, geometry.NewOutline(line[i-1:i+1:i+1]))
		}
	}
	check := func(what string, o geometry.Outline, air float64) {
		for _, cut := range cuts {
			if off, at, _ := o.Distance(cut, air); off < air {
				t.Errorf("%s: %s lies on a cut at %.1f", p.name, what, at)
				return
			}
		}
	}
	for _, layer := range []drawing.Layer{drawing.Findings, drawing.Notes} {
		for _, m := range p.page.Drawing.On(layer) {
			switch m := m.(type) {
			case drawing.Fill:
				if m.Ink == drawing.White {
					check("a white ground", geometry.NewOutline(m.Points), cutPen().Width/2)
				}
			case drawing.Text:
				check(fmt.Sprintf("%q", m.Words), inked(letters, m), 0.01)
			}
		}
	}
}

// wordsOf returns the words of a drawing.
func wordsOf(d drawing.Drawing) []string {
	var all []string
	for _, layer := range []drawing.Layer{drawing.Findings, drawing.Notes} {
		for _, m := range d.On(layer) {
			if text, ok := m.(drawing.Text); ok {
				all = append(all, text.Words)
			}
		}
	}
	return all
}

// A patch is one repeat: its middle is the repeat's, the whole motif lies on it,
// no gore's edge runs up the middle, and it bears the words of any other paper.
func TestPatchesHoldOneRepeat(t *testing.T) {
	for name, text := range map[string]string{
		"straight": leafJob(straightGlass, 6), "tapered": swagJob(taperedGlass, 6),
		"barrel, 2 gores": leafJob(barrelGlass, 8), "barrel, 3 gores": leafJob(barrelGlass, 5),
	} {
		s := sheetOf(t, text, on(t, Patches, "a4"))
		papers := s.papers()
		if len(papers) != s.plan.Repeats {
			t.Fatalf("%s: %d papers for %d repeats", name, len(papers), s.plan.Repeats)
		}
		if s.curved && s.gores.PerRepeat%2 == 0 {
			t.Errorf("%s: %d gores part each patch up its middle", name, s.gores.PerRepeat)
		}
		if worst := s.gores.Worst(); worst > geometry.MillimetresPerInch/64 {
			t.Errorf("%s: gores are %.3f mm out", name, worst)
		}
		for i, p := range papers {
			if off := math.Remainder(p.middle()-float64(i)*s.plan.PitchAngle(), 2*math.Pi); math.Abs(off) > 1e-9 {
				t.Errorf("%s: patch %d has its middle %.2f° from its repeat's", name, i+1, off*180/math.Pi)
			}
			words := wordsOf(s.draw(p))
			for _, want := range []string{"rim", fmt.Sprintf("patch %d", i+1), "band top", "band foot", "glass"} {
				if !slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, want) }) {
					t.Errorf("%s: patch %d does not say %q", name, i+1, want)
				}
			}
		}
	}
}

// A motif that lies across the repeat's edge is not parted there either.
func TestPatchesKeepMotifsWhole(t *testing.T) {
	text := strings.Replace(leafJob(taperedGlass, 6), "width = 0.6\n", "width = 0.6\nat = [0.5, 0.5]\n", 1)
	s := sheetOf(t, text, on(t, Patches, "a4"))
	if n := extentsOf(s.plan, 0).severed(s.seam); n > 0 {
		t.Errorf("the patches' edges part %v cuts", n)
	}
}

// Each paper that is cut out says whose it is, and whether it goes inside; each
// piece of one does as well.
func TestEveryPaperBearsItsName(t *testing.T) {
	const name = "Thin Lizzie of the set"
	named := func(text string) string { return strings.Replace(text, `name = "glass"`, `name = "`+name+`"`, 1) }
	for what, text := range map[string]string{
		"straight": leafJob(straightGlass, 5), "swags": swagJob(taperedGlass, 6), "tall": leafJob(tallGlass, 5),
		"barrel": leafJob(barrelGlass, 8), "waist": leafJob(waistGlass, 5), "crowded": crowdedJob(),
	} {
		for side := range WallSides() {
			o := on(t, Side(side), "a4")
			s := sheetOf(t, named(text), o)
			l, ok := composer{s, o, page.NewFrame(s.letters, s.plan.Job.Length)}.layout()
			if !ok {
				t.Fatal("no layout")
			}
			for _, pieces := range l.pieces {
				for _, p := range pieces {
					words := wordsOf(s.draw(p))
					whole := strings.Join(words, " ")
					if !strings.Contains(whole, name) {
						t.Errorf("%s, %v, paper %d, piece %d does not say whose it is: %q", what, s.side, p.paper, p.number, whole)
					}
					if strings.Contains(whole, "inside") != (s.side == Inside) {
						t.Errorf("%s, %v, paper %d, piece %d: is it for the inside? %q", what, s.side, p.paper, p.number, whole)
					}
				}
			}
		}
	}
}

// At a match line it says which pieces meet, in words that can't be read as a
// fraction of an inch.
func TestMatchLinesSayWhatMeets(t *testing.T) {
	p := planOf(t, leafJob(`{height=0, across=90, wall=7}, {height=120, across=120, wall=2}`, 5))
	w := wrapOf(t, p, on(t, Outside, "a4"))
	if len(w.Pages) < 2 {
		t.Fatal("the wrap goes on one page")
	}
	for i, page := range w.Pages[:2] {
		if !says(page, "piece 1 meets piece 2") {
			t.Errorf("page %d does not say what meets", i+1)
		}
		for _, text := range textsOn(page) {
			if strings.Contains(text.Words, "1|2") || text.Words == "1/2" {
				t.Errorf("page %d: %q reads as half an inch", i+1, text.Words)
			}
		}
	}
	if !slices.ContainsFunc(w.Pages, func(p printing.Page) bool {
		return says(p, "What lies beyond a match line is the neighbouring piece's")
	}) {
		t.Error("what lies beyond the match line is not explained")
	}
	if whole := wrapOf(t, p, on(t, Outside, huge)); says(whole.Pages[0], "match line") {
		t.Error("a wrap in one piece speaks of match lines")
	}
}

// The tab's words keep clear of what the other end goes on with there.
func TestTabWordsAreClear(t *testing.T) {
	// Arcs cross the tab in the middle of its height, where the words would stand.
	text := strings.Replace(swagJob(taperedGlass, 6), "at = [0, 0.9]\n", "at = [0, 0.5]\n", 1)
	s := sheetOf(t, text, on(t, Outside, huge))
	d := s.draw(s.papers()[0])
	if !slices.Contains(wordsOf(d), "tape under the other end") {
		t.Error("the tab has no words")
	}
	st := s.strips(s.papers()[0])[0]
	crossed := false
	for _, m := range d.On(drawing.Cuts) {
		for _, q := range m.(drawing.Stroke).Points {
			crossed = crossed || q.X > st.at(st.to, (st.low+st.high)/2).X+1 && math.Abs(q.Y-st.at(st.to, (st.low+st.high)/2).Y) < 15
		}
	}
	if !crossed {
		t.Error("no cut crosses the tab: the test is of nothing")
	}
	page := wrapOf(t, s.plan, on(t, Outside, huge)).Pages[0]
	hidden(t, printed{name: "tab", page: page}, s.letters)
}

// No height stands at a band's end without saying what it is the height of.
func TestBandWordsSayWhatTheyAre(t *testing.T) {
	for name, text := range map[string]string{"barrel": leafJob(barrelGlass, 8), "swags": swagJob(taperedGlass, 6), "narrow": leafJob(taperedGlass, 16)} {
		p := planOf(t, text)
		for side := range WallSides() {
			said := 0
			for _, page := range wrapOf(t, p, on(t, Side(side), "a4")).Pages {
				words := wordsOf(page.Drawing)
				for i, w := range words {
					if strings.HasPrefix(w, "band ") {
						said++
					}
					if w != p.Job.Length.Format(p.Band.Foot) && w != p.Job.Length.Format(p.Band.Top) {
						continue
					}
					if i == 0 || !strings.HasPrefix(words[i-1], "band ") {
						t.Errorf("%s, %v: %q stands alone", name, Side(side), w)
					}
				}
			}
			if said == 0 {
				t.Errorf("%s, %v: the band's ends are not named", name, Side(side))
			}
		}
	}
}
