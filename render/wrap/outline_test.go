package wrap

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Every footprint has an outline, of black, that lies under all grey: a printer
// that makes grey of dots shows where a groove ends. Where a gore or a piece ends,
// no line runs across the groove.
func TestFootprintsHaveOutlines(t *testing.T) {
	t.Parallel()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"straight": leafJob(straightGlass, 5), "barrel": leafJob(barrelGlass, 5)} {
		p := planOf(t, text)
		s, err := newFacePaper(p, on(t, Outside, "a4"), letters)
		if err != nil {
			t.Fatal(err)
		}
		lines, edged, bare := 0, 0, 0
		for _, m := range s.draw(s.papers()[0]).On(drawing.Footprints) {
			switch m := m.(type) {
			case drawing.Stroke:
				if edged+bare > 0 {
					t.Fatalf("%s: an outline lies on a fill", name)
				}
				if m.Closed || !m.Pen.Same(grooveEdge()) || m.Pen.Ink != drawing.Black {
					t.Errorf("%s: a line %v on footprints, closed %v", name, m.Pen, m.Closed)
				}
				lines++
			case drawing.Fill:
				if m.Edge.Same(grooveEdge()) {
					edged++
				} else {
					bare++
				}
			}
		}
		t.Logf("%s: %d whole, %d cut off with %d lines round them", name, edged, bare, lines)
		if edged == 0 || (bare == 0) != (lines == 0) || lines < bare {
			t.Errorf("%s: %d footprints are outlined, %d have %d lines", name, edged, bare, lines)
		}
	}
}

// No line between repeats lies on an edge of the paper, or so near that the two
// would be one to scissors, though the seam is on such a line.
func TestRepeatLinesKeepOffEdges(t *testing.T) {
	t.Parallel()
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"straight": leafJob(straightGlass, 5), "tapered": leafJob(taperedGlass, 6), "barrel": leafJob(barrelGlass, 5)} {
		for _, side := range []Side{Outside, Patches} {
			p := planOf(t, text)
			s, err := newFacePaper(p, on(t, side, huge), letters)
			if err != nil {
				t.Fatal(err)
			}
			onRepeat := math.Abs(math.Remainder(s.seam-p.PitchAngle()/2, p.PitchAngle())) < 1e-9
			for _, paper := range s.papers() {
				d := s.draw(paper)
				var edges []geometry.Outline
				for _, m := range d.On(drawing.Paper) {
					edges = append(edges, geometry.NewOutline(m.(drawing.Stroke).Points))
				}
				drawn := 0
				for _, m := range d.On(drawing.Marks) {
					line, ok := m.(drawing.Stroke)
					if !ok || !line.Pen.Same(repeatPen()) {
						continue
					}
					drawn++
					middle := line.Points[len(line.Points)/2]
					for _, edge := range edges {
						for i := range len(edge.Points) - 1 {
							if off := distance(middle, edge.Points[i], edge.Points[i+1]); off < 0.4 {
								t.Fatalf("%s, %v: a repeat's line lies %.3f mm off an edge", name, side, off)
							}
						}
					}
				}
				if side == Outside && onRepeat && drawn == 0 {
					t.Errorf("%s: no lines between repeats", name)
				}
			}
			if name == "straight" && !onRepeat {
				t.Errorf("%s, %v: the seam is not between repeats: nothing is tried", name, side)
			}
		}
	}
}
