package strokes

import (
	"strconv"
	"strings"
)

// Error says why a drawing can't be read: where it stands, what was read there,
// and what is accepted. It is one line of printable text.
type Error struct {
	// Line is the line in the file on which the element begins, from 1. It is 0 for
	// path data without a file.
	Line int
	// Where names the element and its attribute, such as "path d"; it may be empty.
	Where string
	// Character counts from 1 inside the attribute or the path data; 0 where no
	// character can be named.
	Character int
	Read      string
	Accepted  string
}

// Error returns the whole of it as one line.
func (e *Error) Error() string {
	var place []string
	if e.Line > 0 {
		place = append(place, "line "+strconv.Itoa(e.Line))
	}
	if e.Where != "" {
		place = append(place, e.Where)
	}
	if e.Character > 0 {
		place = append(place, "character "+strconv.Itoa(e.Character))
	}
	text := "read " + e.Read + "; accepted: " + e.Accepted
	if len(place) > 0 {
		text = strings.Join(place, ", ") + ": " + text
	}
	return text
}

// quoted shows a text in quotes, shortened, on one line.
func quoted(text string) string {
	const most = 40
	count := 0
	for i := range text {
		if count++; count > most {
			return strconv.Quote(text[:i]) + "…"
		}
	}
	return strconv.Quote(text)
}

// counted returns a number with its noun: "1 line", "3 lines". A # in the noun is where
// the s goes, if not at its end.
func counted(n int, noun string) string {
	if !strings.Contains(noun, "#") {
		noun += "#"
	}
	s := "s"
	if n == 1 {
		s = ""
	}
	return strconv.Itoa(n) + " " + strings.Replace(noun, "#", s, 1)
}
