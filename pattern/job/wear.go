package job

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// The lengths of groove in which wear is read, in mm: from a hand's breadth to a few
// thousand glasses.
const minWearing, maxWearing = 100.0, 1e8

// wears reads how fast a wheel wears: the diameter it loses, and in how much groove.
func (s section) wears(across float64) (w groove.Wear) {
	field := s.optional("wears")
	accepted := "a list of two: the diameter lost, and in how much groove, such as " + map[geometry.Unit]string{
		geometry.Inch: `["1/64", "100 ft"]`, geometry.Millimetre: `["0.4 mm", "30 m"]`}[field.unit()]
	lost, in, ok := field.pair(accepted)
	if !ok {
		return w
	}
	mm, lostRead := lost.length(span{0.001, maxAcross / 2, 0.4})
	long, longRead := in.wearing()
	if !lostRead || !longRead {
		return w
	}
	if across > 0 && mm >= across/2 {
		lost.refuse("less than half of what the wheel is across, "+lost.unit().FormatDown(across/2), "")
		return w
	}
	return groove.Wear{Lost: mm, Groove: long}
}

// grooveUnits are units for long grooves, in mm. The foot is exact, as the inch is.
var grooveUnits = []struct {
	unit string
	mm   float64
}{{"ft", 12 * geometry.MillimetresPerInch}, {"m", 1000}}

// wearing reads a length of groove, which may be in feet or metres too.
func (f field) wearing() (float64, bool) {
	accepted := map[geometry.Unit]string{
		geometry.Inch:       `a length of groove from 4 in to 300,000 ft, such as "100 ft"`,
		geometry.Millimetre: `a length of groove from 100 mm to 100,000 m, such as "30 m"`}[f.unit()]
	mm, hint := f.grooveLength()
	if hint == "" && mm >= minWearing && mm <= maxWearing {
		return mm, true
	}
	if hint == "" && f.value.isNumber() {
		hint = fmt.Sprintf("a bare number is in %s: say m or ft, in quotes", map[geometry.Unit]string{geometry.Inch: "inches", geometry.Millimetre: "millimetres"}[f.unit()])
	}
	f.refuse(accepted, hint)
	return 0, false
}

// grooveLength reads the value as a length of groove; where it can't, hint says why.
func (f field) grooveLength() (mm float64, hint string) {
	if f.value.kind != unstable.String || len(f.value.text) > 60 {
		return f.millimetres()
	}
	text := strings.TrimSpace(f.value.text)
	for _, u := range grooveUnits {
		number, found := strings.CutSuffix(text, u.unit)
		number = strings.TrimSpace(number)
		if !found || number == "" || !strings.ContainsAny(number[len(number)-1:], "0123456789.") {
			continue // as of mm and cm
		}
		// The number is read as one of millimetres, without a unit.
		x, err := geometry.Millimetre.Parse(number)
		var wrong *geometry.LengthError
		if errors.As(err, &wrong) {
			return 0, oneLine(wrong.Reason, 120)
		}
		return x * u.mm, ""
	}
	mm, hint = f.millimetres()
	if unknown, ok := strings.CutSuffix(hint, "is not known: in, mm or cm"); ok {
		hint = unknown + "is not known: in, ft, mm, cm or m"
	}
	return mm, hint
}
