package job

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

// Error says why a job can't be read: where in the file, what stands there, and
// what is accepted there. Each field is one line of printable text.
type Error struct {
	File     string // empty for a job that is from no file
	Line     int    // from 1; where something is missing, the line of the table it is missing from
	Key      string // in full, such as "motif[2].depth", counted from 1; empty where no key can be named
	Read     string // what stands in the file, shortened
	Accepted string
	Hint     string // what was probably meant; may be empty
}

// Error returns the whole of it as one line.
func (e *Error) Error() string {
	place := ""
	if e.File != "" {
		place = fmt.Sprintf("%s:%d: ", e.File, e.Line)
	}
	if e.Key != "" {
		place += e.Key + ": "
	}
	line := place + "read " + e.Read + "; accepted: " + e.Accepted
	if e.Hint != "" {
		line += "; " + e.Hint
	}
	return line
}

// mistake is an Error on its way: its place is still an offset in the file.
type mistake struct {
	at                        int
	key, read, accepted, hint string
}

// in turns the mistake into an Error of the file in which it stands.
func (m *mistake) in(s source) *Error {
	e := m.inFile(s.name, s.doc)
	e.File, e.Line = s.place(m.at)
	return e
}

// inFile turns the mistake into an Error.
func (m *mistake) inFile(name string, doc *document) *Error {
	return &Error{
		File: fileName(name), Line: doc.line(max(m.at, 0)), Key: oneLine(m.key, 120),
		Read: m.read, Accepted: m.accepted, Hint: m.hint,
	}
}

// fileName returns a file's name as messages show it.
func fileName(name string) string {
	if name == "-" {
		return "standard input"
	}
	return oneLine(name, 200)
}

// quoted shows a text from the file in quotes, shortened, on one line.
func quoted(text string) string {
	const most = 60
	short, cut := shortened(text, most)
	if cut {
		return strconv.Quote(short) + "…"
	}
	return strconv.Quote(short)
}

// oneLine shows a text without quotes, shortened, with what can't be printed
// left out.
func oneLine(text string, most int) string {
	short, cut := shortened(text, most)
	short = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) || r == utf8.RuneError {
			return '·'
		}
		return r
	}, short)
	if cut {
		return short + "…"
	}
	return short
}

// shortened returns at most the given number of a text's first runes, and
// whether any were cut off.
func shortened(text string, most int) (string, bool) {
	n := 0
	for i := range text {
		if n == most {
			return text[:i], true
		}
		n++
	}
	return text, false
}

// list writes words as "a", "b" or "c"; of very many, the first ones.
func list(words []string) string {
	const most = 24
	var b strings.Builder
	for i, word := range words {
		switch {
		case i == most:
			fmt.Fprintf(&b, " and %d more", len(words)-most)
			return b.String()
		case i > 0 && i == len(words)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(quoted(word))
	}
	return b.String()
}

// meant returns a hint that names the known word nearest to the one that was
// read, or "" where none is near.
func meant(read string, known []string) string {
	nearest := Nearest(read, known)
	if nearest == "" {
		return ""
	}
	return "the nearest is " + quoted(nearest)
}

// Nearest returns the known word nearest to one that was read, or "" where none
// is near enough to have been meant: a slip of a letter, then the only one that is the
// same in part, "olive stone" for "olive", then several slips.
func Nearest(read string, known []string) string {
	if len(read) > 64 {
		return "" // not a slip of the hand
	}
	nearest, off := leastOff(read, known)
	if off > 1 {
		if whole := inPart(read, known); whole != "" {
			return whole
		}
	}
	if off > max(2, utf8.RuneCountInString(read)/2) {
		return ""
	}
	return nearest
}

// leastOff returns the known word that is the fewest letters off.
func leastOff(read string, known []string) (nearest string, least int) {
	least = math.MaxInt
	for _, word := range known {
		// A difference of case alone is no difference to the eye.
		if d := levenshtein.ComputeDistance(strings.ToLower(read), strings.ToLower(word)); d < least {
			nearest, least = word, d
		}
	}
	return nearest, least
}

// inPart returns the only known name that has all the words that were read, or of which
// all words were read; a word may be shortened to its first letters. It is "" where there
// are none or several.
func inPart(read string, known []string) string {
	found := ""
	for _, name := range known {
		if !(allIn(read, name) || allIn(name, read)) {
			continue
		}
		if found != "" {
			return ""
		}
		found = name
	}
	return found
}

// allIn reports whether each word of a text begins one of another.
func allIn(part, whole string) bool {
	const short = 3 // letters: fewer say nothing
	words := func(text string) []string {
		return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	}
	some, all := words(part), words(whole)
	return len(some) > 0 && !slices.ContainsFunc(some, func(word string) bool {
		return !slices.ContainsFunc(all, func(other string) bool {
			return other == word || utf8.RuneCountInString(word) >= short && strings.HasPrefix(other, word)
		})
	})
}
