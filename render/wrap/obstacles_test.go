package wrap

import (
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Words keep off a mark of any kind, also of one that nothing here names.
func TestWordsKeepOffMarksOfAnyKind(t *testing.T) {
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	type dot struct{ drawing.Mark }
	block := drawing.Rectangle(geometry.Box{Max: geometry.Point{X: 10, Y: 10}})
	for _, layer := range drawing.Layers() {
		var d drawing.Drawing
		d.Add(layer, dot{drawing.Fill{Points: block}})
		o := obstacles{fonts: letters}
		o.avoid(d)
		c := clearance{own: 1, cuts: 1, ink: 1, faint: -1, hatching: -1}
		for words, gap := range map[geometry.Point]bool{{X: 5, Y: 5}: false, {X: 5, Y: 10.5}: false, {X: 5, Y: 12}: true} {
			text := drawing.Text{At: words, Words: "12", Size: 6}
			if o.clear(o.figures(text), otherInk, c) != gap {
				t.Errorf("on %v: a number at %v stands clear: %v", layer, words, !gap)
			}
		}
	}
}
