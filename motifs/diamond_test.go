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

// A mitre that leaves on the right is carried on, at its height and slope, by
// one that enters on the left.
func TestDiamondTiles(t *testing.T) {
	for _, v := range trials(motifs.Diamond()) {
		v["hatch"] = 0
		cuts := motifs.Diamond().Draw(v, 1)
		corner := 0.5 / v["up"] // what is nearer to the box's corners is left out
		left, right := crossing(cuts, -0.5, corner), crossing(cuts, 0.5, corner)
		// All the mitres of either slope at each corner of a diamond.
		if want := 2 * v.Count("mitres") * (v.Count("up") - 1); len(right) != want || len(left) != want {
			t.Errorf("%v: %d cuts leave on the right, %d enter on the left", v, len(right), len(left))
		}
		for _, r := range right {
			if !slices.ContainsFunc(left, func(l geometry.Point) bool { return near(l, r) }) {
				t.Errorf("%v: nothing carries on the cut that leaves at height and slope %v", v, r)
			}
		}
	}
}

// crossing returns, for every cut that reaches an upright edge but near its
// corners, its height there and its slope, as X and Y.
func crossing(cuts []motifs.Cut, edge, corner float64) []geometry.Point {
	var found []geometry.Point
	for _, c := range cuts {
		d := r2.Sub(c.Path[3], c.Path[0])
		for _, p := range []geometry.Point{c.Path[0], c.Path[3]} {
			if math.Abs(p.X-edge) < exact && p.Y > corner && p.Y < 1-corner {
				found = append(found, geometry.Point{X: p.Y, Y: d.Y / d.X})
			}
		}
	}
	return found
}

// No cut is a piece of the same straight line as another.
func TestDiamondWhole(t *testing.T) {
	for _, v := range trials(motifs.Diamond())[:7] { // counts and mitres
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

// Two diamonds side by side with tops of 3/5: the mitres of a pair stand 1/5 to
// either side of where a single one lies.
func TestDiamondPairs(t *testing.T) {
	cuts := draw(motifs.Diamond(), motifs.Values{"across": 2, "up": 1, "mitres": 2, "flat": 0.6}, 1)
	var feet []float64
	for _, c := range cuts {
		if d := r2.Sub(c.Path[3], c.Path[0]); c.Path[0].Y < exact && d.X > 0 {
			feet = append(feet, c.Path[0].X)
		}
	}
	// The foot of the box is two diamonds long. A fourth, 1/5 from the corner, is
	// left out.
	want := []float64{-0.4, -0.1, 0.1}
	if !slices.EqualFunc(feet, want, func(a, b float64) bool { return math.Abs(a-b) < exact }) {
		t.Errorf("rising mitres start at %v on the foot, want %v", feet, want)
	}
	// One more starts on the side; and there are as many of the other slope.
	if len(cuts) != 8 {
		t.Errorf("%d mitres, want 8", len(cuts))
	}
}

func TestDiamondHatching(t *testing.T) {
	// In a box of one diamond by one the middles of four lie on the edges. With
	// tops of 4/5, hatched to 9/10, the lines reach 0.36 from the middle in X + Y
	// and stand 0.18 to either side of it. Of the diamond on the left the box has
	// the greater part of the lower rising line: from the edge, 0.18 below the
	// middle, to X - Y = 0.18 and X + Y = 0.36 counted from there.
	cuts := draw(motifs.Diamond(), motifs.Values{"across": 1, "up": 1, "hatch": 2, "flat": 0.8, "alone": 1}, 1)
	lower := geometry.Line(geometry.Point{X: -0.5, Y: 0.32}, geometry.Point{X: -0.23, Y: 0.59})
	if !slices.ContainsFunc(cuts, func(c motifs.Cut) bool { return same(c.Path, lower) }) {
		t.Errorf("no line from %v to %v", lower[0], lower[3])
	}
	for _, test := range []struct{ side, hatch, cuts, joins int }{
		{1, 2, 8, 4},
		// Two by two diamonds: 4 whole ones, and 8 halves on the edges, each with
		// half of the lines and a quarter of the crossings.
		{2, 2, 4*4 + 8*2, 4*4 + 8},
		// The middle lines of a half start where they meet, on the edge.
		{2, 1, 4*2 + 8*2, 4 + 8},
	} {
		values := motifs.Values{"across": float64(test.side), "up": float64(test.side), "hatch": float64(test.hatch)}
		mitres := len(draw(motifs.Diamond(), motifs.Values{"across": values["across"], "up": values["up"]}, 1))
		if got := len(draw(motifs.Diamond(), values, 1)); got != mitres+test.cuts {
			t.Errorf("%v: %d cuts, want %d mitres and %d of hatching", values, got, mitres, test.cuts)
		}
		values["alone"] = 1
		joins := 0
		cuts := draw(motifs.Diamond(), values, 1)
		for _, c := range cuts {
			joins += len(c.Joins)
			if c.Part != "hatch" {
				t.Errorf("%v: a %s in hatching alone", values, c.Part)
			}
		}
		if len(cuts) != test.cuts || joins != 2*test.joins {
			t.Errorf("%v: %d cuts, %d joins, want %d, %d", values, len(cuts), joins/2, test.cuts, test.joins)
		}
	}
}

// Without hatching there's nothing to be alone.
func TestDiamondNotAlone(t *testing.T) {
	if got, want := len(draw(motifs.Diamond(), motifs.Values{"alone": 1}, 1)), len(draw(motifs.Diamond(), nil, 1)); got != want {
		t.Errorf("%d cuts, want the %d mitres", got, want)
	}
}
