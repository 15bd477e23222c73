package drawing

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A fill that is cut off has no edge along the cut: the rest of its edge is a line.
func TestNoEdgeAlongACut(t *testing.T) {
	edge := Pen{Width: 0.2}
	var d Drawing
	d.Add(Footprints, Fill{Points: points{{X: 15, Y: 2}, {X: 25, Y: 2}, {X: 25, Y: 8}, {X: 15, Y: 8}}, Ink: 205, Edge: edge})
	want := []Mark{
		Stroke{Points: points{{X: 15, Y: 2}, {X: 20, Y: 2}}, Pen: edge},
		Stroke{Points: points{{X: 20, Y: 8}, {X: 15, Y: 8}, {X: 15, Y: 2}}, Pen: edge},
		Fill{Points: points{{X: 15, Y: 2}, {X: 20, Y: 2}, {X: 20, Y: 8}, {X: 15, Y: 8}}, Ink: 205},
	}
	if diff := cmp.Diff(want, d.Clipped(window).On(Footprints), near); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestEdgesFirst(t *testing.T) {
	box := points{{}, {X: 1}, {X: 1, Y: 1}}
	edged, bare := Fill{Points: box, Edge: Pen{Width: 0.2}}, Fill{Points: box}
	line := Stroke{Points: box, Pen: Pen{Width: 0.2}}
	var d Drawing
	d.Add(Footprints, bare, edged, line, edged)
	d.Add(Cuts, bare, line)
	if diff := cmp.Diff([]Mark{line, edged, edged, bare}, d.EdgesFirst(Footprints).On(Footprints)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]Mark{bare, line}, d.EdgesFirst(Footprints).On(Cuts)); diff != "" {
		t.Errorf("another layer (-want +got):\n%s", diff)
	}
}
