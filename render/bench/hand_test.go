package bench

import (
	"strings"
	"testing"
)

// Cuts that are alike but for the hand don't share an entry of the list: the fronds left of a
// stem are rolled the other way. What is meant by left and right stands on the last page, where
// any cut is by hand.
func TestHandOnTheSheet(t *testing.T) {
	const leaf = `title = "Leaf"
length = "mm"
blank.station = [ {height = 0, across = 80, wall = 6}, {height = 100, across = 80, wall = 6} ]
wheel = [ {name = "mitre", edge = "mitre", across = 50, thick = 8, angle = 90} ]
layout = {repeats = 4, band = [20, 80]}

[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 0.6
fronds = 2
`
	plain, by := allWords(sheetOf(t, plansOf(t, leaf), "a4")), allWords(sheetOf(t, plansOf(t, leaf+"rock = [0, 12]\nswell = [0.5, 1, 0.5]\nparts.stem = {rock = [0, 0], swell = [1]}\n"), "a4"))
	right := "by hand: 1/2 of its depth at the root, full in the middle, lifting to 1/2 of it at the tip; rock 12° to the right"
	left := strings.Replace(right, "right", "left", 1)
	for words, times := range map[string]int{right: 2, left: 2, "by hand": 4, "leaf frond, drawn": 4, "leaf stem, drawn": 1, "Rock is how far the glass is rolled": 1} {
		if n := strings.Count(by, words); n != times {
			t.Errorf("%q stands there %d times, wanted %d:\n%s", words, n, times, by)
		}
	}
	if n := strings.Count(plain, "leaf frond, drawn"); n != 2 || strings.Contains(plain, "by hand") || strings.Contains(plain, "Rock") {
		t.Errorf("an even leaf has %d entries of fronds:\n%s", n, plain)
	}
}
