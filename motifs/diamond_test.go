package motifs_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestDiamondCuts(t *testing.T) {
	// Two side by side: in each half of the box its two diagonals.
	want := []geometry.Bezier{
		geometry.Line(geometry.Point{X: -0.5, Y: 0}, geometry.Point{X: 0, Y: 1}),
		geometry.Line(geometry.Point{X: 0, Y: 0}, geometry.Point{X: 0.5, Y: 1}),
		geometry.Line(geometry.Point{X: -0.5, Y: 1}, geometry.Point{X: 0, Y: 0}),
		geometry.Line(geometry.Point{X: 0, Y: 1}, geometry.Point{X: 0.5, Y: 0}),
	}
	cuts := draw(motifs.Diamond(), motifs.Values{"across": 2, "up": 1}, 1)
	for i, w := range want {
		if !slices.ContainsFunc(cuts, func(c motifs.Cut) bool {
			return same(c.Path, w) || same(c.Path, reversed(w))
		}) {
			t.Errorf("no cut %d: %v", i, w)
		}
	}
	if len(cuts) != len(want) {
		t.Errorf("%d cuts, want %d", len(cuts), len(want))
	}
}

func TestDiamondCounts(t *testing.T) {
	for _, test := range []struct{ across, up, cuts, joins int }{
		{1, 1, 2, 1}, // a cross
		// In the middle of each half, and where the halves meet on the edges.
		{2, 1, 4, 4},
		{1, 2, 4, 4},
		// In the middle of each of 3 by 2 cells, at the 2 corners of cells inside,
		// and at the 6 on the edges that are not the box's own.
		{3, 2, 8, 14},
	} {
		cuts := draw(motifs.Diamond(), motifs.Values{"across": float64(test.across), "up": float64(test.up)}, 0.8)
		joins := 0
		for _, c := range cuts {
			joins += len(c.Joins)
			if c.Part != "mitre" || !c.Path.Straight() {
				t.Errorf("%d by %d: part %s, straight %v", test.across, test.up, c.Part, c.Path.Straight())
			}
		}
		if len(cuts) != test.cuts || joins != 2*test.joins {
			t.Errorf("%d by %d: %d cuts, %d joins, want %d, %d", test.across, test.up, len(cuts), joins/2, test.cuts, test.joins)
		}
	}
}

// A cut that leaves on the right is carried on, at its height and slope, by one
// that enters on the left.
func TestDiamondTiles(t *testing.T) {
	for _, v := range trials(motifs.Diamond()) {
		cuts := motifs.Diamond().Draw(v, 1)
		left, right := crossing(cuts, -0.5), crossing(cuts, 0.5)
		if len(right) != len(left) || len(right) != 2*(v.Count("up")-1) {
			t.Errorf("%v: %d cuts leave on the right, %d enter on the left", v, len(right), len(left))
		}
		for _, r := range right {
			if !slices.ContainsFunc(left, func(l geometry.Point) bool { return near(l, r) }) {
				t.Errorf("%v: nothing carries on the cut that leaves at height and slope %v", v, r)
			}
		}
	}
}

// crossing returns, for every cut that reaches an upright edge but for its
// corners, its height there and its slope, as X and Y.
func crossing(cuts []motifs.Cut, edge float64) []geometry.Point {
	var found []geometry.Point
	for _, c := range cuts {
		d := r2.Sub(c.Path[3], c.Path[0])
		for _, p := range []geometry.Point{c.Path[0], c.Path[3]} {
			if math.Abs(p.X-edge) < exact && p.Y > exact && p.Y < 1-exact {
				found = append(found, geometry.Point{X: p.Y, Y: d.Y / d.X})
			}
		}
	}
	return found
}

// No cut is a piece of the same straight line as another.
func TestDiamondWhole(t *testing.T) {
	for _, v := range trials(motifs.Diamond())[:5] {
		cuts := motifs.Diamond().Draw(v, 1)
		for i, a := range cuts {
			along := r2.Unit(r2.Sub(a.Path[3], a.Path[0]))
			for j, b := range cuts[:i] {
				if math.Abs(r2.Cross(along, r2.Sub(b.Path[0], a.Path[0]))) < exact &&
					math.Abs(r2.Cross(along, r2.Sub(b.Path[3], a.Path[0]))) < exact {
					t.Errorf("%v: cuts %d and %d lie on one line", v, j, i)
				}
			}
		}
	}
}
