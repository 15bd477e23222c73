package report

import "testing"

// Written by hand: two that follow on from each other are no run.
func TestNumbersAreWrittenInRuns(t *testing.T) {
	for want, list := range map[string][]int{
		"": nil, "4": {4}, "1, 2": {1, 2}, "1 to 3": {1, 2, 3}, "2, 1": {2, 1}, "1, 2, 4 to 7, 9, 10": {1, 2, 4, 5, 6, 7, 9, 10}, "3 to 5, 7 to 9": {3, 4, 5, 7, 8, 9},
	} {
		if got := Numbers(list); got != want {
			t.Errorf("%v: %q, want %q", list, got, want)
		}
	}
	if one, some := FromTo(3, 3), FromTo(3, 4); one != "3" || some != "3 to 4" {
		t.Errorf("%q and %q", one, some)
	}
}
