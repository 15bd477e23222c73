package strokes

import (
	"math"
	"strings"
)

const transformForms = "transforms such as translate(10 20), rotate(30), scale(2), skewX(10) or matrix(1 0 0 1 0 0)"

// readTransform reads a list of transforms, as the attribute has it (SVG 1.1, 7.6)
// or as a style does, with units (CSS Transforms 1).
func readTransform(text string, unit func(x float64, unit string) (float64, bool)) (matrix, *Error) {
	m := identity()
	s := scanner{text: text}
	s.space()
	if s.done() || strings.TrimSpace(text) == "none" {
		return m, nil
	}
	for !s.done() {
		one, err := s.transform(unit)
		if err != nil {
			return m, err
		}
		if m = m.times(one); m.wild() {
			return m, s.wrongAt(0, "transforms whose numbers stay below 1e9 together")
		}
		if s.comma() && s.done() {
			return m, s.wrong(transformForms)
		}
	}
	return m, nil
}

// transform reads one transform.
func (s *scanner) transform(unit func(float64, string) (float64, bool)) (matrix, *Error) {
	from := s.at
	name := s.word()
	s.space()
	if s.peek() != '(' {
		return matrix{}, s.wrongAt(from, transformForms)
	}
	s.at++
	s.space()
	var v []float64
	for s.peek() != ')' {
		x, err := s.measured(unit)
		if err != nil {
			return matrix{}, err
		}
		v = append(v, x)
		if s.comma() && s.peek() == ')' || len(v) > 6 {
			return matrix{}, s.wrongAt(from, transformForms)
		}
	}
	s.at++
	m, ok := transformOf(name, v)
	if !ok || m.wild() {
		return matrix{}, s.wrongAt(from, transformForms)
	}
	return m, nil
}

// measured reads a number with a unit of length or angle, if it has one. Angles come
// as degrees.
func (s *scanner) measured(unit func(float64, string) (float64, bool)) (float64, *Error) {
	x, err := s.number()
	if err != nil {
		return 0, err
	}
	from := s.at
	if s.peek() == '%' {
		s.at++
	} else {
		s.word()
	}
	y, ok := x, true
	switch name := s.text[from:s.at]; name {
	case "", "deg":
	case "grad":
		y = x * 0.9
	case "rad":
		y = x * 180 / math.Pi
	case "turn":
		y = x * 360
	default:
		y, ok = unit(x, name)
	}
	if !ok {
		return 0, s.wrongAt(from, "a number, or one with a unit such as px, mm or deg")
	}
	return y, nil
}

// transformOf returns a transform by its name and values.
func transformOf(name string, v []float64) (m matrix, ok bool) {
	key := strings.ToLower(name)
	second := 0.0 // the second value, where it may be left out
	if len(v) == 2 {
		second = v[1]
	}
	switch one, pair := len(v) == 1, len(v) == 1 || len(v) == 2; {
	case key == "matrix" && len(v) == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case key == "translate" && pair:
		return shift(v[0], second), true
	case key == "translatex" && one:
		return shift(v[0], 0), true
	case key == "translatey" && one:
		return shift(0, v[0]), true
	case key == "scale" && one:
		return scaling(v[0], v[0]), true
	case key == "scale" && pair:
		return scaling(v[0], second), true
	case key == "scalex" && one:
		return scaling(v[0], 1), true
	case key == "scaley" && one:
		return scaling(1, v[0]), true
	case key == "rotate" && one:
		return turned(v[0]), true
	case key == "rotate" && len(v) == 3:
		return shift(v[1], v[2]).times(turned(v[0])).times(shift(-v[1], -v[2])), true
	case key == "skewx" && one:
		return skewed(v[0], 0), true
	case key == "skewy" && one:
		return skewed(0, v[0]), true
	case key == "skew" && pair:
		return skewed(v[0], second), true
	}
	return matrix{}, false
}
