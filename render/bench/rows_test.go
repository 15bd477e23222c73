package bench

import (
	"math"
	"strings"
	"testing"
)

// What no hand holds apart is one row, with the deepest, the widest and the least glass left.
func TestSizesInOneRow(t *testing.T) {
	const step = 0.1
	for _, c := range []struct {
		a, b, want size
		ok         bool
	}{
		{size{0.5, 1, 3}, size{0.51, 1.03, 3.05}, size{0.51, 1.03, 3}, true},
		{size{0.51, 1.03, 2.95}, size{0.5, 1, 3}, size{0.51, 1.03, 2.95}, true},
		{size{0.5, 1, 3}, size{0.53, 1, 3}, size{0.53, 1, 3}, false},
		{size{0.5, 1, 3}, size{0.5, 1.06, 3}, size{0.5, 1.06, 3}, false},
		{size{0.5, 1, 3}, size{0.5, 1, 3.11}, size{0.5, 1, 3}, false},
		{size{0.5, 1, math.Inf(1)}, size{0.5, 1, math.Inf(1)}, size{0.5, 1, math.Inf(1)}, true},
		{size{0.5, 1, 3}, size{0.5, 1, math.Inf(1)}, size{0.5, 1, 3}, false},
	} {
		if got, ok := c.a.with(c.b, step); got != c.want || ok != c.ok {
			t.Errorf("%v with %v: %v, %t", c.a, c.b, got, ok)
		}
	}
}

// Rays of a star on a tapered glass, alike but for a thousandth, stand in one row.
func TestRaysAlikeAreOneRow(t *testing.T) {
	const star = `title = "Star"
length = "in"
blank.floor = "1/2"
blank.station = [{height=0, across="2 3/4", wall="1/4"}, {height="4", across="3 1/2", wall="1/4"}]
wheel = [{name = "mitre", edge = "mitre", across = 4, thick = "1/4", angle = 90}]
layout = {repeats = 3}

[[motif]]
kind = "star"
wheel = "mitre"
depth = "1/32"
width = "1 1/4 in"
height = "1 1/4 in"
`
	words := allWords(sheetOf(t, plansOf(t, star), "a4"))
	if n := strings.Count(words, "star ray, "); n != 5 { // five lengths and depths that differ
		t.Errorf("%d rows:\n%s", n, words)
	}
}
