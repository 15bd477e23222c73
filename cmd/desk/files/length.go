package files

import (
	"fmt"
	"strings"

	"roundlay/geometry"
)

// Length reads a length that is written outside a job, for a job in a unit.
func Length(unit geometry.Unit, text string) (float64, error) {
	length, err := unit.Parse(text)
	if err != nil {
		return 0, fmt.Errorf("%w; accepted: %s", err, geometry.LengthForms)
	}
	if unit == geometry.Millimetre && geometry.IsInchFraction(text) {
		return 0, fmt.Errorf("read %q for a job in mm; give the unit: %s in", text, strings.TrimSpace(text))
	}
	return length, nil
}

// limit is the most that a length may be, and what that is.
type limit struct {
	mm    float64
	means string
}

// readLength reads an option's length, if it is given, and checks that it is not too long.
func readLength(unit geometry.Unit, option, text string, into *float64, most limit) error {
	if text != "" {
		length, err := Length(unit, text)
		if err != nil {
			return wrong(option, err)
		}
		*into = length
	}
	accepts := func(mm float64) bool { return mm >= 0 && mm <= most.mm }
	if !accepts(*into) {
		return wrongf(option, "read %q; accepted: from 0 to %s, %s%s", text, most.means, unit.FormatDown(most.mm), otherUnit(unit, text, accepts))
	}
	return nil
}

// otherUnit returns a hint for a refused bare number that would be accepted in the
// other unit, "" otherwise.
func otherUnit(unit geometry.Unit, text string, accepts func(mm float64) bool) string {
	other := geometry.Inch
	if unit == geometry.Inch {
		other = geometry.Millimetre
	}
	// Only a bare number comes out differently in the two.
	mm, err := other.Parse(text)
	if was, _ := unit.Parse(text); err != nil || mm == was || !accepts(mm) {
		return ""
	}
	return fmt.Sprintf("; give the unit: %s %s", strings.TrimSpace(text), other)
}
