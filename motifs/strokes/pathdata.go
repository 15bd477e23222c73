package strokes

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

const commandForms = "a path command: one of M L H V C S Q T A Z, large or small"

// pathReader reads path data (SVG 2, chapter 9) and draws it with a pen.
type pathReader struct {
	scanner
	pen
	command byte           // in capitals
	from    geometry.Point // what the coordinates are measured from: zero, or the pen's place
	handle  geometry.Point // the last control point, for the commands that mirror it
	after   byte           // the command before, in capitals
}

// readPath reads path data. Data that is wrong anywhere is refused as a whole: half
// a drawing would be cut as if it were all of it.
func readPath(text string) (pen, *Error) {
	r := pathReader{scanner: scanner{text: text}}
	r.space()
	if r.done() || strings.TrimSpace(text) == "none" {
		return r.pen, nil
	}
	if c := r.peek(); c != 'M' && c != 'm' {
		return r.pen, r.wrong("M or m, with which path data begins")
	}
	for !r.done() {
		if err := r.step(); err != nil {
			return r.pen, err
		}
		r.space()
	}
	return r.pen, nil
}

// step reads one letter and all numbers that follow it.
func (r *pathReader) step() *Error {
	letter := r.peek()
	if letter == 0 || strings.IndexByte("MmLlHhVvCcSsQqTtAaZz", letter) < 0 {
		return r.wrong(commandForms)
	}
	r.at++
	relative := letter >= 'a'
	r.command = letter &^ 0x20
	if r.command == 'Z' {
		r.shut()
		r.after = 'Z'
		return nil
	}
	for {
		r.space()
		r.from = geometry.Point{}
		if relative {
			r.from = r.here
		}
		if err := r.draw(); err != nil {
			return err
		}
		if r.pen.curves > maxCurves {
			return bounded(0, "curves", maxCurves)
		}
		r.after = r.command
		if r.command == 'M' {
			r.command = 'L' // numbers after the first pair are lines
		}
		comma := r.comma()
		if more := strings.IndexByte("+-.0123456789", r.peek()) >= 0 && !r.done(); !more {
			if comma {
				return r.wrong(numberForms)
			}
			return nil
		}
	}
}

// draw reads the numbers of one command and draws it.
func (r *pathReader) draw() *Error {
	switch r.command {
	case 'H', 'V':
		return r.along()
	case 'A':
		return r.arc()
	}
	const pairs = "MLTSQC" // one pair, one, one, two, two, three
	var p [3]geometry.Point
	n := []int{1, 1, 1, 2, 2, 3}[strings.IndexByte(pairs, r.command)]
	for i := range n {
		if i > 0 {
			r.comma()
		}
		var err *Error
		if p[i], err = r.pair(); err != nil {
			return err
		}
	}
	switch r.command {
	case 'M':
		r.move(p[0])
	case 'L':
		r.line(p[0])
	case 'C':
		r.cubic(p[0], p[1], p[2])
	case 'S':
		r.cubic(r.mirrored("CS"), p[0], p[1])
	case 'Q':
		r.quadratic(p[0], p[1])
	case 'T':
		r.quadratic(r.mirrored("QT"), p[0])
	}
	return nil
}

// pair reads a place.
func (r *pathReader) pair() (geometry.Point, *Error) {
	x, err := r.scanner.number()
	if err != nil {
		return geometry.Point{}, err
	}
	r.comma()
	y, err := r.scanner.number()
	return r2.Add(r.from, geometry.Point{X: x, Y: y}), err
}

// along reads and draws a level or an upright line.
func (r *pathReader) along() *Error {
	x, err := r.scanner.number()
	if err != nil {
		return err
	}
	to := r.here
	if r.command == 'H' {
		to.X = r.from.X + x
	} else {
		to.Y = r.from.Y + x
	}
	r.line(to)
	return nil
}

// mirrored returns the last control point seen from the other side of the pen, if
// the command before was one of the given ones; otherwise the pen's place.
func (r *pathReader) mirrored(of string) geometry.Point {
	if strings.IndexByte(of, r.after) < 0 {
		return r.here
	}
	return r2.Sub(r2.Scale(2, r.here), r.handle)
}

func (r *pathReader) cubic(b, c, d geometry.Point) {
	r.curve(geometry.Bezier{r.here, b, c, d})
	r.handle = c
}

// quadratic draws a quadratic curve, which is a cubic with handles two thirds as long.
func (r *pathReader) quadratic(b, c geometry.Point) {
	a := r.here
	const third = 2.0 / 3
	r.curve(geometry.Bezier{a, r2.Add(a, r2.Scale(third, r2.Sub(b, a))), r2.Add(c, r2.Scale(third, r2.Sub(b, c))), c})
	r.handle = b
}

// arc reads and draws an elliptical arc.
func (r *pathReader) arc() *Error {
	var a arc
	for _, x := range []*float64{&a.rx, &a.ry, &a.turn} {
		var err *Error
		if *x, err = r.scanner.number(); err != nil {
			return err
		}
		r.comma()
	}
	for _, f := range []*bool{&a.large, &a.sweep} {
		var err *Error
		if *f, err = r.flag(); err != nil {
			return err
		}
		r.comma()
	}
	var err *Error
	if a.to, err = r.pair(); err != nil {
		return err
	}
	a.from = r.here
	for _, c := range a.curves() {
		r.curve(c)
	}
	return nil
}
