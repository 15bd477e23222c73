package strokes

import (
	"math"
	"strings"

	"roundlay/geometry"
)

// viewBox is the part of user space that a viewport shows, y down.
type viewBox struct{ x, y, width, height float64 }

// readViewBox reads a viewBox. ok is false where there is none.
func readViewBox(e *element) (v viewBox, ok bool, err *Error) {
	text, ok := e.attrs["viewBox"]
	if !ok || strings.TrimSpace(text) == "none" {
		return v, false, nil
	}
	n, err := numbers(text)
	if err == nil && len(n) != 4 || len(n) == 4 && (n[2] < 0 || n[3] < 0) {
		err = &Error{Read: quoted(text), Accepted: "a viewBox of four numbers, its width and height not below zero"}
	}
	if err != nil {
		return v, false, err
	}
	return viewBox{n[0], n[1], n[2], n[3]}, true, nil
}

// fit says how a viewBox lies in its viewport: SVG 2, 8.6.
type fit struct {
	none  bool
	x, y  float64 // the share of the room left over that goes to the left and above
	slice bool
}

const fitForms = "preserveAspectRatio such as none, xMidYMid meet or xMinYMax slice"

// readFit reads preserveAspectRatio.
func readFit(text string) (fit, *Error) {
	words := strings.Fields(text)
	if len(words) > 0 && words[0] == "defer" {
		words = words[1:]
	}
	if len(words) == 0 {
		return fit{x: 0.5, y: 0.5}, nil
	}
	wrong := &Error{Read: quoted(text), Accepted: fitForms}
	if len(words) > 2 || len(words) == 2 && words[1] != "meet" && words[1] != "slice" {
		return fit{}, wrong
	}
	f := fit{slice: len(words) == 2 && words[1] == "slice"}
	if words[0] == "none" {
		f.none = true
		return f, nil
	}
	shares := map[string]float64{"Min": 0, "Mid": 0.5, "Max": 1}
	word := words[0]
	if len(word) != 8 || word[0] != 'x' || word[4] != 'Y' {
		return fit{}, wrong
	}
	var okX, okY bool
	f.x, okX = shares[word[1:4]]
	f.y, okY = shares[word[5:]]
	if !okX || !okY {
		return fit{}, wrong
	}
	return f, nil
}

// onto returns the map from a viewBox onto a viewport of a width and height with its
// corner at the origin.
func (f fit) onto(v viewBox, width, height float64) matrix {
	sx, sy := width/v.width, height/v.height
	if !f.none {
		s := math.Min(sx, sy)
		if f.slice {
			s = math.Max(sx, sy)
		}
		sx, sy = s, s
	}
	x, y := f.x*(width-sx*v.width), f.y*(height-sy*v.height)
	return matrix{a: sx, d: sy, e: x - sx*v.x, f: y - sy*v.y}
}

// window is a viewport that shows nothing beyond its edges.
type window struct {
	back matrix // from the drawing's space to the window's own
	box  geometry.Box
}

// shows reports whether any of a trail lies in the window.
func (w window) shows(t trail) bool {
	t = w.back.trail(t)
	for _, c := range t.curves {
		if !geometry.BoxOf(c[:]...).Empty() && geometry.BoxOf(c[:]...).Distance2(w.box) > 0 {
			continue
		}
		points := flatten(nil, c, 1e-3*(w.box.Max.X-w.box.Min.X+w.box.Max.Y-w.box.Min.Y))
		before := c[0]
		for _, p := range points {
			if touchesBox(before, p, w.box) {
				return true
			}
			before = p
		}
	}
	return false
}

// holds reports whether all of a trail lies in the window.
func (w window) holds(t trail) bool {
	t = w.back.trail(t)
	box := geometry.EmptyBox()
	for _, c := range t.curves {
		box = box.Union(bounds(c))
	}
	width, height := w.box.Size()
	near := w.box.Grow(1e-6 * (width + height))
	return near.Contains(box.Min) && near.Contains(box.Max)
}

// touchesBox reports whether a straight line meets a box (Liang and Barsky's clipping).
func touchesBox(p, q geometry.Point, b geometry.Box) bool {
	from, to := 0.0, 1.0
	clip := func(p, by, low, high float64) {
		if by == 0 {
			if p < low || p > high {
				to = -1
			}
			return
		}
		a, b := (low-p)/by, (high-p)/by
		from, to = math.Max(from, math.Min(a, b)), math.Min(to, math.Max(a, b))
	}
	clip(p.X, q.X-p.X, b.Min.X, b.Max.X)
	clip(p.Y, q.Y-p.Y, b.Min.Y, b.Max.Y)
	return from <= to
}
