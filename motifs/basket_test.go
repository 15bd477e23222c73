package motifs_test

import (
	"math"
	"slices"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestBasketSquares(t *testing.T) {
	// One pair of squares, half filled: of each a quarter is bare at either end
	// of a mitre, and the two mitres are at a quarter and three quarters.
	want := []struct {
		part     string
		from, to geometry.Point
	}{
		{"level", geometry.Point{X: -0.375, Y: 0.25}, geometry.Point{X: -0.125, Y: 0.25}},
		{"level", geometry.Point{X: -0.375, Y: 0.75}, geometry.Point{X: -0.125, Y: 0.75}},
		{"upright", geometry.Point{X: 0.125, Y: 0.25}, geometry.Point{X: 0.125, Y: 0.75}},
		{"upright", geometry.Point{X: 0.375, Y: 0.25}, geometry.Point{X: 0.375, Y: 0.75}},
	}
	cuts := draw(motifs.Basket(), motifs.Values{"across": 1, "up": 1, "lines": 2, "fill": 0.5}, 1)
	if len(cuts) != len(want) {
		t.Fatalf("%d cuts", len(cuts))
	}
	for i, c := range cuts {
		if c.Part != want[i].part || !near(c.Path[0], want[i].from) || !near(c.Path[3], want[i].to) {
			t.Errorf("cut %d: %s from %v to %v, want %v", i, c.Part, c.Path[0], c.Path[3], want[i])
		}
	}
}

// In every row and every column, and on from one box to the next, squares that
// lie and squares that stand take turns.
func TestBasketTurns(t *testing.T) {
	const across, up, lines = 3, 5, 2
	lying := [up][2 * across]bool{}
	count := 0
	for _, c := range draw(motifs.Basket(), motifs.Values{"across": across, "up": up, "lines": lines}, 1) {
		p := c.Path.At(0.5)
		if c.Part == "level" {
			lying[int(p.Y*up)][int(math.Floor((p.X+0.5)*2*across))] = true
			count++
		}
	}
	if count != lines*across*up {
		t.Errorf("%d mitres lie, want %d", count, lines*across*up)
	}
	for y, row := range lying {
		for x, lies := range row {
			if lies == row[(x+1)%len(row)] || y > 0 && lies == lying[y-1][x] {
				t.Errorf("square %d of row %d is like its neighbour", x, y)
			}
		}
		if !slices.Contains(row[:], true) {
			t.Errorf("nothing lies in row %d", y)
		}
	}
}
