package strokes

import (
	"math"
	"strings"

	"roundlay/geometry"
)

const lengthForms = "a length such as 12, 12px, 3.5mm, 1in or 50%"

// pixelsPerInch is how many of SVG's own units make an inch (CSS Values 3, 5.2).
const pixelsPerInch = 96

// millimetresPerPixel is how long SVG's own unit is where nothing scales it.
const millimetresPerPixel = geometry.MillimetresPerInch / pixelsPerInch

// absolute returns how many pixels a unit of CSS is long, 0 for one that isn't fixed.
func absolute(unit string) float64 {
	switch strings.ToLower(unit) {
	case "", "px":
		return 1
	case "in":
		return pixelsPerInch
	case "cm":
		return pixelsPerInch / 2.54
	case "mm":
		return pixelsPerInch / 25.4
	case "q":
		return pixelsPerInch / 101.6
	case "pt":
		return pixelsPerInch / 72.0
	case "pc":
		return pixelsPerInch / 6.0
	}
	return 0
}

// axis says what a percentage is a share of.
type axis int

const (
	across   axis = iota // the viewport's width
	upright              // its height
	diagonal             // its diagonal over √2, for a radius
)

// ruler turns lengths into user units: it knows the viewport and the size of type.
type ruler struct {
	width, height float64 // 0 where the file doesn't say
	font, root    float64 // sizes of type, here and in the outermost element
}

// length returns x of a unit along an axis. ok is false for a unit that is unknown,
// and for a share of a viewport without size.
func (r ruler) length(x float64, unit string, along axis) (length float64, ok bool) {
	switch strings.ToLower(unit) {
	case "em":
		return x * r.font, true
	case "ex", "ch":
		return x * r.font / 2, true
	case "rem":
		return x * r.root, true
	case "%":
		whole := []float64{r.width, r.height, math.Sqrt((r.width*r.width + r.height*r.height) / 2)}[along]
		return x / 100 * whole, whole > 0
	}
	px := absolute(unit)
	return x * px, px > 0
}

// read reads a length.
func (r ruler) read(text string, along axis) (float64, *Error) {
	s := scanner{text: text}
	s.space()
	x, err := s.number()
	if err != nil {
		return 0, s.wrong(lengthForms)
	}
	from := s.at
	if s.peek() == '%' {
		s.at++
	} else {
		s.word()
	}
	unit := text[from:s.at]
	length, ok := r.length(x, unit, along)
	if s.space(); !ok && unit == "%" {
		return 0, s.wrongAt(0, "a length with a unit: the file has neither viewBox nor size, so nothing says what that is a share of")
	}
	if !ok || !s.done() || !(math.Abs(length) <= largestNumber) {
		return 0, s.wrongAt(0, lengthForms)
	}
	return length, nil
}
