package drawing

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Thinned returns a polyline without unneeded points: those it leaves out lie within
// a tolerance of it (Ramer, Douglas and Peucker). Both ends stay. A circle of Flatness
// keeps all its points up to a tolerance of four times that.
func Thinned(points []geometry.Point, tolerance float64) []geometry.Point {
	if len(points) < 3 {
		return points
	}
	first, last := points[0], points[len(points)-1]
	farthest, at := -1.0, 0
	for i, p := range points[1 : len(points)-1] {
		if d := distanceTo(p, first, last); d > farthest {
			farthest, at = d, i+1
		}
	}
	if farthest <= tolerance {
		return []geometry.Point{first, last}
	}
	kept := Thinned(points[:at+1], tolerance)
	return append(kept[:len(kept)-1:len(kept)-1], Thinned(points[at:], tolerance)...)
}

// distanceTo returns the distance from a place to the segment from a to b.
func distanceTo(p, a, b geometry.Point) float64 {
	along := r2.Sub(b, a)
	length2 := r2.Norm2(along)
	if length2 == 0 {
		return r2.Norm(r2.Sub(p, a))
	}
	t := min(max(r2.Dot(r2.Sub(p, a), along)/length2, 0), 1)
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(t, along))))
}

// Simplified returns the drawing without unneeded points, on all layers.
func (d Drawing) Simplified(tolerance float64) Drawing {
	return d.each(func(m Mark) []Mark { return []Mark{m.thinned(tolerance)} })
}

func (s Stroke) thinned(tolerance float64) Mark {
	s.Points = Thinned(s.Points, tolerance)
	return s
}

func (f Fill) thinned(tolerance float64) Mark {
	f.Points = Thinned(f.Points, tolerance)
	return f
}

func (a Area) thinned(tolerance float64) Mark {
	outlines := make([][]geometry.Point, len(a.Outlines))
	for i, o := range a.Outlines {
		outlines[i] = Thinned(o, tolerance)
	}
	a.Outlines = outlines
	return a
}

func (t Text) thinned(float64) Mark { return t }

// Thinned returns the drawing without unneeded points in the fills and lines of one
// layer.
func (d Drawing) Thinned(layer Layer, tolerance float64) Drawing {
	var only Drawing
	only.layers[layer] = d.layers[layer]
	out := d
	out.layers[layer] = only.Simplified(tolerance).layers[layer]
	return out
}
