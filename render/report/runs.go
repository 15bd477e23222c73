package report

import (
	"fmt"
	"strings"
)

// Runs writes items one after another, three or more that follow on from each
// other by the first and the last of them: "1, 2, 4 to 7".
func Runs[T any](items []T, follows func(item, before T) bool, name func(T) string) string {
	var runs []string
	for i := 0; i < len(items); {
		last := i
		for last+1 < len(items) && follows(items[last+1], items[last]) {
			last++
		}
		if last-i >= 2 {
			runs, i = append(runs, name(items[i])+" to "+name(items[last])), last+1
		} else {
			runs, i = append(runs, name(items[i])), i+1
		}
	}
	return strings.Join(runs, ", ")
}

// Numbers writes a list of numbers in runs.
func Numbers(list []int) string {
	return Runs(list, func(n, before int) bool { return n == before+1 }, func(n int) string { return fmt.Sprint(n) })
}

// FromTo writes all from one number to another: "3", or "3 to 7".
func FromTo(first, last int) string {
	if first == last {
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d to %d", first, last)
}
