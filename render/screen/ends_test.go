package screen

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/jobtest"
	"roundlay/render/wrap"
)

// The wrap on a screen ends at the place of the glass where the printed one does.
func TestEnds(t *testing.T) {
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		side := wrap.Outside
		if f.inside {
			side = wrap.Inside
		}
		want, err := wrap.LeftEdge(p, side)
		if err != nil {
			t.Fatal(err)
		}
		w := NewWrap(f)
		m := w.Copies[0]
		// A copy's own motion, undone.
		motion := geometry.Motion{Cos: float64(m[0]), Sin: float64(m[1]), X: float64(m[2]), Y: float64(m[3])}
		seam := points(t, w.Seam)
		if len(seam) != 2 {
			t.Fatalf("%s: the seam is %d lines; want both of the wrap's edges", name, len(seam))
		}
		for i, line := range seam {
			for _, q := range line {
				dx, dy := q.X-motion.X, q.Y-motion.Y
				back := geometry.Point{X: motion.Cos*dx + motion.Sin*dy, Y: motion.Cos*dy - motion.Sin*dx}
				if got := f.Reverse(back).Theta - float64(i)*2*math.Pi; math.Abs(math.Remainder(got-want, 2*math.Pi)) > 1e-3 {
					t.Errorf("%s: an edge of the wrap is at %.4f of the glass; the paper's at %.4f", name, got, want)
				}
			}
		}
	})
}

// A motif across the edges of the repeats moves the ends to where nothing is cut through,
// and the repeats' edges are then all within the wrap.
func TestEndsAside(t *testing.T) {
	blank, err := glass.NewBlank("straight", 9, []glass.Station{{Height: 0, Radius: 40, Wall: 6}, {Height: 100, Radius: 40, Wall: 3}})
	if err != nil {
		t.Fatal(err)
	}
	for at, edges := range map[float64]int{0: 5, 0.5: 6} {
		j := jobtest.On(blank, 6, jobtest.Motif(t, "leaf", nil, jobtest.Size(0.3, 0.5), jobtest.At(at, 0.2)))
		p, err := pattern.New(t.Context(), j, blank)
		if err != nil {
			t.Fatal(err)
		}
		f, err := NewFlat(p, false)
		if err != nil {
			t.Fatal(err)
		}
		w := NewWrap(f)
		if got := len(points(t, w.Edges)); got != edges {
			t.Errorf("a leaf at %g: %d edges of repeats are within the wrap; want %d", at, got, edges)
		}
		if len(w.Parts) != 6 || w.Parts[0].Repeat != 1 || w.Parts[0].X > w.Parts[1].X {
			t.Errorf("a leaf at %g: the repeats are numbered %v", at, w.Parts)
		}
		left, right := float64(w.Box[0]), float64(w.Box[2])
		for _, copied := range append([][4]Precise{w.Before, w.After}, w.Copies...) {
			for _, line := range points(t, w.Motifs[0].Footprint) {
				low, high := math.Inf(1), math.Inf(-1)
				for _, q := range line {
					x := moved(copied, q).X
					low, high = min(low, x), max(high, x)
				}
				if low < left && high > left || low < right && high > right {
					t.Errorf("a leaf at %g: the seam at %g and %g cuts through what lies from %g to %g", at, left, right, low, high)
				}
			}
		}
	}
}
