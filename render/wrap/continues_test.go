package wrap

import (
	"fmt"
	"strings"
	"testing"

	"roundlay/render/page"
)

// The sentences of pieces that lie two by two, by hand:
//
//	1 2
//	3 4
func TestPiecesSayWhatTheyContinue(t *testing.T) {
	var all []drawn
	for number := 1; number <= 4; number++ {
		all = append(all, drawn{piece: &piece{paper: 1, number: number, rows: 2, columns: 2}})
	}
	all = append(all, drawn{}) // the notes
	for i, want := range []string{
		" This page continues on pages 2, 3.",
		" This page continues from page 1 and continues on page 4.",
		" This page continues from page 1 and continues on page 4.",
		" This page continues from pages 2, 3 and continues on page 5.",
		" This page continues from page 4.",
	} {
		if got := continuing(i, all); got != want {
			t.Errorf("page %d: %q, want %q", i+1, got, want)
		}
	}
	if got := continuing(0, all[:1]); got != "" {
		t.Errorf("a page by itself: %q", got)
	}
}

// Each page names the paper it is to be printed on, and pages of one paper tell of
// each other.
func TestPagesNameTheirPaper(t *testing.T) {
	t.Parallel()
	p := planOf(t, leafJob(tallGlass, 5))
	several := 0
	for sheet, name := range map[string]string{"a4": "A4", "letter": "letter", "13x19in": "13x19in"} {
		for side := range WallSides() {
			pages := wrapOf(t, p, on(t, Side(side), sheet)).Pages
			for i, drawn := range pages {
				if which := fmt.Sprintf("%s, page %d of %d", name, i+1, len(pages)); !says(drawn, which) {
					t.Errorf("%v, %s: no %q", Side(side), sheet, which)
				}
				if first := says(drawn, "piece 1;"); i > 0 && !first && !says(drawn, "This page continues from page") {
					t.Errorf("%v, %s: page %d does not say that it continues another", Side(side), sheet, i+1)
				}
			}
			if len(pages) > 1 {
				several++
				if !says(pages[0], "This page continues on page") {
					t.Errorf("%v, %s: page 1 does not say that it goes on", Side(side), sheet)
				}
			} else if says(pages[0], "This page") {
				t.Errorf("%v, %s: a page by itself says what it continues", Side(side), sheet)
			}
		}
	}
	if several == 0 {
		t.Error("nothing has several pages")
	}
	test, err := NewTestPage(t.Context(), p, on(t, Outside, "a4"))
	if err != nil {
		t.Fatal(err)
	}
	if !says(test.Pages[0], "A4") {
		t.Error("the test page does not name its paper")
	}
}

// nearJob is a leaf job on a straight glass so far across.
func nearJob(across float64) string {
	return leafJob(fmt.Sprintf(`{height=0, across=%[1]g, wall=8}, {height=100, across=%[1]g, wall=2}`, across), 6)
}

// A wrap that misses one page by a little names flags that put it on one, and only
// those that do.
func TestNearMissNamesWhatWouldFit(t *testing.T) {
	t.Parallel()
	o := on(t, Outside, "a4")
	remark := func(across float64) string {
		for _, words := range wrapOf(t, planOf(t, nearJob(across)), o).Remarks {
			if strings.Contains(words, "too large for one page") {
				return words
			}
		}
		return ""
	}
	parts := func(across float64, change func(o *Options)) int {
		with := o
		change(&with)
		a, err := newComposer(planOf(t, nearJob(across)), with)
		if err != nil {
			t.Fatal(err)
		}
		l, _ := a.layout()
		return len(l.pieces[0])
	}
	ways := map[string]func(o *Options){
		"--seam butt":     func(o *Options) { o.Seam = Butt },
		`--margin "5 mm"`: func(o *Options) { o.Margin = 5 },
		`--margin "4 mm"`: func(o *Options) { o.Margin = 4 },
		`--margin "3 mm"`: func(o *Options) { o.Margin = 3 },
		"--paper a3":      func(o *Options) { o.Paper, _ = page.ParsePaper("a3") },
	}
	offered := map[string]int{}
	for across := 82.0; across < 92; across += 0.5 {
		words := remark(across)
		if parts(across, func(*Options) {}) == 1 && words != "" {
			t.Errorf("%g mm goes on one page, and the remark is %q", across, words)
		}
		for flag, change := range ways {
			if !strings.Contains(words, flag) {
				continue
			}
			offered[flag]++
			if n := parts(across, change); n != 1 {
				t.Errorf("%g mm: with %s it is in %d pieces; told %q", across, flag, n, words)
			}
		}
	}
	for flag := range ways {
		if offered[flag] == 0 {
			t.Errorf("%s is never offered: nothing is tried", flag)
		}
	}
	if words := remark(110); words != "" {
		t.Errorf("a wrap that is far too large is told %q", words)
	}
}
