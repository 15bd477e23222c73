package desk

import (
	"strings"
	"testing"
)

// As many edits as one request may make are made, one more is refused in words that say how many.
func TestMostEdits(t *testing.T) {
	one := Edit{Op: "none"}
	for _, n := range []int{mostEdits, mostEdits + 1} {
		var out layAnswer
		edits := make([]Edit, n)
		for i := range edits {
			edits[i] = one
		}
		_, err := out.revise(layRequest{Edits: edits}, false)
		if told := err != nil && strings.Contains(err.Error(), "edits: read 501; accepted: up to 500 at once"); told != (n > mostEdits) {
			t.Errorf("%d edits: %v", n, err)
		}
	}
}

// A stroke has as many points as are read, and no more.
func TestMostPoints(t *testing.T) {
	for _, n := range []int{mostPoints, mostPoints + 1} {
		s := stroke{Points: make([][2]float64, n), Step: 0.3}
		if err := s.check(); (err != nil) != (n > mostPoints) {
			t.Errorf("%d points: %v", n, err)
		}
	}
}
