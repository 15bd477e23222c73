package wrap

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"roundlay/render/page"
	"roundlay/render/report"
)

// numbering is the cuts of a piece whose numbers are set on it, and those whose
// numbers found no room.
type numbering struct{ set, left []int }

// unnumbered lists the cuts that have no number on any of some pieces, if there
// are any.
func (s *facePaper) unnumbered(pieces []piece) []page.Note {
	const maxRuns = 12 // of numbers that are read
	left := map[int]bool{}
	for _, p := range pieces {
		for _, number := range s.numbering[p].left {
			left[number] = true
		}
	}
	for _, p := range pieces {
		for _, number := range s.numbering[p].set {
			delete(left, number)
		}
	}
	if len(left) == 0 {
		return nil
	}
	which := report.Numbers(slices.Sorted(maps.Keys(left)))
	if strings.Count(which, ",") >= maxRuns {
		which = fmt.Sprintf("%d of the cuts", len(left))
	} else {
		which = "cuts " + which
	}
	return []page.Note{{Size: 9, Words: "No room for the numbers of " + which + ": count on from their neighbours, as the cut list does."}}
}
