package strokes

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// largestNumber is the greatest number that is read in a drawing. Up to it, a place is
// known to a thousandth of a unit through any sum the reader makes.
const largestNumber = 1e9

const numberForms = "a number such as 12, -3.5 or 2e-3"

// scanner reads numbers and words from left to right in the value of an attribute.
type scanner struct {
	text string
	at   int
}

// wrong says that something else is accepted at the scanner's place.
func (s *scanner) wrong(accepted string) *Error {
	return s.wrongAt(s.at, accepted)
}

// wrongAt says that something else is accepted at an offset.
func (s *scanner) wrongAt(at int, accepted string) *Error {
	read := "the end"
	if at < len(s.text) {
		read = quoted(s.text[at:min(len(s.text), at+160)])
	}
	return &Error{Character: 1 + utf8.RuneCountInString(s.text[:at]), Read: read, Accepted: accepted}
}

func (s *scanner) done() bool { return s.at >= len(s.text) }

// peek returns the next byte, 0 at the end.
func (s *scanner) peek() byte {
	if s.done() {
		return 0
	}
	return s.text[s.at]
}

// space skips white space.
func (s *scanner) space() {
	for !s.done() && strings.IndexByte(" \t\r\n\f", s.text[s.at]) >= 0 {
		s.at++
	}
}

// comma skips white space with at most one comma in it, and reports whether there
// was one.
func (s *scanner) comma() bool {
	s.space()
	if s.peek() != ',' {
		return false
	}
	s.at++
	s.space()
	return true
}

// digits skips digits and reports whether there were any.
func (s *scanner) digits() bool {
	from := s.at
	for s.peek() >= '0' && s.peek() <= '9' {
		s.at++
	}
	return s.at > from
}

// number reads a number. An e counts as part of it only where digits follow, so
// that "2em" is 2 and a unit.
func (s *scanner) number() (float64, *Error) {
	from := s.at
	if s.peek() == '+' || s.peek() == '-' {
		s.at++
	}
	whole := s.digits()
	if s.peek() == '.' {
		s.at++
		whole = s.digits() || whole
	}
	if !whole {
		s.at = from
		return 0, s.wrong(numberForms)
	}
	s.exponent()
	x, err := strconv.ParseFloat(s.text[from:s.at], 64)
	if err != nil || math.Abs(x) > largestNumber {
		return 0, s.wrongAt(from, "a number from -1e9 to 1e9")
	}
	return x, nil
}

// exponent skips the exponent of a number, where there is one.
func (s *scanner) exponent() {
	from := s.at
	if s.peek() != 'e' && s.peek() != 'E' {
		return
	}
	s.at++
	if s.peek() == '+' || s.peek() == '-' {
		s.at++
	}
	if !s.digits() {
		s.at = from
	}
}

// flag reads one of an arc's flags: a single 0 or 1, which needs no space after it.
func (s *scanner) flag() (bool, *Error) {
	c := s.peek()
	if c != '0' && c != '1' {
		return false, s.wrong("0 or 1, an arc's flag")
	}
	s.at++
	return c == '1', nil
}

// word reads letters, and the hyphens between them.
func (s *scanner) word() string {
	from := s.at
	for c := s.peek(); c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '-' && s.at > from; c = s.peek() {
		s.at++
	}
	return s.text[from:s.at]
}

// numbers reads a whole text as numbers, with white space or a comma between them.
func numbers(text string) ([]float64, *Error) {
	s := scanner{text: text}
	var all []float64
	s.space()
	for !s.done() {
		x, err := s.number()
		if err != nil {
			return nil, err
		}
		all = append(all, x)
		if s.comma() && s.done() {
			return nil, s.wrong(numberForms)
		}
	}
	return all, nil
}
