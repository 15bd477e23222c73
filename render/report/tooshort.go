package report

import (
	"fmt"

	"roundlay/geometry"
)

// leastSetting is the shortest step, in millimetres, that dividers hold. Common practice, no
// source.
const leastSetting = 2.0

// TooShort is said in place of a setting of dividers for a chord that they can't hold; "" where
// they can.
func TooShort(u geometry.Unit, chord float64) string {
	if chord >= leastSetting {
		return ""
	}
	return fmt.Sprintf("no setting: steps of %s are too short for dividers", u.FormatDecimal(chord))
}
