package job

import (
	"math"
	"strconv"

	"roundlay/geometry"
)

// lengthText returns a length as a job file has it: as calipers show it, or as a
// decimal of its owner's unit, where that is all of it. Otherwise it has more decimals,
// or it is in the other unit where that is clearly shorter: then it was written so.
func lengthText(u geometry.Unit, mm float64) string {
	for _, text := range []string{u.Format(mm), u.FormatDecimal(mm)} {
		if isAll(u, text, mm) {
			return text
		}
	}
	const clearly = 3 // characters
	text, other := inFull(u, mm), geometry.Inch
	if u == geometry.Inch {
		other = geometry.Millimetre
	}
	for _, foreign := range []string{other.Format(mm), other.FormatDecimal(mm), inFull(other, mm)} {
		if isAll(other, foreign, mm) && len(foreign)+clearly <= len(text) {
			text = foreign
		}
	}
	return text
}

// inFull returns a length with as many decimals as it takes.
func inFull(u geometry.Unit, mm float64) string {
	const most = 8 // less than any two lengths that are told apart
	for digits := 1; ; digits++ {
		text := strconv.FormatFloat(mm/u.Millimetres(), 'f', digits, 64) + " " + u.String()
		if digits == most || isAll(u, text, mm) {
			return text
		}
	}
}

// isAll reports whether a text is read as the whole length.
func isAll(u geometry.Unit, text string, mm float64) bool {
	read, err := u.Parse(text)
	return err == nil && math.Abs(read-mm) < 1e-6
}
