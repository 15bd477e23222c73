package wrap

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/render/page"
)

// maxMissed is the greatest excess over one page, in millimetres, for which nearMiss
// looks for flags that put the paper on one page.
const maxMissed = 15.0

// nearMiss says which flags would put a paper on one page that is only a little too
// large for it. Each flag is tried, as long as the context lasts.
func (a composer) nearMiss(ctx context.Context, l layout) string {
	if len(l.pieces) != 1 || len(l.pieces[0]) < 2 {
		return ""
	}
	missed := a.missed(a.options.Landscape(), a.options.Portrait())
	if missed > maxMissed {
		return ""
	}
	var ways []string
	for _, alternatives := range a.tries() {
		for _, t := range alternatives {
			if ctx.Err() == nil && a.wouldFit(t.options) {
				ways = append(ways, t.flag)
				break
			}
		}
	}
	if ways == nil {
		return ""
	}
	words := strings.Join(ways, ", or ")
	if strings.Contains(words, "--margin") {
		words += "; a margin must be no less than what the printer leaves white, which --test-page shows"
	}
	return fmt.Sprintf("The %s is too large for one page of %s by %s, and is in %d pieces. It would go on one page with %s.",
		a.what(), a.options.Paper.Title(), a.Unit.FormatDecimal(missed), len(l.pieces[0]), words)
}

// missed returns by how much the whole paper is too large for the page that it
// comes nearest to going on.
func (a composer) missed(pages ...page.Format) float64 {
	least := math.Inf(1)
	width, height := a.sheet.box(a.sheet.papers()[0]).Size()
	for _, f := range pages {
		f = a.fittedWhole(f)
		for _, room := range []geometry.Box{f.Above(), f.Beside()} {
			wide, tall := room.Size()
			least = min(least, max(width-wide, height-tall))
		}
	}
	return least
}

// try is a flag, and the options with it.
type try struct {
	flag    string
	options Options
}

// tries returns what could put the paper on one page, in rows with the mildest
// first. Of each row the first that does is reported.
func (a composer) tries() [][]try {
	var seam, margins, papers, patches []try
	with := func(change func(o *Options)) Options {
		o := a.options
		change(&o)
		return o
	}
	if a.options.Seam == Tab {
		seam = []try{{"--seam butt", with(func(o *Options) { o.Seam = Butt })}}
	}
	for _, mm := range []float64{5, 4, 3} {
		if mm < a.options.Margin {
			margins = append(margins, try{fmt.Sprintf(`--margin "%.0f mm"`, mm), with(func(o *Options) { o.Margin = mm })})
		}
	}
	metric := func(p page.Paper) bool { return strings.HasPrefix(p.Name, "a") }
	all := page.Papers()
	slices.SortStableFunc(all, func(p, q page.Paper) int { // those of the same shop first
		return cmp.Compare(order(metric(p) != metric(a.options.Paper)), order(metric(q) != metric(a.options.Paper)))
	})
	for _, p := range all {
		if p.Name != a.options.Paper.Name {
			papers = append(papers, try{"--paper " + p.Name, with(func(o *Options) { o.Paper = p })})
		}
	}
	if a.options.Side == Outside {
		patches = []try{{"--side patches", with(func(o *Options) { o.Side = Patches })}}
	}
	return [][]try{seam, margins, papers, patches}
}

func order(last bool) int {
	if last {
		return 1
	}
	return 0
}

// wouldFit reports whether with other options all of the paper goes on one page in
// one piece.
func (a composer) wouldFit(o Options) bool {
	s, err := newFacePaper(a.sheet.plan, o, a.Letters)
	t := composer{s, o, a.Frame}
	if err != nil || o.RoomForBars(o.Portrait(), t.Unit) != nil || o.RoomForBars(o.Landscape(), t.Unit) != nil {
		return false
	}
	l, ok := t.layout()
	if !ok {
		return false
	}
	if l.slots != nil {
		return len(l.pieces) <= len(l.slots)
	}
	return len(l.pieces) == 1 && len(l.pieces[0]) == 1
}
