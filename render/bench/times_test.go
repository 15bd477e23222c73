package bench

import (
	"strings"
	"testing"
)

// Rings of 251.3 mm round straight glasses 80 mm across, at the wheel's own 25 mm a minute:
// 10 minutes each. Two pieces, with a wheel put on in 5 minutes once or twice: 25 and 30
// minutes, a fifth less and more 20 and 36. At 60 an hour that is 20 and 36, and what each
// ring is over 250 mm rounds outwards: 0.05 minutes in ten.
func TestSheetQuote(t *testing.T) {
	const blanks = `[[blank]]
name = "a"
station = [{height=0, across=80, wall=5}, {height=100, across=80, wall=5}]
[[blank]]
name = "b"
station = [{height=0, across=80, wall=5}, {height=100, across=80, wall=5}]
`
	text := `title = "Two rings"
length = "mm"
` + blanks + `[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 6
angle = 90
rate = 25
wears = [0.5, "10 m"]
[shop]
change = 5
spread = 0.2
hour = 60
[layout]
repeats = 4
[[motif]]
kind = "ring"
wheel = "mitre"
depth = 0.5
at = [0, 0.5]
height = 0.2
rings = 1
lines = 1
`
	plans := plansOf(t, text)
	s := sheetOf(t, plans, "")
	first := said(s.Pages[0])
	for _, words := range []string{
		"Time and price of 2 pieces", "Wheels put on: 5 minutes, if all pieces", "10 minutes (2 times 5 minutes)",
		"In all 20 minutes to 37 minutes: arithmetic, not a promise.", "Price 20.08 to 36.13, at 60 an hour",
	} {
		if !strings.Contains(first, words) {
			t.Errorf("the set's page lacks %q: %s", words, first)
		}
	}
	rest := strings.Replace(allWords(s), first, "", 1)
	if strings.Contains(rest, "Time and price") || strings.Count(rest, "Wear: half the wheel") != 2 ||
		strings.Count(rest, "Times at the rates of your wheels, without the changes of wheel.") != 2 {
		t.Errorf("the blanks' pages: %s", rest)
	}
	// One blank is one piece, and its quote stands on its own page.
	if one := allWords(sheetOf(t, plans[:1], "")); !strings.Contains(one, "Time and price of 1 piece") {
		t.Errorf("one blank: %s", one)
	}
}
