package wrap

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/printing"
	"roundlay/render/printtest"
)

// Glasses with ends that no cone through their band lies on.
const (
	footGlass  = `{height=0, across=80, wall=9}, {height=8, across=70, wall=6}, {height=100, across=70, wall=3}`
	roundGlass = `{height=0, across=62, wall=9}, {height=8, across=70, wall=6}, {height=100, across=70, wall=3}`
	lipGlass   = `{height=0, across=82, wall=9}, {height=10, across=72, wall=6}, {height=90, across=72, wall=4}, {height=100, across=78, wall=3}`
	bowlGlass  = `{height=0, across=70, wall=4}, {height=4, across=10, wall=4.5}, {height=50, across=10, wall=4.5}, {height=60, across=40, wall=6}, {height=80, across=80, wall=5}, {height=100, across=82, wall=4}, {height=120, across=82, wall=3}`
)

// bandJob is a leaf job whose band is stated, with more keys for its blank.
func bandJob(stations string, foot, top float64, blank string) string {
	text := strings.Replace(leafJob(stations, 5), "repeats = 5", fmt.Sprintf("repeats = 5\nband = [%g, %g]", foot, top), 1)
	return strings.Replace(text, "floor = 16", blank, 1)
}

// A paper's edges, as MuPDF traces them, are as long as the glass is round where
// the page says that they go, to within what paper may be off: 0.15 mm of radius.
func TestPaperFitsFootAndLip(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name, stations string
		foot, top      float64
		low, high      bool // whether it begins above the table, and ends below the rim
	}{
		{"straight", straightGlass, 20, 100, false, false},
		{"flared foot", footGlass, 20, 92, true, false},
		{"rounded foot", roundGlass, 20, 92, true, false},
		{"flared foot and lip", lipGlass, 20, 85, true, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			p := planOf(t, bandJob(test.stations, test.foot, test.top, ""))
			o := on(t, Outside, huge)
			w := wrapOf(t, p, o)
			page := printtest.Trace(t, pdfOf(t, w))[0]
			r := roll(t, page)
			low, high := 0.0, p.Blank.Height()
			if said, ok := edgeAt(w.Pages[0], "above the table"); ok != test.low {
				t.Errorf("its lower edge at %g: %v", said, ok)
			} else {
				low = said
			}
			if said, ok := edgeAt(w.Pages[0], "below the rim"); ok != test.high {
				t.Errorf("its upper edge at %g: %v", said, ok)
			} else {
				high -= said
			}
			if low > 10 || high < p.Blank.Height()-11 {
				t.Errorf("it goes from %g to %g only", low, high)
			}
			const most = 2 * math.Pi * 0.15
			for share, z := range map[float64]float64{0: low, 1: high} {
				round := 2 * math.Pi * (p.Blank.Profile().Radius(z) + o.Thickness/2)
				if got := r.girth(share); math.Abs(got-round) > most+0.02 {
					t.Errorf("the edge at %g is %.3f mm, the glass with its paper %.3f round", z, got, round)
				} else {
					t.Logf("at %g: %.3f mm off", z, got-round)
				}
			}
			// The band's foot lies as far up from the edge as the heights say.
			if got, want := bandUp(page, r.girth(0)), test.foot-low; math.Abs(got-want) > 0.02 {
				t.Errorf("the band begins %.3f mm up the paper, by the heights %g", got, want)
			}
			ticksPart(t, page, r.girth(0), 5)
		})
	}
}

// edgeAt returns the height that an edge of the paper on a page says it has.
func edgeAt(page printing.Page, from string) (mm float64, ok bool) {
	for _, text := range textsOn(page) {
		if strings.HasPrefix(text.Words, "this edge stands") && strings.HasSuffix(text.Words, from) {
			_, err := fmt.Sscanf(text.Words, "this edge stands %g mm", &mm)
			return mm, err == nil
		}
	}
	return 0, false
}

// bandUp returns how far the lowest line round the band lies above the paper's
// lower edge, on a wrap of a cylinder so far round.
func bandUp(page printtest.TracedPage, girth float64) float64 {
	level := func(width float64) float64 {
		lowest := math.Inf(1)
		for _, s := range withPen(page, width) {
			a, b := s.Points[0], s.Points[len(s.Points)-1]
			if math.Abs(s.Length()-girth) < 0.1 && math.Abs(a.Y-b.Y) < 0.01 {
				lowest = min(lowest, a.Y)
			}
		}
		return lowest
	}
	return level(bandPen().Width) - level(edgePen().Width)
}

// ticksPart checks that a page's ticks part its lower edge into equal parts.
func ticksPart(t *testing.T, page printtest.TracedPage, girth float64, parts int) {
	t.Helper()
	var at []float64
	for _, f := range page.Fills {
		box := geometry.BoxOf(f.Points...)
		if wide, tall := box.Size(); len(f.Points) <= 4 && math.Abs(wide-2.8) < 0.02 && math.Abs(tall-2.2) < 0.02 {
			at = append(at, (box.Min.X+box.Max.X)/2)
		}
	}
	if len(at) != parts {
		t.Fatalf("%d ticks", len(at))
	}
	for i := 1; i < len(at); i++ {
		if math.Abs(at[i]-at[i-1]-girth/float64(parts)) > 0.02 {
			t.Errorf("from tick %d to the next it is %.3f mm, a part is %.3f", i, at[i]-at[i-1], girth/float64(parts))
		}
	}
}

// On a page with paper that begins above the table all the words agree:
// the head, the dividers, how to mark, and the command.
func TestWordsOfPaperAboveTheTable(t *testing.T) {
	t.Parallel()
	p := planOf(t, bandJob(footGlass, 20, 92, ""))
	at := fmt.Sprintf("%.1f mm above the table", p.Outside().Low)
	for side, want := range map[Side][]string{
		Outside: {"The lower edge stands on a line drawn round " + at, "Paper edge, " + at, "Draw a line round the glass " + at,
			"below that the glass is wider than paper that lies on the band, by up to 5.00 mm in radius"},
		Patches: {"Each lower edge stands on a line drawn round " + at, at},
	} {
		w := wrapOf(t, p, on(t, side, "a4"))
		for _, words := range want {
			if !says(w.Pages[0], words) {
				t.Errorf("%v does not say %q: %v", side, words, textsOn(w.Pages[0]))
			}
		}
		for _, words := range []string{"stands on the table", "Step the mark round the foot first", "base edge"} {
			if says(w.Pages[0], words) {
				t.Errorf("%v says %q", side, words)
			}
		}
		if len(w.Remarks) != 1 || !strings.HasPrefix(w.Remarks[0], "This paper begins "+at) {
			t.Errorf("the command says %q", w.Remarks)
		}
	}
	// The inside of that glass has no foot to part from.
	w := wrapOf(t, planOf(t, bandJob(footGlass, 20, 92, "floor = 16")), on(t, Inside, "a4"))
	if len(w.Remarks) != 0 || says(w.Pages[0], "Paper edge") {
		t.Errorf("inside: %q", w.Remarks)
	}
}

// Paper asked for on the bowl of a stemmed glass: it begins where it was asked,
// and the lower edges of its gores are as long together as the glass is round
// there: 40 mm across, with its paper 40.1.
func TestPaperOfABowl(t *testing.T) {
	t.Parallel()
	p := planOf(t, bandJob(bowlGlass, 70, 110, `paper = ["60 mm", "rim"]`))
	o := on(t, Outside, huge)
	w := wrapOf(t, p, o)
	page := printtest.Trace(t, pdfOf(t, w))[0]
	lowest := math.Inf(1)
	edges := withPen(page, edgePen().Width)
	for _, s := range edges {
		lowest = min(lowest, geometry.BoxOf(s.Points...).Min.Y)
	}
	sum, gores := 0.0, 0
	for _, s := range edges {
		if wide, tall := geometry.BoxOf(s.Points...).Size(); geometry.BoxOf(s.Points...).Max.Y < lowest+3 && wide > tall {
			gores++
			for i := 1; i < len(s.Points); i++ {
				sum += math.Hypot(s.Points[i].X-s.Points[i-1].X, s.Points[i].Y-s.Points[i-1].Y)
			}
		}
	}
	if want := 5 * p.Outside().Gores(5, o.Thickness/2).PerRepeat; gores != want || math.Abs(sum-math.Pi*40.1) > 0.05 {
		t.Errorf("%d gores of %d are %.3f mm round, by hand %.3f", gores, want, sum, math.Pi*40.1)
	}
	for _, words := range []string{"60.0 mm above the table", "as the job asks"} {
		if !says(w.Pages[0], words) {
			t.Errorf("the page does not say %q", words)
		}
	}
}

// What lies off the paper that was asked for is listed, and not drawn.
func TestCutsOffTheAskedPaperAreListed(t *testing.T) {
	t.Parallel()
	p := planOf(t, bandJob(straightGlass, 20, 100, `paper = [30, "90 mm"]`))
	w := wrapOf(t, p, on(t, Outside, huge))
	if !says(w.Pages[0], "This paper carries what lies between 30.0 mm and 90.0 mm above the table. Not on it:") ||
		!says(w.Pages[0], "stem: partly cuts 1, ") || len(w.Remarks) < 4 {
		t.Errorf("the page says %v, the command %q", textsOn(w.Pages[0]), w.Remarks)
	}
	r := roll(t, printtest.Trace(t, pdfOf(t, w))[0])
	if long := math.Hypot(r.left[1].X-r.left[0].X, r.left[1].Y-r.left[0].Y); math.Abs(long-60) > 0.01 {
		t.Errorf("the paper is %.3f mm high", long)
	}
}

// What is hatched as too thin lies opposite the thin wall: inside a glass that
// widens upwards higher than outside.
func TestThinGlassOpposite(t *testing.T) {
	t.Parallel()
	text := leafJob(taperedGlass, 5)
	outside := sheetOf(t, text, on(t, Outside, huge)).thin
	inside := sheetOf(t, text, on(t, Inside, huge)).thin
	if len(outside) != 1 || len(inside) != 1 {
		t.Fatalf("outside %v, inside %v", outside, inside)
	}
	if from := taperedOutside(inside[0].From); math.Abs(from-outside[0].From) > 1e-6 || inside[0].From < outside[0].From+0.1 {
		t.Errorf("too thin from %g outside, and inside from %g, which is opposite %g", outside[0].From, inside[0].From, from)
	}
	if top := sheetOf(t, text, on(t, Inside, huge)).high; inside[0].To < top {
		t.Errorf("too thin to %g only of %g", inside[0].To, top)
	}
}
