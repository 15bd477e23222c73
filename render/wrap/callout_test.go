package wrap

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// starJob is stars so small that most of their rays have no room for a number.
func starJob() string {
	return strings.NewReplacer(`kind = "leaf"`, `kind = "star"`, "fronds = 6\n", "points = 8\n", "height = 0.9\n", "height = 0.16\n").
		Replace(leafJob(straightGlass, 5))
}

// No number is smaller than 5 points. One that is not beside its cut has a line that
// begins on it; all others are in the key.
func TestNumbersAreLegible(t *testing.T) {
	t.Parallel()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	p := planOf(t, starJob())
	o := on(t, Outside, huge)
	o.NoRings = true
	s, err := newFacePaper(p, o, letters)
	if err != nil {
		t.Fatal(err)
	}
	paper := s.papers()[0]
	d := s.draw(paper)
	seen := map[int]bool{}
	for _, number := range numbersOn(d) {
		id, _ := strconv.Atoi(number.Words)
		seen[id] = true
		if number.Size < 5 {
			t.Errorf("number %d is set in %g points", id, number.Size)
		}
	}
	lines := map[int][]geometry.Point{}
	st := s.frame(paper)
	for _, c := range p.All() {
		for _, q := range c.Samples {
			turns := math.Floor((q.Theta - s.seam) / (2 * math.Pi))
			lines[c.ID] = append(lines[c.ID], st.at(q.Theta-2*math.Pi*turns, q.Height))
		}
	}
	callouts := 0
	marks := d.On(drawing.Notes)
	for i, m := range marks {
		leader, ok := m.(drawing.Stroke)
		if !ok {
			continue
		}
		callouts++
		text, ok := marks[i+1].(drawing.Text)
		if !ok {
			t.Fatalf("a line in the notes leads to %v", marks[i+1])
		}
		id, _ := strconv.Atoi(text.Words)
		off := math.Inf(1)
		for k := 1; k < len(lines[id]); k++ {
			off = min(off, distance(leader.Points[0], lines[id][k-1], lines[id][k]))
		}
		if off > 0.05 {
			t.Errorf("the line of number %d begins %.2f mm off its cut", id, off)
		}
		if end := leader.Points[len(leader.Points)-1]; inked(letters, text).DistanceTo(end, 2) > 0.6 {
			t.Errorf("the line of number %d ends %.2f mm off it", id, inked(letters, text).DistanceTo(end, 100))
		}
	}
	if callouts == 0 {
		t.Error("no number is called out: nothing is tried")
	}
	var left []int
	for _, c := range p.All() {
		if !seen[c.ID] {
			left = append(left, c.ID)
		}
	}
	key := s.unnumbered([]piece{paper})
	t.Logf("%d of %d cuts are numbered, %d called out; key: %v", len(seen), len(p.All()), callouts, key)
	switch {
	case len(left) == 0 && key != nil:
		t.Errorf("all are numbered, and the key says %q", key[0].Words)
	case len(left) > 0 && (key == nil || !strings.Contains(key[0].Words, "No room for the numbers of")):
		t.Errorf("%d are not numbered, and no key says so", len(left))
	case len(left) > 0 && !says(wrapOf(t, p, o).Whole, "No room for the numbers of"):
		t.Error("the picture has no key")
	}
}

// Worked by hand: 3 is on the other piece, 4, 6, 7 and 8 on none.
func TestKeyListsWhatHasNoNumber(t *testing.T) {
	one, two := piece{number: 1}, piece{number: 2}
	s := &facePaper{numbering: map[piece]numbering{
		one: {set: []int{1, 2}, left: []int{3, 4, 8}}, two: {set: []int{3, 5}, left: []int{4, 6, 7}},
	}}
	want := "No room for the numbers of cuts 4, 6 to 8: count on from their neighbours, as the cut list does."
	if key := s.unnumbered([]piece{one, two}); len(key) != 1 || key[0].Words != want {
		t.Errorf("%v, want %q", key, want)
	}
	if key := s.unnumbered(nil); key != nil {
		t.Errorf("of no pieces: %v", key)
	}
}
