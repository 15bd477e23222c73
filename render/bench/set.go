package bench

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/report"
)

// set lists the order to take the blanks in. The one that differs most from the set
// comes first, since a new method costs least on it.
func (f format) set(standings []pattern.Standing) []block {
	width := f.column()
	blocks := f.heading("Which blank first", width)
	blocks = append(blocks, f.paragraph("A new method goes on the blank that differs most from the set. So take them in this order, and tick each when it is done.", width)...)
	blocks = append(blocks, f.paragraph(f.all(standings), width)...)
	for _, s := range standings {
		blocks = append(blocks, f.standing(s, width))
		for _, l := range f.Letters.Lines(report.Why(f.Unit, s), bodySize, false, width-boxSide-boxNumber) {
			blocks = append(blocks, line(body(boxSide+boxNumber, l)))
		}
		for _, words := range report.Remeasure(s.Member.Plan) {
			for _, l := range f.Letters.Lines(words, bodySize, true, width-boxSide-boxNumber) {
				blocks = append(blocks, line(bold(body(boxSide+boxNumber, l))))
			}
		}
	}
	return append(blocks, f.quote(membersOf(standings))...)
}

// standing sets the box to tick of one blank and, at the end of its line, a note
// when it is not clear or has to be measured again.
func (f format) standing(s pattern.Standing, width float64) block {
	const apart = 3
	room := width - boxSide - boxNumber
	found := ""
	switch n := len(s.Member.Groups()); {
	case n > 0:
		found = fmt.Sprintf("%s: %s", notClear, count(n, "finding"))
	case len(s.Member.Doubts()) > 0:
		found = remeasure
	}
	if found != "" {
		room -= f.Letters.Width(found, bodySize, true) + apart
	}
	name := f.Letters.Shortened(s.Member.Blank.Name, bodySize, false, room)
	return block{depth: boxLine, heads: true, draw: func(d *drawing.Drawing, left, top float64) {
		tick(d, left, top, name)
		if found != "" {
			at := bold(ending(left+width, found))
			at.At.Y = top - boxFoot
			d.Add(drawing.Notes, at)
		}
	}}
}

// all sums up what there is to cut on the whole set.
func (f format) all(standings []pattern.Standing) string {
	cuts, length, minutes, timed := 0, 0.0, 0.0, true
	for _, s := range standings {
		t, times := s.Member.Whole(), s.Member.WholeTimes()
		cuts, length, minutes = cuts+t.Cuts, length+t.Length, minutes+times.Cutting
		timed = timed && times.Known()
	}
	words := fmt.Sprintf("In all %s, %s of groove", count(cuts, "cut"), report.Groove(f.Unit, length))
	if timed && minutes > 0 {
		words += ", " + report.Minutes(minutes)
	}
	if wheels := len(standings[0].Member.Order()); wheels > 1 {
		words += fmt.Sprintf("; %s, each put on once to a blank, or once if all blanks are cut with one before the next", count(wheels, "wheel"))
	}
	return words + "."
}
