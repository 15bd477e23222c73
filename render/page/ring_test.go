package page

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// A ring of radius 3 round (10, 20), its letter 5 away as 3, 4, 5 go: the line
// begins at 3/5 of the way.
func TestRingLeadsToItsLetter(t *testing.T) {
	r := Ring{Radius: 3, Pen: drawing.Pen{Width: 0.4}, Lead: drawing.Pen{Width: 0.2}, Edge: 0.1}
	centre := geometry.Point{X: 10, Y: 20}
	line := r.LeadTo(centre, geometry.Point{X: 13, Y: 24})
	edge, lead := line[0].(drawing.Stroke), line[1].(drawing.Stroke)
	if want := (geometry.Point{X: 11.8, Y: 22.4}); r2.Norm(r2.Sub(lead.Points[0], want)) > 1e-9 {
		t.Errorf("it begins at %v, want %v", lead.Points[0], want)
	}
	if edge.Pen.Ink != drawing.White || math.Abs(edge.Pen.Width-0.4) > 1e-9 || lead.Pen.Width != 0.2 {
		t.Errorf("pens %+v and %+v", edge.Pen, lead.Pen)
	}
	for _, q := range r.Round(centre)[1].(drawing.Stroke).Points {
		if off := r2.Norm(r2.Sub(q, centre)); math.Abs(off-3) > 1e-9 {
			t.Errorf("the ring passes %v from its centre", off)
		}
	}
	r.Edge = 0
	if n := len(r.Round(centre)); n != 1 {
		t.Errorf("%d marks of a ring without an edge", n)
	}
}
