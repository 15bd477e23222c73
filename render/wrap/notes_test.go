package wrap

import (
	"context"
	"strings"
	"testing"

	"roundlay/geometry"
)

// The notes say for every circle how the last step ends, and for every motif
// the wheel and how deep it goes.
func TestNotesTellSettingsAndWheels(t *testing.T) {
	page := wrapOf(t, planOf(t, swagJob(taperedGlass, 6)), on(t, Outside, huge)).Pages[0]
	for _, want := range []string{
		"Foot, 70.0 mm across: set 35.0 mm; the last step will close.",
		"the last step will",
		"swag, mitre, 0.50 mm deep.", "ring, mitre, 0.50 mm deep.",
	} {
		if !says(page, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	steps, settings := 0, 0
	for _, text := range textsOn(page) {
		steps += strings.Count(text.Words, "the last step will")
		settings += strings.Count(text.Words, " across: set ")
	}
	if steps != 3 || settings != 3 {
		t.Errorf("of %d circles %d say how their last step ends", settings, steps)
	}
	if !says(page, "Cuts 1 to 13 of the first repeat: leaf, mitre, ") {
		t.Error("the leaf's cuts are not listed by their numbers")
	}
	two := strings.Replace(swagJob(taperedGlass, 6), "rows = 2\n", "rows = 2\non = \"even\"\n", 1)
	if page := wrapOf(t, planOf(t, two), on(t, Outside, huge)).Pages[0]; !says(page, " of the first 2 repeats: swag, mitre, 0.50 mm deep.") {
		t.Error("where odd and even differ it does not say so")
	}
}

// Where it is the inside that is curved it says so, and an error that is none is
// not listed.
func TestFitWordsAreTrue(t *testing.T) {
	// The outside is straight; a wall that bellies makes the inside curved.
	const bellied = `{height=0, across=80, wall=8}, {height=50, across=80, wall=3}, {height=100, across=80, wall=8}`
	w := wrapOf(t, planOf(t, leafJob(bellied, 5)), on(t, Inside, huge))
	if !says(w.Pages[0], "The inside is curved") || says(w.Pages[0], "The glass is curved") {
		t.Error("it does not say that it is the inside that is curved")
	}
	for name, test := range map[string]struct {
		gain, loss float64
		want       string
	}{
		"both":    {0.3, 0.2, "up to 0.012 in longer or 0.008 in shorter than"},
		"no loss": {0.3, 0.01, "up to 0.012 in longer than"},
		"no gain": {0.012, 0.2, "up to 0.008 in shorter than"},
		"neither": {0.01, 0.01, "within 0.001 in of"},
	} {
		p := planOf(t, leafJob(barrelGlass, 5))
		p.Job.Length = geometry.Inch
		s := &facePaper{plan: p}
		s.gores.Gain, s.gores.Loss = test.gain, test.loss
		if got := (composer{sheet: s}).edgeError(); got != test.want {
			t.Errorf("%s: %q, want %q", name, got, test.want)
		}
	}
}

// The test page's numbers have units, and its margin is printed as it can be typed
// in a job of any unit.
func TestTestPageTellsUnits(t *testing.T) {
	w, err := NewTestPage(context.Background(), demoPlan(t), on(t, Outside, "letter"))
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	for _, text := range textsOn(w.Pages[0]) {
		count[text.Words]++
	}
	// One on each ladder, whose last number is 10, and one on each ruler.
	if count["10 mm"] != 4+2 || count["1 in"] != 2 {
		t.Errorf("%d numbers are in mm, %d in in", count["10 mm"], count["1 in"])
	}
	if !says(w.Pages[0], `give --margin "5 mm"`) {
		t.Error("the margin is not printed as it can be typed")
	}
}
