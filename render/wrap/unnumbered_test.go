package wrap

import "testing"

// One cut is told of as one, and a long list by how many they are.
func TestNoRoom(t *testing.T) {
	many := make([]int, 30)
	for i := range many {
		many[i] = 3 * i
	}
	for want, cuts := range map[string][]int{
		"No room for the number of cut 50: count on from its neighbours, as the cut list does.":            {50},
		"No room for the numbers of cuts 7, 9: count on from their neighbours, as the cut list does.":      {7, 9},
		"No room for the numbers of 30 of the cuts: count on from their neighbours, as the cut list does.": many,
	} {
		if got := noRoom(cuts); len(got) != 1 || got[0].Words != want {
			t.Errorf("%v: %+v, wanted %q", cuts, got, want)
		}
	}
	if got := noRoom(nil); got != nil {
		t.Errorf("none: %+v", got)
	}
}
