package geometry

import (
	"fmt"
	"strings"
)

// noSuchFraction says that no ruler has a fraction, and which it may have been meant
// for.
func noSuchFraction(over, under string) string {
	reason := fmt.Sprintf("no ruler has %s/%s: write halves, quarters, 8ths, 16ths, 32nds, 64ths or 128ths, or a decimal", over, under)
	if meant := meantUnder(under); meant != "" {
		return fmt.Sprintf("%s; is it %s/%s?", reason, over, meant)
	}
	return reason
}

// meantUnder returns the number below the line that one slip of the keys makes of
// another: two digits that changed places, or a digit that is missing, doubled or
// another. It returns "" where none or more than one could be meant.
func meantUnder(under string) string {
	for _, slip := range []func(typed, meant string) bool{swapped, oneOther} {
		found := ""
		for _, meant := range []string{"8", "16", "32", "64"} {
			if !slip(under, meant) {
				continue
			}
			if found != "" {
				return ""
			}
			found = meant
		}
		if found != "" {
			return found
		}
	}
	return ""
}

// swapped reports whether two digits are the same in the other order.
func swapped(typed, meant string) bool {
	return len(typed) == 2 && len(meant) == 2 && typed[0] == meant[1] && typed[1] == meant[0]
}

// oneOther reports whether one digit is another, or one was left out or is too much.
func oneOther(typed, meant string) bool {
	if len(typed) > len(meant) {
		typed, meant = meant, typed
	}
	start := 0
	for start < len(typed) && typed[start] == meant[start] {
		start++
	}
	if len(typed) == len(meant) {
		return len(typed) > 1 && typed[start+1:] == meant[start+1:]
	}
	return len(typed) > 0 && strings.HasSuffix(meant, typed[start:]) && len(meant) == len(typed)+1
}
