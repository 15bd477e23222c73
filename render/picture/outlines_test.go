package picture

import (
	"math"
	"slices"
	"testing"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

func linesOf(polygons ...polygon) [][]geometry.Point {
	o := newOutlines(0.001)
	for _, p := range polygons {
		o.add(p)
	}
	return o.lines()
}

func TestOutlinesJoin(t *testing.T) {
	hollow := []polygon{square(0, 0, 1), square(1, 0, 1), square(2, 0, 1), square(0, 1, 1), square(2, 1, 1),
		square(0, 2, 1), square(1, 2, 1), square(2, 2, 1)}
	for _, c := range []struct {
		name     string
		polygons []polygon
		areas    []float64 // of the outlines, holes below zero, rising
	}{
		{"two side by side", []polygon{square(0, 0, 1), square(1, 0, 1)}, []float64{2}},
		{"two apart", []polygon{square(0, 0, 1), square(3, 0, 1)}, []float64{1, 1}},
		{"two that touch at a corner", []polygon{square(0, 0, 1), square(1, 1, 1)}, []float64{1, 1}},
		{"a frame", hollow, []float64{-1, 9}},
		{"the frame filled", append(hollow, square(1, 1, 1)), []float64{9}},
		// The corners of the small ones lie on the large one's edge: a hair is left
		// between, and goes.
		{"two beside one of twice their size", []polygon{square(0, 0, 2), square(2, 0, 1), square(2, 1, 1)}, []float64{6}},
		{"less than can be seen", []polygon{square(0, 0, 0.004)}, nil},
	} {
		var got []float64
		for _, line := range linesOf(c.polygons...) {
			got = append(got, math.Round(1e6*ringArea(line))/1e6)
		}
		slices.Sort(got)
		if !slices.Equal(got, c.areas) {
			t.Errorf("%s: outlines of %v, want %v", c.name, got, c.areas)
		}
	}
	if line := linesOf(square(0, 0, 1), square(1, 0, 1)); len(line[0]) != 4 && len(line[0]) != 5 {
		t.Errorf("two squares have the outline %v", line)
	}
}

func TestShadesSortByTone(t *testing.T) {
	s := newShades(0.1, 0.001)
	s.add(0.61, square(0, 0, 1))
	s.add(0.2, square(5, 0, 1))
	s.add(0.58, square(1, 0, 1))
	marks := s.areas()
	if len(marks) != 2 {
		t.Fatalf("%d marks for two tones", len(marks))
	}
	dark, light := marks[0].(drawing.Area), marks[1].(drawing.Area)
	if dark.Ink != tone(0.2).ink() || light.Ink != tone(6*0.1).ink() || len(light.Outlines) != 1 {
		t.Errorf("the marks are %v", marks)
	}
}

// Bands make up the whole, and each is in the tone nearest to its own.
func TestBands(t *testing.T) {
	const step = 0.1
	for _, slope := range []float64{0, 0.05, 0.3, 1.7} {
		p := plane{geometry.Point{X: 0.5, Y: 0.5}, 0.43, geometry.Point{X: slope, Y: -slope / 3}}
		area := 0.0
		bands(square(0, 0, 1), step, p.on, func(drawn tone, part polygon) {
			area += part.area()
			if off := math.Abs(p.on(part.middle()) - float64(drawn)); off > step/2+1e-9 {
				t.Errorf("slope %g: a part of tone %.3f is drawn in %.3f", slope, p.on(part.middle()), drawn)
			}
			if level := float64(drawn) / step; math.Abs(level-math.Round(level)) > 1e-9 {
				t.Errorf("slope %g: %.4f is no step", slope, drawn)
			}
		})
		if !near(area, 1, 1e-3) {
			t.Errorf("slope %g: the bands of a square of 1 mm² have %.6f", slope, area)
		}
	}
}
