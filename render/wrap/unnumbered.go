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
	return noRoom(slices.Sorted(maps.Keys(left)))
}

// noRoom lists cuts whose numbers found no room, if there are any.
func noRoom(cuts []int) []page.Note {
	const maxRuns = 12 // of numbers that are read
	words, them := "the numbers of cuts "+report.Numbers(cuts), "their neighbours"
	switch {
	case len(cuts) == 0:
		return nil
	case len(cuts) == 1:
		words, them = fmt.Sprintf("the number of cut %d", cuts[0]), "its neighbours"
	case strings.Count(words, ",") >= maxRuns:
		words = fmt.Sprintf("the numbers of %d of the cuts", len(cuts))
	}
	return []page.Note{{Size: 9, Words: "No room for " + words + ": count on from " + them + ", as the cut list does."}}
}
