package wrap

import (
	"fmt"
	"strings"

	"roundlay/render/report"
)

// continuing says which pages the ith page continues, and which continue it: those
// whose pieces meet its own or, where papers are whole, the ones before and after.
func continuing(i int, all []drawn) string {
	var before, after []int
	for k, other := range all {
		switch {
		case k == i || !all[i].meets(other, i-k):
		case k < i:
			before = append(before, k+1)
		default:
			after = append(after, k+1)
		}
	}
	return continues(before, after)
}

// meets reports whether the pieces of two pages meet or, where papers are whole,
// whether the pages follow on each other. apart is how many pages lie between them.
func (d drawn) meets(other drawn, apart int) bool {
	if d.piece == nil || other.piece == nil {
		return apart == 1 || apart == -1
	}
	row, column := d.piece.place()
	otherRow, otherColumn := other.piece.place()
	off := [2]int{row - otherRow, column - otherColumn}
	return d.piece.paper == other.piece.paper && off[0]*off[0]+off[1]*off[1] == 1
}

// place returns the row and the column of a piece of its paper.
func (p piece) place() (row, column int) {
	return (p.number - 1) / p.columns, (p.number - 1) % p.columns
}

// continues says which pages one continues, and which continue it.
func continues(before, after []int) string {
	var words []string
	if len(before) > 0 {
		words = append(words, "continues from "+pagesOf(before))
	}
	if len(after) > 0 {
		words = append(words, "continues on "+pagesOf(after))
	}
	if words == nil {
		return ""
	}
	return " This page " + strings.Join(words, " and ") + "."
}

func pagesOf(list []int) string {
	if len(list) == 1 {
		return fmt.Sprintf("page %d", list[0])
	}
	return "pages " + report.Numbers(list)
}
