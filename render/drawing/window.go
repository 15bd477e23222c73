package drawing

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// HalfPlane is one side of a straight line: the places p with Normal·p ≥ Least.
type HalfPlane struct {
	Normal geometry.Point
	Min    float64
}

// LeftOf returns the half-plane to the left of the line from a to b, the line
// included.
func LeftOf(a, b geometry.Point) HalfPlane {
	along := r2.Sub(b, a)
	normal := geometry.Point{X: -along.Y, Y: along.X}
	return HalfPlane{normal, r2.Dot(normal, a)}
}

// depth returns how far inside the line p lies, in lengths of the normal.
func (h HalfPlane) depth(p geometry.Point) float64 { return r2.Dot(h.Normal, p) - h.Min }

// Window is a convex part of the plane: the places in all of its half-planes.
// With none it is the whole plane.
type Window []HalfPlane

// ConvexWindow returns the inside of a convex polygon, its corners given
// anticlockwise.
func ConvexWindow(corners ...geometry.Point) Window {
	w := make(Window, len(corners))
	for i, a := range corners {
		w[i] = LeftOf(a, corners[(i+1)%len(corners)])
	}
	return w
}

// BoxWindow returns the inside of a box.
func BoxWindow(b geometry.Box) Window { return ConvexWindow(Rectangle(b)...) }

// Contains reports whether a place lies in the window or on its edge.
func (w Window) Contains(p geometry.Point) bool {
	for _, h := range w {
		if h.depth(p) < 0 {
			return false
		}
	}
	return true
}

// span returns the part of the segment from a to b that lies in the window, in
// fractions of it (Cyrus and Beck). It is empty where from ≥ to.
func (w Window) span(a, b geometry.Point) (from, to float64) {
	from, to = 0, 1
	for _, h := range w {
		da, db := h.depth(a), h.depth(b)
		switch {
		case da < 0 && db < 0:
			return 0, 0
		case da < 0:
			from = max(from, da/(da-db))
		case db < 0:
			to = min(to, da/(da-db))
		}
	}
	return from, to
}

// clipped makes each piece a stroke of its own, with dashes of its own.
func (s Stroke) clipped(w Window) []Mark {
	if w.containsAll(s.Points) {
		return []Mark{s}
	}
	run := s.Points
	if s.Closed {
		run = append(run[:len(run):len(run)], run[0])
	}
	var pieces []Mark
	var piece []geometry.Point
	finish := func() {
		if len(piece) > 1 {
			pieces = append(pieces, Stroke{Points: piece, Pen: s.Pen, Name: s.Name})
		}
		piece = nil
	}
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		if from, to := w.span(a, b); from < to {
			if from > 0 {
				finish()
			}
			if piece == nil {
				piece = []geometry.Point{between(a, b, from)}
			}
			piece = append(piece, between(a, b, to))
			if to < 1 {
				finish()
			}
		} else {
			finish()
		}
	}
	finish()
	return pieces
}

// clipped cuts the polygon by one line after another (Sutherland and Hodgman).
// A polygon that falls apart stays one outline, its parts joined along the cut,
// where the joins enclose nothing. Its edge becomes strokes, for it does not run
// along the cut.
func (f Fill) clipped(w Window) []Mark {
	if w.containsAll(f.Points) {
		return []Mark{f}
	}
	var marks []Mark
	if f.Edge.Width > 0 {
		marks = Stroke{Points: f.Points, Closed: true, Pen: f.Edge}.clipped(w)
		f.Edge = Pen{}
	}
	for _, h := range w {
		var kept []geometry.Point
		for i, b := range f.Points {
			a := f.Points[(i+len(f.Points)-1)%len(f.Points)]
			da, db := h.depth(a), h.depth(b)
			if (da < 0) != (db < 0) {
				kept = append(kept, between(a, b, da/(da-db)))
			}
			if db >= 0 {
				kept = append(kept, b)
			}
		}
		f.Points = kept
	}
	if len(f.Points) < 3 {
		return nil
	}
	return append(marks, f)
}

func (t Text) clipped(w Window) []Mark {
	if !w.Contains(t.At) {
		return nil
	}
	return []Mark{t}
}

func (w Window) containsAll(points []geometry.Point) bool {
	for _, p := range points {
		if !w.Contains(p) {
			return false
		}
	}
	return true
}

// between returns the place at fraction t of the way from a to b, exact at both
// ends.
func between(a, b geometry.Point, t float64) geometry.Point {
	if t == 1 {
		return b
	}
	return r2.Add(a, r2.Scale(t, r2.Sub(b, a)))
}
