package wrap

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printtest"
)

// Pieces cut from a wrap of several pages are laid together on their crosses,
// as they lie on the pages MuPDF traces, and compared with the wrap that was
// printed in one piece: its cuts, and the paper's edges, are where they were.
func TestPiecesMakeTheWrap(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name, stations string
		side           Side
		sheets         []string
	}{
		{"straight", `{height=0, across=112, wall=8}, {height=120, across=112, wall=2}`, Outside, []string{"a4", "letter", "legal", "150x150mm"}},
		{"tapered", `{height=0, across=90, wall=7}, {height=120, across=120, wall=2}`, Outside, []string{"a4", "letter", "legal", "150x150mm"}},
		{"straight, inside", straightGlass, Inside, []string{"letter", "140x200mm"}},
		// Larger sheets take several pages for a larger glass alone.
		{"wide, straight", `{height=0, across=190, wall=8}, {height=250, across=190, wall=4}`, Outside, []string{"a3", "tabloid"}},
		{"wide, tapered", `{height=0, across=150, wall=8}, {height=280, across=230, wall=4}`, Outside, []string{"a3", "tabloid"}},
		{"tall", tallGlass, Outside, []string{"a4", "legal"}},
		{"barrel", barrelGlass, Outside, []string{"a4", "letter"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			p := planOf(t, leafJob(test.stations, 5))
			whole := printtest.Trace(t, pdfOf(t, wrapOf(t, p, on(t, test.side, huge))))
			if len(whole) != 1 {
				t.Fatalf("%d pages of the largest paper", len(whole))
			}
			letters, err := lettering.Load()
			if err != nil {
				t.Fatal(err)
			}
			for _, sheet := range test.sheets {
				o := on(t, test.side, sheet)
				s, err := newFacePaper(p, o, letters)
				if err != nil {
					t.Fatal(err)
				}
				a := composer{s, o, page.NewFrame(letters, p.Job.Length)}
				l, ok := a.layout()
				if !ok || len(l.pieces[0]) < 2 {
					t.Fatalf("%s: %d pieces", sheet, len(l.pieces[0]))
				}
				pages := printtest.Trace(t, pdfOf(t, wrapOf(t, p, o)))
				assembled := assemble(t, a, l, pages)
				t.Logf("%s: %d pieces, worst %.4f mm", sheet, len(l.pieces[0]), compare(t, sheet, assembled, whole[0]))
			}
		})
	}
}

// assemble lays the pages' lines together: each page by the two crosses it
// shares with one that lies already. What is not the page's own, beyond its
// match lines, comes with it.
func assemble(t *testing.T, a composer, l layout, pages []printtest.TracedPage) map[float64][]printtest.TracedPath {
	t.Helper()
	pieces := l.pieces[0]
	lies := make([]*geometry.Motion, len(pieces))
	lies[0] = &geometry.Motion{Cos: 1}
	crosses := make([]map[string][]geometry.Point, len(pieces))
	for i, p := range pieces {
		crosses[i] = tracedCrosses(t, a, l, p, pages[i])
	}
	for range pieces {
		for i := range pieces {
			for k := range pieces {
				if lies[i] == nil || lies[k] != nil {
					continue
				}
				for words, at := range crosses[i] {
					if to, shared := crosses[k][words]; shared {
						m := then(*lies[i], motionOf(to, at))
						lies[k] = &m
					}
				}
			}
		}
	}
	lines := map[float64][]printtest.TracedPath{}
	for i, m := range lies {
		if m == nil {
			t.Fatalf("piece %d shares no crosses with another", i+1)
		}
		for _, width := range []float64{cutPen().Width, edgePen().Width} {
			for _, s := range withPen(pages[i], width) {
				for k, q := range s.Points {
					s.Points[k] = m.Apply(q)
				}
				lines[width] = append(lines[width], s)
			}
		}
	}
	return lines
}

// tracedCrosses returns where a page's crosses lie, by what is written at them.
// Where to look for them is the drawing's word; where they are is the trace's.
func tracedCrosses(t *testing.T, a composer, l layout, p piece, page printtest.TracedPage) map[string][]geometry.Point {
	t.Helper()
	shift, _ := l.Place(a.sheet.box(p))
	found := map[string][]geometry.Point{}
	for _, m := range a.sheet.matchLines(p) {
		for _, c := range m.crosses {
			near := shift.Apply(c)
			var arms [][2]geometry.Point
			for _, s := range withPen(page, 0.25) {
				middle := r2.Scale(0.5, r2.Add(s.Points[0], s.Points[len(s.Points)-1]))
				if len(s.Points) == 2 && math.Abs(s.Length()-2*crossArm) < 0.01 && r2.Norm(r2.Sub(middle, near)) < 0.2 {
					arms = append(arms, [2]geometry.Point{s.Points[0], s.Points[1]})
				}
			}
			if len(arms) != 2 {
				t.Fatalf("%d arms of a cross %s near %.2f", len(arms), m.words, near)
			}
			u, v := r2.Sub(arms[0][1], arms[0][0]), r2.Sub(arms[1][1], arms[1][0])
			share := r2.Cross(r2.Sub(arms[1][0], arms[0][0]), v) / r2.Cross(u, v)
			found[m.words] = append(found[m.words], r2.Add(arms[0][0], r2.Scale(share, u)))
		}
	}
	return found
}

// motionOf returns the motion that lays two places on two others, as near as a
// rigid one can.
func motionOf(from, to []geometry.Point) geometry.Motion {
	u, v := r2.Sub(from[1], from[0]), r2.Sub(to[1], to[0])
	turn := math.Atan2(r2.Cross(u, v), r2.Dot(u, v))
	sin, cos := math.Sincos(turn)
	m := geometry.Motion{Cos: cos, Sin: sin}
	off := r2.Sub(r2.Scale(0.5, r2.Add(to[0], to[1])), m.Apply(r2.Scale(0.5, r2.Add(from[0], from[1]))))
	m.X, m.Y = off.X, off.Y
	return m
}

// then returns the motion that does the second, and then the first.
func then(first, second geometry.Motion) geometry.Motion {
	at := first.Apply(geometry.Point{X: second.X, Y: second.Y})
	return geometry.Motion{
		Cos: first.Cos*second.Cos - first.Sin*second.Sin, Sin: first.Sin*second.Cos + first.Cos*second.Sin, X: at.X, Y: at.Y,
	}
}

// compare lays the assembled lines over the one-piece wrap, by the paper's left
// edge alone, and returns how far off the worst place is, either way.
func compare(t *testing.T, name string, assembled map[float64][]printtest.TracedPath, whole printtest.TracedPage) float64 {
	t.Helper()
	fit := motionOf(leftEdge(assembled[edgePen().Width]), leftEdge(withPen(whole, edgePen().Width)))
	var worst float64
	check := func(what string, points []printtest.TracedPath, move geometry.Motion, lines []printtest.TracedPath, by geometry.Motion) {
		index := newIndex(lines, by)
		for _, s := range points {
			for _, q := range s.Points {
				off := index.distance(move.Apply(q))
				if worst = max(worst, off); off > 0.01 {
					t.Fatalf("%s: %s, %.2f, is %.4f mm from any line of the other", name, what, q, off)
				}
			}
		}
	}
	still := geometry.Motion{Cos: 1}
	for _, width := range []float64{cutPen().Width, edgePen().Width} {
		check(fmt.Sprintf("a piece's line of %g mm", width), assembled[width], fit, withPen(whole, width), still)
		check(fmt.Sprintf("the whole's line of %g mm", width), withPen(whole, width), still, assembled[width], fit)
	}
	return worst
}

// leftEdge returns the lowest and the highest place of the paper's left end: of
// a wrap laid out on a cone, the edge that lies farthest to the left; of all
// pieces of it, where they are in rows.
func leftEdge(edges []printtest.TracedPath) []geometry.Point {
	var low, high geometry.Point
	found := false
	leftmost := math.Inf(1)
	for _, s := range edges {
		a, b := s.Points[0], s.Points[len(s.Points)-1]
		if a.Y > b.Y {
			a, b = b, a
		}
		if b.Y-a.Y < 20 || b.Y-a.Y < 2*math.Abs(b.X-a.X) {
			continue
		}
		if mean := (a.X + b.X) / 2; mean < leftmost-15 {
			low, high, found, leftmost = a, b, true, mean
		} else if found && math.Abs(mean-leftmost) < 15 { // the same end, in another row
			if a.Y < low.Y {
				low = a
			}
			if b.Y > high.Y {
				high = b
			}
		}
	}
	return []geometry.Point{low, high}
}

// index finds lines near a place fast.
type index map[[2]int][][2]geometry.Point

const square = 4.0

func newIndex(lines []printtest.TracedPath, by geometry.Motion) index {
	x := index{}
	for _, s := range lines {
		for i := 1; i < len(s.Points); i++ {
			a, b := by.Apply(s.Points[i-1]), by.Apply(s.Points[i])
			box := geometry.BoxOf(a, b).Grow(0.1)
			for column := int(math.Floor(box.Min.X / square)); column <= int(math.Floor(box.Max.X/square)); column++ {
				for row := int(math.Floor(box.Min.Y / square)); row <= int(math.Floor(box.Max.Y/square)); row++ {
					key := [2]int{column, row}
					x[key] = append(x[key], [2]geometry.Point{a, b})
				}
			}
		}
	}
	return x
}

func (x index) distance(q geometry.Point) float64 {
	best := 1e3
	for _, s := range x[[2]int{int(math.Floor(q.X / square)), int(math.Floor(q.Y / square))}] {
		best = min(best, distance(q, s[0], s[1]))
	}
	return best
}
