package wrap

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/printtest"
)

// ballGlass returns the stations of a ball of radius 40 mm between 40° of
// latitude south and north, in 41 of them.
func ballGlass() string {
	var stations []string
	for i := range 41 {
		sin, cos := math.Sincos((float64(i)/20 - 1) * 40 * math.Pi / 180)
		stations = append(stations, fmt.Sprintf("{height=%.6f, across=%.6f, wall=5}", 40*(sin+math.Sin(40*math.Pi/180)), 80*cos))
	}
	return strings.Join(stations, ", ")
}

// The gores of a ball, as MuPDF traces them: a gore is half as wide as
// (πR/n)·cos φ at the distance Rφ above or below its widest, to within the
// error that is printed on the page; R is the radius with half the paper's
// thickness.
func TestGoresOfABallAreLunes(t *testing.T) {
	t.Parallel()
	p := planOf(t, leafJob(ballGlass(), 6))
	o := on(t, Outside, huge)
	w := wrapOf(t, p, o)
	gores := p.Outside().Gores(6, o.Thickness/2)
	n := 6 * gores.PerRepeat
	if !says(w.Pages[0], fmt.Sprintf("in %d gores, %d to a repeat, joined at their widest", n, gores.PerRepeat)) ||
		!says(w.Pages[0], fmt.Sprintf("up to %.2f mm longer than the glass", gores.Gain)) {
		t.Errorf("the page does not say that it has %d gores, and their error of %.2f mm", n, gores.Gain)
	}
	// The base and rim of each gore are cut all along, which shows its middle.
	page := printtest.Trace(t, pdfOf(t, w))[0]
	const radius = 40 + 0.05
	pitch := 2 * math.Pi * radius / float64(n)
	left, equator := math.Inf(1), 0.0
	var edges []printtest.TracedPath
	for _, s := range withPen(page, edgePen().Width) {
		box := geometry.BoxOf(s.Points...)
		if wide, tall := box.Size(); tall < 5 || wide > tall {
			continue // a base, a rim, or the tab's corner
		}
		edges = append(edges, s)
		if box.Min.X < left {
			left = box.Min.X
			equator = (box.Min.Y + box.Max.Y) / 2
		}
	}
	if len(edges) < 2*n {
		t.Fatalf("%d edges of %d gores", len(edges), n)
	}
	var worst float64
	for _, s := range edges {
		for _, q := range s.Points {
			k := math.Round((q.X-left)/pitch - 0.5) // the gore it is nearest to
			if k == float64(n) {
				continue // the tab
			}
			aside := math.Abs(q.X - left - (k+0.5)*pitch)
			want := math.Pi * radius / float64(n) * math.Cos((q.Y-equator)/40)
			worst = max(worst, math.Abs(aside-want))
		}
	}
	t.Logf("%d gores: worst %.4f mm, printed %.2f", n, worst, gores.Worst())
	if worst > gores.Worst() {
		t.Errorf("half widths are up to %.3f mm off, and %.3f is printed", worst, gores.Worst())
	}
}

// A band that is curved by less than paper minds keeps its cone; the misfit is
// on the page where it shows.
func TestSlightlyCurvedGlassKeepsItsCone(t *testing.T) {
	p := planOf(t, leafJob(`{height=0, across=80, wall=7}, {height=50, across=85.5, wall=4}, {height=100, across=90.7, wall=3}`, 5))
	w := wrapOf(t, p, on(t, Outside, huge))
	if !says(w.Pages[0], "the glass leaves this paper's cone by up to 0.0") || says(w.Pages[0], "gore") {
		t.Errorf("misfit %.3f mm, and on the page: %v", p.WorstRadiusError, textsOn(w.Pages[0]))
	}
}

// Gores that can't be joined are papers of their own, all of them printed.
func TestGoresOfAWaistAreApart(t *testing.T) {
	p := planOf(t, leafJob(waistGlass, 5))
	w := wrapOf(t, p, on(t, Outside, "a4"))
	n := 5 * p.Outside().Gores(5, 0.05).PerRepeat
	found := map[string]bool{}
	for _, page := range w.Pages {
		for _, text := range textsOn(page) {
			found[strings.TrimPrefix(text.Words, "gore ")] = true
		}
	}
	for i := range n {
		if !found[fmt.Sprint(i+1)] {
			t.Errorf("gore %d of %d is on no page", i+1, n)
		}
	}
}
