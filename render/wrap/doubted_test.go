package wrap

import (
	"strings"
	"testing"

	"roundlay/render/printtest"
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

// The paper of a blank with a reading in doubt says so in bold, and does not say
// that all was checked.
func TestDoubtedOnPaper(t *testing.T) {
	plans := printtest.Plans(t, slipJob)
	var bold []string
	for _, page := range wrapOf(t, plans[1], on(t, Outside, huge)).Pages {
		for _, text := range textsOn(page) {
			if text.Bold {
				bold = append(bold, text.Words)
			}
			if strings.Contains(text.Words, "Checked: nothing") {
				t.Errorf("%q", text.Words)
			}
		}
	}
	said := strings.Join(bold, " ")
	for _, want := range []string{`Measure again: the wall of "two" at 96.0 mm was read as 24.0 mm`,
		`Clear only if the wall of "two" at 96.0 mm is right: measure it again first.`} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %q", want, said)
		}
	}
	if other := wrapOf(t, plans[0], on(t, Outside, huge)); !says(other.Pages[0], "Checked: nothing is crowded") {
		t.Error("a blank whose readings agree is not said to be checked")
	}
}
