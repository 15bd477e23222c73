package job

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
)

// field is one key of a section, or one item of a list, while it is read. The
// methods that read it return false where there is nothing to use: the key is
// missing, which is a mistake if it is needed, or its value is refused.
type field struct {
	in     section
	key    string // within its section; "" of an item
	path   string
	at     int
	value  *value // nil where it is missing
	needed bool
	read   string // shown in place of the value, if not empty
}

// item returns an item of the list that the field is.
func (f field) item(i int) field {
	v := f.value.items[i]
	return field{in: f.in, path: fmt.Sprintf("%s[%d]", f.path, i+1), at: v.at, value: v}
}

// unit returns the unit of a bare number in the field: that of its file.
func (f field) unit() geometry.Unit {
	if f.value == nil {
		return f.in.unitAt(f.in.table.at)
	}
	return f.in.unitAt(f.value.at)
}

// refuse reports the value of the field as a mistake.
func (f field) refuse(accepted, hint string) {
	if f.in.late(f.value.at) {
		return
	}
	read := f.read
	if read == "" {
		read = f.value.shown()
	}
	f.in.note(&mistake{at: f.value.at, key: f.path, read: read, accepted: accepted, hint: hint})
}

// absent reports whether the field is missing.
func (f field) absent(accepted string) bool {
	if f.value == nil && f.needed {
		f.in.missing(f.key, accepted)
	}
	return f.value == nil
}

// isNumber reports whether the value is a number, NaN and infinities included.
func (v *value) isNumber() bool {
	return v.kind == unstable.Integer || v.kind == unstable.Float
}

// saying returns what an error of go-toml says, as a hint.
func saying(err error) string {
	if err == nil {
		return ""
	}
	return oneLine(strings.TrimPrefix(err.Error(), "toml: "), 120)
}

// length reads a length, in millimetres.
func (f field) length(s span) (float64, bool) {
	accepted := s.lengths(f.unit())
	if f.absent(accepted) {
		return 0, false
	}
	mm, hint := f.millimetres()
	if hint == "" && s.holds(mm) {
		return mm, true
	}
	if hint == "" {
		hint = f.otherUnit(s.holds)
	}
	f.refuse(accepted, hint)
	return 0, false
}

// millimetres reads the value as a length; where it can't, hint says why.
func (f field) millimetres() (mm float64, hint string) {
	switch v := f.value; {
	case v.kind == unstable.String && len(v.text) > 60:
		return 0, "that is too long to be a length"
	case v.kind == unstable.String:
		mm, err := f.unit().Parse(v.text)
		var wrong *geometry.LengthError
		if errors.As(err, &wrong) {
			return 0, oneLine(wrong.Reason, 120)
		}
		if f.unit() == geometry.Millimetre && geometry.IsInchFraction(v.text) {
			return 0, fmt.Sprintf("a fraction like this is in inches: write %s, or %.4g if it is in mm", quoted(strings.TrimSpace(v.text)+" in"), mm)
		}
		return mm, ""
	case v.isNumber():
		x, err := v.number()
		if err != nil {
			return 0, saying(err)
		}
		return x * f.unit().Millimetres(), ""
	}
	return 0, "write " + geometry.LengthForms
}

// otherUnit is the hint for a length that has no unit and is not accepted in the
// job's, but would be in the other. Otherwise it is "".
func (f field) otherUnit(accepts func(mm float64) bool) string {
	if f.value == nil {
		return ""
	}
	unit, other, called, text := geometry.Inch, geometry.Millimetre, "mm", f.value.text
	text = strings.Join(strings.Fields(text), " ") // a form feed or a hard space is no part of a message
	if f.unit() == geometry.Millimetre {
		unit, other, called = other, unit, "inches"
	}
	if f.value.isNumber() {
		if x, err := f.value.number(); err != nil || !accepts(x*other.Millimetres()) {
			return ""
		}
	} else if mm, err := other.Parse(text); err != nil || !accepts(mm) {
		return ""
	}
	mm, err := unit.Parse(text)
	if was, _ := other.Parse(text); err != nil || was == mm {
		return "" // it has a unit of its own
	}
	return fmt.Sprintf("%s %s is %s: is it %s? write %s", text, unit, inOther(mm, other), called, quoted(text+" "+other.String()))
}

// inOther writes a length for someone who thinks in the given unit.
func inOther(mm float64, u geometry.Unit) string {
	switch {
	case mm >= 1000:
		return fmt.Sprintf("over %.0f m", math.Floor(mm/1000))
	case mm < 0.1:
		return "less than a tenth of a millimetre"
	}
	return fmt.Sprintf("%.3g %s", mm/u.Millimetres(), u)
}

// number reads a number that is not a length.
func (f field) number(accepted string, accepts func(float64) bool) (float64, bool) {
	if f.absent(accepted) {
		return 0, false
	}
	switch {
	case f.value.isNumber():
		x, err := f.value.number()
		if err == nil && accepts(x) {
			return x, true
		}
		f.refuse(accepted, saying(err))
	case f.value.kind == unstable.String:
		f.refuse(accepted, inQuotes(f.value.text))
	default:
		f.refuse(accepted, "")
	}
	return 0, false
}

// inQuotes is the hint for a text where a number is wanted.
func inQuotes(text string) string {
	_, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	switch {
	case err == nil:
		return "write it without quotes"
	case isMost(text):
		return quoted(maxWord) + " is for the counts of a motif, such as fronds"
	}
	return "write it in digits, without quotes"
}

// within reads a number that lies in a span.
func (f field) within(s span) (float64, bool) { return f.number(s.numbers(), s.holds) }

// degrees reads an angle, which a job has in degrees.
func (f field) degrees(s span) (geometry.Angle, bool) {
	degrees, ok := f.number(s.numbers()+", in degrees", s.holds)
	return geometry.Degrees(degrees), ok
}

// whole reads a whole number.
func (f field) whole(least, most int) (int, bool) {
	n, ok := f.number(fmt.Sprintf("a whole number from %d to %d", least, most), func(x float64) bool {
		return x >= float64(least) && x <= float64(most) && x == math.Trunc(x)
	})
	return int(n), ok
}

// measure reads a bare number as a fraction and a text as a length. From says from
// where it counts, "" of a size.
func (f field) measure(fraction, length span, from string) (Measure, bool) {
	accepted := func() string {
		return fmt.Sprintf("a fraction from %g to %g, or in quotes %s%s", fraction.low, fraction.high, length.lengths(f.unit()), from)
	}
	if f.value == nil {
		f.absent(accepted())
		return Measure{}, false
	}
	if f.value.isNumber() {
		x, err := f.value.number()
		if err != nil || !fraction.holds(x) {
			f.refuse(accepted(), saying(err))
			return Measure{}, false
		}
		return Measure{x, true}, true
	}
	mm, hint := f.millimetres()
	if f.value.kind == unstable.String && isMost(f.value.text) {
		hint = inQuotes(maxWord)
	}
	if hint == "" && length.holds(mm) {
		return Measure{mm, false}, true
	}
	if hint == "" {
		hint = f.otherUnit(length.holds)
	}
	f.refuse(accepted(), hint)
	return Measure{}, false
}

// text reads a line of text.
func (f field) text(most int) (string, bool) {
	accepted := fmt.Sprintf("a line of text in quotes, of 1 to %d characters", most)
	if f.absent(accepted) {
		return "", false
	}
	if f.value.kind != unstable.String {
		f.refuse(accepted, "")
		return "", false
	}
	text := f.value.text
	breaks := func(r rune) bool { return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp) }
	switch n := utf8.RuneCountInString(text); {
	case strings.TrimSpace(text) == "":
		f.refuse(accepted, "")
	case n > most:
		f.refuse(accepted, "this one has "+strconv.Itoa(n)+" characters")
	case strings.ContainsFunc(text, breaks):
		f.refuse(accepted, "without tabs, new lines or other control characters")
	default:
		return text, true
	}
	return "", false
}

// word reads one of a list of words and returns its place in the list.
func (f field) word(words []string) (int, bool) {
	if f.value != nil && f.value.kind == unstable.String {
		if i := slices.Index(words, f.value.text); i >= 0 {
			return i, true
		}
	}
	accepted := list(words)
	if f.absent(accepted) {
		return 0, false
	}
	if f.value.kind != unstable.String {
		hint := ""
		if slices.Contains(words, f.value.text) {
			hint = "write it in quotes" // the shape "true" is a word
		}
		f.refuse(accepted, hint)
		return 0, false
	}
	f.refuse(accepted, meant(f.value.text, words))
	return -1, false
}

// truth reads true or false.
func (f field) truth() (bool, bool) {
	const accepted = "true or false"
	if f.absent(accepted) {
		return false, false
	}
	if f.value.kind != unstable.Bool {
		hint := ""
		if f.value.kind == unstable.String {
			hint = "write it without quotes"
		}
		f.refuse(accepted, hint)
		return false, false
	}
	return f.value.text == "true", true
}

// pair reads a list of two.
func (f field) pair(accepted string) (a, b field, ok bool) {
	if f.absent(accepted) {
		return a, b, false
	}
	if len(f.value.items) != 2 {
		f.refuse(accepted, "")
		return a, b, false
	}
	return f.item(0), f.item(1), true
}
