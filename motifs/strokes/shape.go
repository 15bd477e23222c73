package strokes

import (
	"math"
	"strings"

	"roundlay/geometry"
)

// sizes reads an element's lengths by name.
type sizes struct {
	declared map[string]string
	ruler
}

// get reads a length; given is false where there is none, or where it is "auto".
func (s sizes) get(name string, along axis) (length float64, given bool, err *Error) {
	text := strings.TrimSpace(s.declared[name])
	if text == "" || text == "auto" {
		return 0, false, nil
	}
	if length, err = s.ruler.read(text, along); err != nil {
		err.Where = name
	}
	return length, true, err
}

// all reads lengths that are zero where they aren't given.
func (s sizes) all(names ...string) ([]float64, *Error) {
	lengths := make([]float64, len(names))
	for i, name := range names {
		along := across
		switch {
		case name == "r":
			along = diagonal
		case strings.Contains(name, "y") || name == "height":
			along = upright
		}
		var err *Error
		if lengths[i], _, err = s.get(name, along); err != nil {
			return nil, err
		}
	}
	return lengths, nil
}

// positive reads a length that may not be below zero.
func (s sizes) positive(name string, along axis) (length float64, given bool, err *Error) {
	length, given, err = s.get(name, along)
	if err == nil && length < 0 {
		err = &Error{Where: name, Read: quoted(s.declared[name]), Accepted: "a length not below zero"}
	}
	return length, given, err
}

// isShape reports whether an element of that name is drawn by itself.
func isShape(name string) bool {
	switch name {
	case "path", "line", "polyline", "polygon", "circle", "ellipse", "rect":
		return true
	}
	return false
}

// drawShape draws a shape in its own user space.
func drawShape(e *element, s sizes) (pen, *Error) {
	switch e.name {
	case "path":
		p, err := readPath(e.attrs["d"])
		return p, in(err, "d")
	case "polyline", "polygon":
		p, err := readPoints(e.attrs["points"], e.name == "polygon")
		return p, in(err, "points")
	case "line":
		return drawLine(s)
	case "rect":
		return drawRect(s)
	}
	return drawEllipse(e.name == "circle", s)
}

// in names the attribute that an error is about.
func in(err *Error, attribute string) *Error {
	if err != nil {
		err.Where = attribute
	}
	return err
}

// readPoints draws a polyline, or a polygon, by its points.
func readPoints(text string, closed bool) (pen, *Error) {
	var p pen
	n, err := numbers(text)
	if err != nil {
		return p, err
	}
	if len(n) > 2*maxCurves {
		return p, bounded(0, "points", maxCurves)
	}
	if len(n)%2 != 0 {
		return p, &Error{Read: counted(len(n), "number"), Accepted: "an x and a y for each point"}
	}
	for i := 0; i < len(n); i += 2 {
		to := geometry.Point{X: n[i], Y: n[i+1]}
		if i == 0 {
			p.move(to)
		} else {
			p.line(to)
		}
	}
	if closed && len(n) > 0 {
		p.shut()
	}
	return p, nil
}

func drawLine(s sizes) (pen, *Error) {
	var p pen
	v, err := s.all("x1", "y1", "x2", "y2")
	if err != nil {
		return p, err
	}
	p.move(geometry.Point{X: v[0], Y: v[1]})
	p.line(geometry.Point{X: v[2], Y: v[3]})
	return p, nil
}

// drawEllipse draws a circle or an ellipse from its right end on, as SVG 2, 10.3
// and 10.4 have it.
func drawEllipse(circle bool, s sizes) (pen, *Error) {
	var p pen
	v, err := s.all("cx", "cy")
	if err != nil {
		return p, err
	}
	rx, ry, err := radii(circle, s)
	if err != nil || rx == 0 || ry == 0 {
		return p, err
	}
	e := ellipse{centre: geometry.Point{X: v[0], Y: v[1]}, rx: rx, ry: ry, cos: 1, by: 2 * math.Pi}
	all := e.curves()
	all[len(all)-1][3] = all[0][0]
	p.move(all[0][0])
	for _, c := range all {
		p.curve(c)
	}
	p.shut()
	return p, nil
}

// radii reads the radii of a circle, an ellipse or a rectangle's corners. One that
// isn't given is as long as the other.
func radii(circle bool, s sizes) (rx, ry float64, err *Error) {
	if circle {
		r, _, err := s.positive("r", diagonal)
		return r, r, err
	}
	rx, givenX, err := s.positive("rx", across)
	if err != nil {
		return 0, 0, err
	}
	ry, givenY, err := s.positive("ry", upright)
	if !givenX {
		rx = ry
	}
	if !givenY {
		ry = rx
	}
	return rx, ry, err
}

// drawRect draws a rectangle from the left end of its upper side on, as SVG 2, 10.2
// has it.
func drawRect(s sizes) (pen, *Error) {
	var p pen
	v, err := s.all("x", "y")
	if err != nil {
		return p, err
	}
	width, _, err := s.positive("width", across)
	if err != nil {
		return p, err
	}
	height, _, err := s.positive("height", upright)
	if err != nil || width == 0 || height == 0 {
		return p, err
	}
	rx, ry, err := radii(false, s)
	if err != nil {
		return p, err
	}
	rx, ry = math.Min(rx, width/2), math.Min(ry, height/2)
	roundedRect(&p, geometry.Point{X: v[0], Y: v[1]}, width, height, rx, ry)
	return p, nil
}

// roundedRect draws a rectangle clockwise as one sees it, with a quarter of an
// ellipse at each corner.
func roundedRect(p *pen, at geometry.Point, width, height, rx, ry float64) {
	x0, y0, x1, y1 := at.X, at.Y, at.X+width, at.Y+height
	corner := func(x, y float64) {
		if rx == 0 || ry == 0 {
			return
		}
		for _, c := range (arc{from: p.here, to: geometry.Point{X: x, Y: y}, rx: rx, ry: ry, sweep: true}).curves() {
			p.curve(c)
		}
	}
	if rx == 0 || ry == 0 {
		rx, ry = 0, 0
	}
	p.move(geometry.Point{X: x0 + rx, Y: y0})
	p.line(geometry.Point{X: x1 - rx, Y: y0})
	corner(x1, y0+ry)
	p.line(geometry.Point{X: x1, Y: y1 - ry})
	corner(x1-rx, y1)
	p.line(geometry.Point{X: x0 + rx, Y: y1})
	corner(x0, y1-ry)
	p.line(geometry.Point{X: x0, Y: y0 + ry})
	corner(x0+rx, y0)
	p.shut()
}
