package report

import (
	"testing"

	"roundlay/pattern"
)

func TestRuns(t *testing.T) {
	for want, ids := range map[string][]int{
		"":                       {},
		"4":                      {4},
		"4, 5":                   {4, 5},
		"4 to 6":                 {4, 5, 6},
		"9, 4 to 7, 1, 2, 12, 8": {9, 4, 5, 6, 7, 1, 2, 12, 8},
		"3, 2, 1":                {3, 2, 1},
		"1 to 3, 7 to 9":         {1, 2, 3, 7, 8, 9},
	} {
		cuts := make([]pattern.Cut, len(ids))
		for i, id := range ids {
			cuts[i].ID = id
		}
		if got := runs(cuts); got != want {
			t.Errorf("%v: %q, wanted %q", ids, got, want)
		}
	}
}

func TestMinutes(t *testing.T) {
	for minutes, want := range map[float64]string{
		0.2: "less than a minute", 1: "1 minute", 1.6: "2 minutes", 59.4: "59 minutes", 59.6: "1 h 0 min", 125: "2 h 5 min",
	} {
		if got := Minutes(minutes); got != want {
			t.Errorf("%g: %q, wanted %q", minutes, got, want)
		}
	}
}
