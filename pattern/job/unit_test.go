package job

import (
	"errors"
	"strings"
	"testing"
)

// inUnit is a small job in a unit, with one of its values changed.
func inUnit(unit, was, is string) []byte {
	text := `length = "in"
[blank]
floor = "5/8 in"
station = [
  {height = 0, across = "3 in", wall = "3/8 in"},
  {height = "4 in", across = "3 in", wall = "1/4 in"},
]
[limits]
land = "1/32 in"
[[wheel]]
name = "mitre"
edge = "mitre"
across = "3 in"
thick = "1/4 in"
angle = 90
[layout]
repeats = 4
band = ["1 in", "3 in"]
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = "1/32 in"
width = "1 in"
`
	text = strings.Replace(text, `"in"`, `"`+unit+`"`, 1)
	return []byte(strings.Replace(text, was, is, 1))
}

// A length that can't be in the job's unit, and could in the other, is asked about.
func TestWrongUnit(t *testing.T) {
	for _, c := range []struct{ unit, was, is, hint string }{
		{"in", `across = "3 in"`, `across = 79.4`, `79.4 in is over 2 m: is it mm? write "79.4 mm"`},
		{"in", `across = "3 in"`, `across = "79.4"`, `79.4 in is over 2 m: is it mm? write "79.4 mm"`},
		{"in", `across = "3 in"`, "across = \"\\f79\u00a0 1/2\"", `79 1/2 in is over 2 m: is it mm? write "79 1/2 mm"`},
		{"in", `wall = "3/8 in"`, `wall = 9.5`, `9.5 in is 241 mm: is it mm? write "9.5 mm"`},
		{"in", `floor = "5/8 in"`, `floor = 16`, `16 in is 406 mm: is it mm? write "16 mm"`},
		{"in", `thick = "1/4 in"`, `thick = 6`, `6 in is 152 mm: is it mm? write "6 mm"`},
		{"in", `land = "1/32 in"`, `land = 2.5`, `2.5 in is 63.5 mm: is it mm? write "2.5 mm"`},
		{"in", `"3 in"]`, `38]`, `38 in is 965 mm: is it mm? write "38 mm"`},
		{"in", `width = "1 in"`, `width = "500"`, `500 in is over 12 m: is it mm? write "500 mm"`},
		{"in", `across = "3 in", wall = "1/4 in"`, `across = "3 1/8 mm", wall = "1/4 in"`, `across is "3 1/8 mm" there: is it inches? write "3 1/8 in"`},
		{"in", `across = "3 in", wall = "1/4 in"`, `across = 39, wall = "1/4 in"`, `39 in is 991 mm: is it mm? write "39 mm"`},
		{"mm", `wall = "3/8 in"`, `wall = "0.09"`, `0.09 mm is less than a tenth of a millimetre: is it inches? write "0.09 in"`},
		{"mm", `across = "3 in"`, `across = 3`, ""}, // the message would say up to 3 times
		// Such a fraction is refused in any place, even within the range.
		{"mm", `wall = "3/8 in"`, `wall = "3/32"`, `a fraction like this is in inches: write "3/32 in", or 0.09375 if it is in mm`},
		{"mm", `depth = "1/32 in"`, `depth = "1/32"`, `write "1/32 in", or 0.03125 if it is in mm`},
		{"mm", `width = "1 in"`, `width = "3⅛"`, `write "3⅛ in", or 3.125 if it is in mm`},
		// No hint where the text has a unit, or where the other unit would not do either.
		{"in", `across = "3 in"`, `across = "79.4 in"`, ""},
		{"in", `across = "3 in"`, `across = 7940`, ""},
		{"in", `wall = "3/8 in"`, `wall = -3`, ""},
	} {
		_, err := Read("t.toml", inUnit(c.unit, c.was, c.is))
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s in a job in %s was taken: %v", c.is, c.unit, err)
			continue
		}
		if c.hint == "" && (strings.Contains(e.Hint, "is it") || strings.Contains(e.Hint, "in inches")) || !strings.Contains(e.Hint, c.hint) {
			t.Errorf("%s in a job in %s: %v", c.is, c.unit, e)
		}
	}
	for _, unit := range []string{"in", "mm"} {
		if _, err := Read("t.toml", inUnit(unit, "", "")); err != nil {
			t.Error(err)
		}
	}
	// Halves and quarters of a millimetre are said at a bench.
	if _, err := Read("t.toml", inUnit("mm", `depth = "1/32 in"`, `depth = "1/2"`)); err != nil {
		t.Error(err)
	}
}
