package picture

import (
	"context"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// Two glasses of different sizes, each with a cut from 20 to 80 mm above the table in the
// middle of its near side. Beside each other the cuts keep that length, which is their
// scale, and stand at one height above one table; each glass has its own head above it.
func TestBeside(t *testing.T) {
	larger := strings.NewReplacer("across=80", "across=120", "height=100", "height=150").Replace(upright)
	o := Options{}
	p, err := Beside(context.Background(), []Glass{{planFor(t, upright), "small.toml"}, {planFor(t, larger), "large.toml"}}, o)
	if err != nil {
		t.Fatal(err)
	}
	page := p.board().page(false)
	const from, to = 20.0, 80.0
	boxes := [2]geometry.Box{geometry.EmptyBox(), geometry.EmptyBox()}
	for _, a := range areas(page.Drawing, drawing.Cuts) {
		for _, outline := range a.Outlines {
			box := geometry.BoxOf(outline...)
			which := 0
			if box.Min.X > page.Width/2 {
				which = 1
			}
			boxes[which] = boxes[which].Union(box)
		}
	}
	for i, box := range boxes {
		if _, up := box.Size(); !near(up, to-from, 0.02) {
			t.Errorf("glass %d: a cut of %g mm is drawn %g mm long", i+1, to-from, up)
		}
	}
	if !near(boxes[0].Min.Y, boxes[1].Min.Y, 0.02) {
		t.Errorf("the glasses stand at different heights: %v, %v", boxes[0], boxes[1])
	}
	// The cuts are in the middles of grounds that are as wide as the glasses and the air
	// round them, or as narrow as a ground may be; the gutter is between.
	middle := func(b geometry.Box) float64 { return (b.Min.X + b.Max.X) / 2 }
	small, large := max(80+2*air, narrow), 120+2*air
	if apart := middle(boxes[1]) - middle(boxes[0]); !near(apart, small/2+gutter+large/2, 0.1) {
		t.Errorf("the glasses stand %g mm apart", apart)
	}
	for _, words := range []string{"small.toml, ", "large.toml, ", "100.0 mm high", "150.0 mm high"} {
		if !strings.Contains(wordsOn(page.Drawing), words) {
			t.Errorf("the page does not say %q", words)
		}
	}
}

// Seen all round, glasses stand in rows, each as it stands alone but for the file's name,
// which takes no more room.
func TestBesideRound(t *testing.T) {
	plan := planFor(t, upright)
	o := Options{Round: true}
	alone, err := New(context.Background(), plan, o)
	if err != nil {
		t.Fatal(err)
	}
	both, err := Beside(context.Background(), []Glass{{plan, "a"}, {plan, "b"}}, o)
	if err != nil {
		t.Fatal(err)
	}
	one, two := alone.board().page(false), both.board().page(false)
	if one.Width != two.Width || !near(two.Height, 2*one.Height-2*margin+gutter, 1.01) {
		t.Errorf("one row is %g by %g, two are %g by %g", one.Width, one.Height, two.Width, two.Height)
	}
}
