package bench

import (
	"strings"
	"testing"

	"roundlay/render/drawing"
)

// slipJob is three tumblers, the second of them with a wall of 24 that was meant as 2.4.
const slipJob = `title = "Three tumblers"
length = "mm"
[[blank]]
name = "one"
station = [{height=0, across=70.2, wall=7.0}, {height=95, across=84.1, wall=2.6}]
[[blank]]
name = "two"
station = [{height=0, across=70.8, wall=7.2}, {height=96, across=84.8, wall=24}]
[[blank]]
name = "three"
station = [{height=0, across=69.7, wall=6.8}, {height=94.5, across=83.8, wall=2.5}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 12
angle = 90
[layout]
repeats = 6
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.5
width = 0.6
height = 0.6
rays = 3
`

// A reading in doubt stands in bold on the page that tells which blank comes first
// and on its blank's own, and no page of that blank says that all was checked.
func TestDoubtedIsBold(t *testing.T) {
	bolds, checked := 0, 0
	for _, page := range sheetOf(t, plansOf(t, slipJob), "").Pages {
		for _, m := range page.Drawing.On(drawing.Notes) {
			words, ok := m.(drawing.Text)
			switch {
			case !ok:
			case strings.Contains(words.Words, "Measure again: "), strings.Contains(words.Words, "Clear only if"),
				strings.Contains(words.Words, remeasure):
				if bolds++; !words.Bold {
					t.Errorf("%q is in light letters", words.Words)
				}
			case strings.Contains(words.Words, "Checked: nothing"):
				checked++
			}
		}
	}
	if bolds != 6 { // a sign, the reading and what hangs on it, in two places
		t.Errorf("said %d times, want 6", bolds)
	}
	if checked != 2 {
		t.Errorf("%d blanks are checked whatever was read, want the other 2", checked)
	}
}
