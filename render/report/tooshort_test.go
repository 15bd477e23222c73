package report

import (
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Twelve steps round a circle of 3 mm radius are 2 × 3 × sin 15° = 1.55 mm long, and as many
// round one of 30 mm ten times that.
func TestTooShort(t *testing.T) {
	short := pattern.Chord{Circle: pattern.Circle{Name: "base band inside", Height: 3, Radius: 3}, Parts: 12, Chord: 1.5529}
	long := pattern.Chord{Circle: pattern.Circle{Name: "base edge", Height: 30, Radius: 30}, Parts: 12, Chord: 15.529}
	p := planOf(t, tooShortJob)
	p.Chords = []pattern.Chord{short, long}
	const none = "no setting: steps of 1.55 mm are too short for dividers"
	rows := dividers(p).Rows
	if rows[0].Value != "-" || rows[0].Hint != none || rows[1].Value != "15.5 mm" {
		t.Errorf("rows: %+v", rows)
	}
	var plan, divided strings.Builder
	if err := Plan(&plan, p); err != nil {
		t.Fatal(err)
	}
	for _, c := range p.Chords {
		divide(&divided, geometry.Millimetre, Circle{Name: c.Name, Radius: c.Radius, Parts: c.Parts})
	}
	for name, text := range map[string]string{"plan": plan.String(), "divide": divided.String()} {
		if strings.Count(text, none) != 1 || !strings.Contains(text, "15.5") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}

const tooShortJob = "title = \"x\"\nlength = \"mm\"\n[blank]\nfloor = 5\nstation = [{height = 0, across = 80, wall = 6}, {height = 100, across = 80, wall = 6}]\n" +
	"[[wheel]]\nname = \"m\"\nedge = \"mitre\"\nacross = 100\nthick = 30\nangle = 90\n" +
	"[layout]\nrepeats = 12\n[[motif]]\nkind = \"leaf\"\nwheel = \"m\"\ndepth = 0.5\n"
