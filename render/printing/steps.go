package printing

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// steps writes the data of an SVG path as steps from place to place. They are shorter
// than places and, as numbers are rounded first, exact. A command holds until the
// next. A space goes between numbers only where nothing else separates them.
type steps struct {
	file          *bytes.Buffer
	x, y          int // where it is, in thousandths
	startX        int // where the outline began, and where its end leads back to
	startY        int
	overX, overY  int    // the last curve's control point
	command, last string // the last command and number written
}

// move begins an outline at a place. Places are in thousandths. Lines after "m"
// need no command.
func (s *steps) move(x, y int) {
	if s.command == "" {
		s.write("M", x, y)
	} else {
		s.write("m", x-s.x, y-s.y)
		s.command = "l"
	}
	s.x, s.y, s.startX, s.startY = x, y, x, y
}

// line goes straight to a place.
func (s *steps) line(x, y int) {
	switch {
	case x == s.x && y == s.y:
		return
	case y == s.y:
		s.write("h", x-s.x)
	case x == s.x:
		s.write("v", y-s.y)
	default:
		s.write("l", x-s.x, y-s.y)
	}
	s.x, s.y = x, y
}

// quad adds a quadratic curve to (x, y) with its control point at (overX, overY). A
// curve that continues the last one smoothly, to within a tolerance, needs only its
// end.
func (s *steps) quad(overX, overY, x, y, tolerance int) {
	onX, onY := 2*s.x-s.overX, 2*s.y-s.overY
	if (s.command == "q" || s.command == "t") && max(onX-overX, overX-onX, onY-overY, overY-onY) <= tolerance {
		s.write("t", x-s.x, y-s.y)
		overX, overY = onX, onY
	} else {
		s.write("q", overX-s.x, overY-s.y, x-s.x, y-s.y)
	}
	s.x, s.y, s.overX, s.overY = x, y, overX, overY
}

// end closes the outline.
func (s *steps) end() {
	s.write("z")
	s.x, s.y = s.startX, s.startY
}

func (s *steps) write(command string, numbers ...int) {
	if command != s.command {
		s.file.WriteString(command)
		s.command, s.last = command, ""
	}
	for _, n := range numbers {
		number := thousandths(n)
		point := number[0] == '.' && strings.Contains(s.last, ".")
		if s.last != "" && number[0] != '-' && !point {
			s.file.WriteByte(' ')
		}
		s.file.WriteString(number)
		s.last = number
	}
}

// thousandths writes a count of thousandths as a decimal, as short as it can be.
func thousandths(n int) string {
	if n%1000 == 0 {
		return strconv.Itoa(n / 1000)
	}
	sign, whole := "", ""
	if n < 0 {
		sign, n = "-", -n
	}
	if n >= 1000 {
		whole = strconv.Itoa(n / 1000)
	}
	part := strconv.Itoa(1000 + n%1000)[1:] // with leading zeros
	return sign + whole + "." + strings.TrimRight(part, "0")
}

// decimal writes a number to the thousandth.
func decimal(x float64) string { return thousandths(int(math.Round(1000 * x))) }
