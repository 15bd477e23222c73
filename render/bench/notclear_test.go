package bench

import (
	"strings"
	"testing"

	"roundlay/render/drawing"
)

// waistJob has a wheel that is too large for the waist it is to cut down.
const waistJob = `title = "Waist"
length = "mm"
[blank]
name = "waist"
station = [{height=0, across=80, wall=9}, {height=30, across=60, wall=9}, {height=60, across=80, wall=9}]
[[wheel]]
name = "large"
edge = "mitre"
across = 300
thick = 20
angle = 90
[layout]
repeats = 4
band = [5, 55]
[[motif]]
kind = "fan"
wheel = "large"
depth = 0.5
rays = 1
hub = 0
`

// That a blank is not clear is never in light letters: on its own page it is as
// large as a heading, in the cut list and in the set's order bold.
func TestNotClearIsBold(t *testing.T) {
	places, unfit := map[string]float64{}, 0
	for name, text := range map[string]string{"set": setJob(), "waist": waistJob, "rings": ringsJob} {
		for _, page := range sheetOf(t, plansOf(t, text), "").Pages {
			for _, m := range page.Drawing.On(drawing.Notes) {
				words, ok := m.(drawing.Text)
				if !ok || !strings.Contains(strings.ToUpper(words.Words), "NOT CLEAR") {
					continue
				}
				if !words.Bold {
					t.Errorf("%s: %q is in light letters", name, words.Words)
				}
				unfit += strings.Count(words.Words, "wheel too large")
				places[name] = max(places[name], words.Size)
			}
		}
	}
	if unfit == 0 {
		t.Error("no cut is said to be not clear: the list tries nothing")
	}
	for _, name := range []string{"set", "rings", "waist"} {
		if places[name] != headingSize {
			t.Errorf("%s: at its largest it is in %v points, want %v", name, places[name], headingSize)
		}
	}
}
