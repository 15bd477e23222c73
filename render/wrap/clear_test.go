package wrap

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// crowdedJob has findings to ring, close to each other.
func crowdedJob() string {
	return strings.Replace(leafJob(taperedGlass, 6), "fronds = 6", "fronds = 14", 1)
}

// checkClear checks that nothing on any page runs into the margin, and no words
// run into other words or into the check bars, or stand on a line to be cut.
func checkClear(t *testing.T, all []printed) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range all {
		margin := 6.0
		if p.test {
			margin = 0 // it tries the edges
		}
		inside := geometry.Box{
			Min: geometry.Point{X: margin, Y: margin}, Max: geometry.Point{X: p.page.Width - margin, Y: p.page.Height - margin},
		}.Grow(0.01)
		d := p.page.Drawing
		for _, layer := range drawing.Layers() {
			for _, m := range d.On(layer) {
				if box := boxOf(letters, m); box.Min.X < inside.Min.X || box.Min.Y < inside.Min.Y || box.Max.X > inside.Max.X || box.Max.Y > inside.Max.Y {
					t.Errorf("%s: on layer %v something lies within %.2f, outside the margin: %+v", p.name, layer, box, m)
				}
			}
		}
		overprinted(t, p, letters)
		hidden(t, p, letters)
	}
}

// boxOf returns the box that a mark fills.
func boxOf(letters *lettering.Letters, m drawing.Mark) geometry.Box {
	switch m := m.(type) {
	case drawing.Stroke:
		return geometry.BoxOf(m.Points...).Grow(m.Pen.Width / 2)
	case drawing.Fill:
		return geometry.BoxOf(m.Points...)
	case drawing.Text:
		return inked(letters, m).Box()
	}
	return geometry.EmptyBox()
}

// inked returns the outline of a text: from its baseline to the top of its
// capitals, leaving out the room for accents and tails.
func inked(letters *lettering.Letters, text drawing.Text) geometry.Outline {
	const capitals = 0.72 // of the size
	start := letters.Start(text)
	corners := drawing.Rectangle(geometry.Box{Max: geometry.Point{
		X: letters.Width(text.Words, text.Size, text.Bold), Y: capitals * text.Size * lettering.MillimetresPerPoint,
	}})
	for i, q := range corners {
		corners[i] = r2.Add(start, r2.Rotate(q, text.Turn, geometry.Point{}))
	}
	return geometry.NewOutline(corners)
}

func overprinted(t *testing.T, p printed, letters *lettering.Letters) {
	t.Helper()
	texts := textsOn(p.page)
	outlines := make([]geometry.Outline, len(texts))
	for i, text := range texts {
		outlines[i] = inked(letters, text)
	}
	const air = 0.05
	for i, a := range outlines {
		for k, b := range outlines[:i] {
			if off, _, _ := a.Distance(b, air); off < air {
				t.Errorf("%s: %q runs into %q", p.name, texts[i].Words, texts[k].Words)
			}
		}
		for _, m := range p.page.Drawing.On(drawing.CheckBars) {
			line, ok := m.(drawing.Stroke)
			if !ok {
				continue
			}
			box := geometry.BoxOf(line.Points...).Grow(line.Pen.Width / 2)
			if off, _, _ := a.Distance(geometry.NewOutline(drawing.Rectangle(box)), air); off < air {
				t.Errorf("%s: %q runs into a check bar", p.name, texts[i].Words)
			}
		}
	}
}

// Patches lie on as few pages as boxes can: no more than their area asks for,
// rounded up, wherever that was to be had by rows and columns; and none lies on
// another.
func TestPatchesArePacked(t *testing.T) {
	p := planOf(t, leafJob(taperedGlass, 12))
	for sheet, most := range map[string]int{"a4": 3, "a3": 1, "letter": 3, "tabloid": 1} {
		o := on(t, Patches, sheet)
		letters, err := lettering.Load()
		if err != nil {
			t.Fatal(err)
		}
		s, err := newFacePaper(p, o, letters)
		if err != nil {
			t.Fatal(err)
		}
		a := composer{s, o, page.NewFrame(letters, p.Job.Length)}
		l, ok := a.layout()
		if !ok || l.slots == nil {
			t.Fatalf("%s: no places", sheet)
		}
		box := s.box(s.papers()[0])
		var placed []geometry.Box
		for _, slot := range l.slots {
			b := box.Moved(slot.put(box))
			room := l.Room().Grow(1e-9)
			if b.Min.X < room.Min.X || b.Min.Y < room.Min.Y || b.Max.X > room.Max.X || b.Max.Y > room.Max.Y {
				t.Errorf("%s: a patch at %.1f, the room is %.1f", sheet, b, room)
			}
			for _, other := range placed {
				if b.Distance2(other) < packGap*packGap-1e-6 {
					t.Errorf("%s: patches at %.1f and %.1f", sheet, b, other)
				}
			}
			placed = append(placed, b)
		}
		if pages := (12 + len(l.slots) - 1) / len(l.slots); pages > most {
			t.Errorf("%s: %d pages for 12 patches, %d will do", sheet, pages, most)
		}
	}
}

// How many papers of a size go into a room, counted by hand.
func TestSlots(t *testing.T) {
	for _, test := range []struct {
		width, height, wide, tall float64
		want                      int
	}{
		{50, 100, 102, 100, 2},   // side by side, a gap between
		{50, 100, 101.9, 100, 1}, // not quite
		{50, 100, 100, 50, 1},    // on its side
		{50, 100, 152, 102, 3},   // one upright, two lying beside it
		{50, 100, 102, 152, 3},   // two upright, one lying above or below
		{100, 50, 102, 152, 3},   // the same
		{50, 100, 206, 100, 4},   // four and three gaps
		{50, 100, 49, 300, 0},    // nowhere
		{30, 30, 94, 62, 6},      // squares
	} {
		room := geometry.Box{Min: geometry.Point{X: 5, Y: 7}, Max: geometry.Point{X: 5 + test.wide, Y: 7 + test.tall}}
		if got := len(slots(test.width, test.height, room)); got != test.want {
			t.Errorf("%v holds %d", test, got)
		}
	}
}

// A mirrored wrap is the wrap with right and left changed: its lines, not its
// words.
func TestMirrorChangesRightAndLeft(t *testing.T) {
	p := planOf(t, leafJob(taperedGlass, 5))
	o := on(t, Outside, huge)
	o.Seam = Butt
	plain := wrapOf(t, p, o).Pages[0]
	o.Mirror = true
	mirrored := wrapOf(t, p, o).Pages[0]
	lines := func(page printing.Page, sign float64) []geometry.Point {
		var all []geometry.Point
		box := geometry.EmptyBox()
		for _, m := range page.Drawing.On(drawing.Cuts) {
			for _, q := range m.(drawing.Stroke).Points {
				q.X *= sign
				all, box = append(all, q), box.Add(q)
			}
		}
		for i := range all {
			all[i] = r2.Sub(all[i], box.Min)
		}
		return all
	}
	a, b := lines(plain, 1), lines(mirrored, -1)
	if len(a) != len(b) || len(a) == 0 {
		t.Fatalf("%d places, mirrored %d", len(a), len(b))
	}
	for i := range a {
		if r2.Norm(r2.Sub(a[i], b[i])) > 1e-6 {
			t.Fatalf("%v comes to lie at %v", a[i], b[i])
		}
	}
	if !says(mirrored, "Mirrored: lay the printed face on the glass") {
		t.Error("the page does not say that it is mirrored")
	}
}

// The seam falls on the left edge of the repeat that was asked for, and the
// numbers at the base go on from there.
func TestSeamFallsWhereItIsAskedFor(t *testing.T) {
	p := planOf(t, leafJob(straightGlass, 5)) // a leaf does not reach its repeat's edge
	for repeat := 1; repeat <= 5; repeat++ {
		o := on(t, Outside, huge)
		o.SeamAt = repeat
		if seam, want := findSeam(p, repeat, 1), (float64(repeat)-1.5)*2*math.Pi/5; math.Abs(seam-want) > 1e-9 {
			t.Errorf("repeat %d: the seam is at %g, its left edge at %g", repeat, seam, want)
		}
		var numbers []drawing.Text
		for _, text := range textsOn(wrapOf(t, p, o).Pages[0]) {
			if text.Size == 9 && text.Bold && len(text.Words) == 1 {
				numbers = append(numbers, text)
			}
		}
		if len(numbers) != 5 {
			t.Fatalf("%d repeats are numbered", len(numbers))
		}
		for i, text := range numbers {
			if want := string(rune('1' + (repeat-1+i)%5)); text.Words != want || i > 0 && text.At.X < numbers[i-1].At.X {
				t.Errorf("seam at %d: number %s at %.1f, want %s", repeat, text.Words, text.At, want)
			}
		}
	}
}
