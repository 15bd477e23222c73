package geometry

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

// Unit is a unit of length that people write and calipers show.
type Unit int

// The units a job can be written in.
const (
	Millimetre Unit = iota
	Inch
)

// MillimetresPerInch is exact (international yard and pound agreement, 1959).
const MillimetresPerInch = 25.4

// ParseUnit returns the unit named "mm" or "in".
func ParseUnit(name string) (Unit, error) {
	switch name {
	case "mm":
		return Millimetre, nil
	case "in":
		return Inch, nil
	}
	return 0, fmt.Errorf(`unit %q is neither "in" nor "mm"`, name)
}

// String returns "mm" or "in".
func (u Unit) String() string {
	if u == Inch {
		return "in"
	}
	return "mm"
}

// Millimetres returns how many millimetres the unit is long.
func (u Unit) Millimetres() float64 {
	if u == Inch {
		return MillimetresPerInch
	}
	return 1
}

// marks lists how each unit is written after a number, longest first.
var marks = []struct {
	text        string
	millimetres float64
}{
	{"millimetres", 1}, {"millimeters", 1}, {"centimetres", 10}, {"centimeters", 10},
	{"inches", MillimetresPerInch}, {"inch", MillimetresPerInch}, {"in.", MillimetresPerInch},
	{"mm", 1}, {"cm", 10}, {"in", MillimetresPerInch},
	{`"`, MillimetresPerInch}, {"″", MillimetresPerInch}, {"”", MillimetresPerInch}, {"''", MillimetresPerInch},
}

// vulgar holds the single-sign fractions of Unicode that calipers and rulers use.
var vulgar = sync.OnceValue(func() map[rune]string {
	return map[rune]string{
		'½': "1/2", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
		'⅒': "1/10",
		// No ruler has these. They are read so that they can be refused as what they are.
		'⅓': "1/3", '⅔': "2/3", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
	}
})

// unders are the numbers that stand below the line in a fraction on a ruler or in a
// table of cuts. Any other is a slip, such as 3/23 for 3/32.
var unders = []float64{1, 2, 4, 8, 16, 32, 64, 128, 10, 100, 1000}

// LengthError says why a text is not a length.
type LengthError struct{ Text, Reason string }

func (e *LengthError) Error() string {
	return fmt.Sprintf("%q is not a length: %s", e.Text, e.Reason)
}

// LengthForms shows how a length may be written, for messages.
const LengthForms = `a length such as 3 1/8 in, 3-1/8", 3⅛", 1/16, 79.4 mm or 7.94 cm`

// Parse reads a length as people write it and returns it in millimetres: whole
// numbers, decimals, fractions and both together, with a unit or, without one,
// in u. A minus sign in front is kept. The error is a *LengthError.
func (u Unit) Parse(text string) (float64, error) {
	fail := func(reason string) (float64, error) { return 0, &LengthError{text, reason} }
	number, scale := strings.TrimSpace(strings.ReplaceAll(text, "\u00a0", " ")), u.Millimetres()
	for _, m := range marks {
		if n := len(number) - len(m.text); n >= 0 && strings.EqualFold(number[n:], m.text) {
			number, scale = strings.TrimSpace(number[:n]), m.millimetres
			break
		}
	}
	sign := 1.0
	for _, minus := range []string{"-", "−"} {
		if rest, found := strings.CutPrefix(number, minus); found {
			number, sign = strings.TrimSpace(rest), -1
			break
		}
	}
	if number == "" {
		return fail("no number in it")
	}
	value, reason := mixedNumber(number)
	if reason != "" {
		return fail(reason)
	}
	if length := sign * value * scale; !math.IsInf(length, 0) {
		return length, nil
	}
	return fail("the number is too large")
}

// mixedNumber reads "3", "3.25", "1/8", "3 1/8", "3-1/8" or "3⅛". Where it
// can't, reason says why.
func mixedNumber(text string) (value float64, reason string) {
	parts := strings.Fields(spelt(text))
	if len(parts) == 1 {
		parts = strings.Split(parts[0], "-") // 3-1/8
	}
	if last := len(parts) - 1; last > 0 && isNumber(parts[last-1]) && isWord(parts[last]) {
		return 0, fmt.Sprintf("the unit %q is not known: in, mm or cm", parts[last])
	}
	if len(parts) == 0 || len(parts) > 2 {
		return 0, "too many numbers in it"
	}
	for _, part := range parts {
		switch {
		case isNumber(part):
		case strings.Contains(part, ","):
			return 0, "write the decimal point as a point"
		default:
			return 0, fmt.Sprintf("%q is neither a number nor a unit (in, mm, cm)", part)
		}
	}
	for i, part := range parts {
		over, under, fraction := strings.Cut(part, "/")
		if len(parts) == 2 && fraction != (i == 1) || len(parts) == 2 && i == 0 && strings.Contains(part, ".") {
			return 0, "a whole number and one fraction go together"
		}
		a, err := strconv.ParseFloat(over, 64)
		if err != nil || math.IsInf(a, 0) {
			return 0, "the number is too large"
		}
		if fraction {
			b, err := strconv.ParseFloat(under, 64)
			if err != nil || b == 0 || strings.Contains(part, ".") {
				return 0, "a fraction has whole numbers, and not zero below the line"
			}
			if len(parts) == 2 && a >= b {
				return 0, "the fraction beside a whole number must be less than one"
			}
			if !slices.Contains(unders, b) {
				return 0, noSuchFraction(over, under)
			}
			a /= b
		}
		value += a
	}
	return value, ""
}

// spelt writes fractions of a single sign as two numbers with a slash.
func spelt(text string) string {
	var plain strings.Builder
	for _, r := range strings.ReplaceAll(text, "⁄", "/") {
		if f, ok := vulgar()[r]; ok {
			plain.WriteString(" " + f)
		} else {
			plain.WriteRune(r)
		}
	}
	return plain.String()
}

// IsInchFraction reports whether a text ends in eighths, 16ths, 32nds or 64ths and
// has no unit. Rules in inches have such fractions, rules in millimetres do not.
func IsInchFraction(text string) bool {
	_, under, fraction := strings.Cut(spelt(text), "/")
	switch strings.TrimSpace(under) {
	case "8", "16", "32", "64":
		return fraction
	}
	return false
}

// isNumber reports whether a text is digits with at most one point or one
// slash, digits on both sides of a slash and on at least one of a point.
func isNumber(text string) bool {
	marks, digits := 0, 0
	for i, r := range text {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == '/':
			marks++
			if i == 0 || i == len(text)-1 {
				return false
			}
		case r == '.':
			marks++
		default:
			return false
		}
	}
	return digits > 0 && marks <= 1
}

// isWord reports whether a text is letters only.
func isWord(text string) bool {
	return text != "" && strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) }) < 0
}

// Setting is the nearest length a caliper can be set to.
type Setting struct {
	Text   string  // in the caliper's unit, such as "2 45/64 in" or "68.7 mm"
	Length float64 // the same in millimetres
}

// Step returns the smallest step of a caliper's setting: a 64th of an inch, or a
// tenth of a millimetre.
func (u Unit) Step() float64 {
	if u == Inch {
		return MillimetresPerInch / 64
	}
	return 0.1
}

// Setting returns the nearest setting to a length.
func (u Unit) Setting(mm float64) Setting {
	n := math.Round(mm/u.Step()) + 0 // never minus zero
	if u == Inch {
		return Setting{sixtyFourths(n) + " in", n * u.Step()}
	}
	return Setting{strconv.FormatFloat(n/10, 'f', 1, 64) + " mm", n / 10}
}

// Format returns a length to the nearest setting, for reading: "3/64 in", "1.2 mm".
func (u Unit) Format(mm float64) string { return u.Setting(mm).Text }

// slack is the rounding error that a calculated length may have, as a share of a
// step. It matters where a length is rounded up or down.
const slack = 1e-9

// FormatUp returns a length rounded up to a setting, for the shortest length that
// will do.
func (u Unit) FormatUp(mm float64) string {
	return u.Format(math.Ceil(mm/u.Step()-slack) * u.Step())
}

// FormatDown returns a length rounded down to a setting, for the greatest length that
// will do.
func (u Unit) FormatDown(mm float64) string {
	return u.Format(math.Floor(mm/u.Step()+slack) * u.Step())
}

// FormatWithRest returns a length as the nearest setting and the remainder, where that
// shows: "2 45/64 in and 0.003 in", "1 13/64 in less 0.007 in". In millimetres it gives the tenth alone.
func (u Unit) FormatWithRest(mm float64) string {
	set := u.Setting(mm)
	left := (mm - set.Length) / u.Millimetres()
	if u == Millimetre || math.Abs(left) < 0.0005 {
		return set.Text
	}
	more := "and"
	if left < 0 {
		more = "less"
	}
	return fmt.Sprintf("%s %s %.3f in", set.Text, more, math.Abs(left))
}

// FormatDecimal returns a small length as a decimal, for what is finer than a setting:
// "0.010 in", "0.25 mm".
func (u Unit) FormatDecimal(mm float64) string { return u.decimal(mm, u.decimals()) }

// FormatDecimalUp returns a small length as a decimal, rounded up: the length is no more than
// the text says.
func (u Unit) FormatDecimalUp(mm float64) string {
	grain := u.Millimetres() * math.Pow(10, -float64(u.decimals()))
	return u.FormatDecimal(math.Ceil(mm/grain-slack) * grain)
}

// FormatChosen returns a length that someone chose: as a setting if it is one, otherwise
// as a decimal.
func (u Unit) FormatChosen(mm float64) string {
	const same = 1e-4
	if set := u.Setting(mm); math.Abs(set.Length-mm) < same {
		return set.Text
	}
	return u.FormatDecimal(mm)
}

// decimals is how many decimals FormatDecimal gives.
func (u Unit) decimals() int {
	if u == Inch {
		return 3
	}
	return 2
}

func (u Unit) decimal(mm float64, digits int) string {
	return Decimal(mm/u.Millimetres(), digits) + " " + u.String()
}

// Decimal writes a number with so many decimals, and never as minus nothing.
func Decimal(x float64, digits int) string {
	text := strconv.FormatFloat(x, 'f', digits, 64)
	if isZero(text) {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// Breach is a length that was measured and the bound it lies beyond.
type Breach struct{ Measured, Bound float64 }

// FormatAgainst returns what was measured and the bound, both as decimals: as fine as
// FormatDecimal's, or finer where they would look the same or one of them would look
// like zero. The bound is rounded to its safe side, so that a length that keeps to the
// text keeps to the bound.
func (u Unit) FormatAgainst(by Breach) (measured, bound string) {
	const most = 7 // decimals: finer than a wave of light
	for digits := u.decimals(); ; digits++ {
		grain := u.Millimetres() * math.Pow(10, -float64(digits))
		safe := math.Ceil(by.Bound/grain-slack) * grain
		if by.Measured > by.Bound {
			safe = math.Floor(by.Bound/grain+slack) * grain
		}
		measured, bound = u.decimal(by.Measured, digits), u.decimal(safe, digits)
		alike := measured == u.decimal(by.Bound, digits) || measured == bound
		nothing := by.Measured != 0 && isZero(measured) || by.Bound != 0 && isZero(bound)
		if digits == most || by.Measured == by.Bound || !alike && !nothing {
			return measured, bound
		}
	}
}

// isZero reports whether a length has no digit but zeros.
func isZero(text string) bool { return !strings.ContainsAny(text, "123456789") }

// sixtyFourths writes a count of 64ths in lowest terms: 173 is "2 45/64".
func sixtyFourths(n float64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := math.Floor(n/64), int(math.Mod(n, 64))
	under := 64
	for rest > 0 && rest%2 == 0 {
		rest, under = rest/2, under/2
	}
	switch {
	case rest == 0:
		return fmt.Sprintf("%s%.0f", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, rest, under)
	}
	return fmt.Sprintf("%s%.0f %d/%d", sign, whole, rest, under)
}
