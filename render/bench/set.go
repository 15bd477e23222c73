package bench

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/report"
)

// set tells in which order to take the blanks: the one that stands furthest from
// the set first, where a new method costs least.
func (f format) set(standings []pattern.Standing) []block {
	width := f.column()
	blocks := f.heading("Which blank first", width)
	blocks = append(blocks, f.paragraph("A new method goes on the blank that stands furthest from the set. So take them in this order, and tick each when it is done.", width)...)
	blocks = append(blocks, f.paragraph(f.all(standings), width)...)
	for _, s := range standings {
		what := s.Member.Blank.Name
		b := block{depth: boxLine, heads: true, draw: func(d *drawing.Drawing, left, top float64) {
			tick(d, left, top, f.Letters.Shortened(what, bodySize, false, width-boxSide-boxNumber))
		}}
		blocks = append(blocks, b)
		why := report.Why(f.Unit, s)
		if n := len(s.Member.Groups()); n > 0 {
			found := line(bold(body(boxSide+boxNumber, fmt.Sprintf("%s: %s", notClear, count(n, "finding")))))
			found.heads = true
			blocks = append(blocks, found)
		}
		for _, l := range f.Letters.Lines(why, bodySize, false, width-boxSide-boxNumber) {
			blocks = append(blocks, line(body(boxSide+boxNumber, l)))
		}
	}
	return blocks
}

// all sums up what there is to cut on the whole set.
func (f format) all(standings []pattern.Standing) string {
	cuts, length, minutes := 0, 0.0, 0.0
	for _, s := range standings {
		t := s.Member.Totals()
		cuts, length, minutes = cuts+t.Cuts, length+t.Length, minutes+s.Member.Minutes(t.Length)
	}
	words := fmt.Sprintf("In all %s, %s of groove", count(cuts, "cut"), report.Groove(f.Unit, length))
	if minutes > 0 {
		words += ", " + report.Minutes(minutes)
	}
	if wheels := len(standings[0].Member.Order()); wheels > 1 {
		words += fmt.Sprintf("; %s, each put on once to a blank, or once if all blanks are cut with one before the next", count(wheels, "wheel"))
	}
	return words + "."
}
