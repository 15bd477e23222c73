package drawing

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"roundlay/geometry"
)

// A square of side 4 with a square hole of side 2 in it.
func frame() Area {
	return Area{Ink: 7, Outlines: [][]geometry.Point{
		{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 0, Y: 4}},
		{{X: 1, Y: 1}, {X: 1, Y: 3}, {X: 3, Y: 3}, {X: 3, Y: 1}},
	}}
}

func TestAreaMoves(t *testing.T) {
	var d Drawing
	d.Add(Cuts, frame())
	if box := d.Box(); box != (geometry.Box{Max: geometry.Point{X: 4, Y: 4}}) {
		t.Errorf("the box is %v", box)
	}
	got := d.Moved(geometry.Motion{Cos: 1, X: 10, Y: 20}).On(Cuts)[0].(Area)
	if got.Ink != 7 || got.Outlines[0][0] != (geometry.Point{X: 10, Y: 20}) || got.Outlines[1][2] != (geometry.Point{X: 13, Y: 23}) {
		t.Errorf("moved: %v", got)
	}
	if diff := cmp.Diff(frame(), d.On(Cuts)[0]); diff != "" {
		t.Errorf("moving changed the drawing itself (-want +got):\n%s", diff)
	}
}

// Clipped, what is left of an area and of its hole still run opposite ways.
func TestAreaClips(t *testing.T) {
	area := func(m Mark) float64 {
		doubled := 0.0
		for _, o := range m.(Area).Outlines {
			for i, a := range o {
				b := o[(i+1)%len(o)]
				doubled += a.X*b.Y - a.Y*b.X
			}
		}
		return doubled / 2
	}
	clip := func(minX, maxX float64) []Mark {
		var d Drawing
		d.Add(Cuts, frame())
		return d.Clipped(BoxWindow(geometry.Box{Min: geometry.Point{X: minX, Y: -1}, Max: geometry.Point{X: maxX, Y: 5}})).On(Cuts)
	}
	for _, c := range []struct{ from, to, area float64 }{
		{-1, 5, 12}, {-1, 2, 6}, {-1, 1, 4}, {1.5, 2.5, 2}, {3, 5, 4},
	} {
		marks := clip(c.from, c.to)
		if len(marks) != 1 || area(marks[0]) != c.area {
			t.Errorf("from %g to %g: %v, want an area of %g", c.from, c.to, marks, c.area)
		}
	}
	if marks := clip(6, 7); len(marks) != 0 {
		t.Errorf("beside it: %v", marks)
	}
}
