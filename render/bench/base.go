package bench

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/render/report"
)

// base sets how to divide and mark the underside, and its cuts; nothing where there are none.
func (g glass) base() []block {
	if g.plan.Base == nil {
		return nil
	}
	b := glass{g.format, g.plan.Base}
	p, u, width := b.plan, g.Unit, g.column()
	step := 5 // after those of the side
	if report.Bare(g.plan) {
		step = 1
	}
	title := fmt.Sprintf("%d  The base, %d parts", step, p.Repeats)
	if len(p.Chords) == 0 {
		title = fmt.Sprintf("%d  The base: nothing to divide", step)
	}
	blocks := g.heading(title, width)
	for _, c := range p.Chords {
		blocks = append(blocks, b.setting(c, width)...)
	}
	for i, words := range b.baseMarks(report.Bare(g.plan)) {
		blocks = append(blocks, g.item(string(rune('a'+i)), words, width)...)
	}
	if hollow := p.Blank.Hollow; hollow.Across > 0 {
		blocks = append(blocks, g.paragraph(fmt.Sprintf("The punty mark's hollow, %s across, is %s deep. Cuts that reach into it come out shallower there, or not at all.",
			u.Format(hollow.Across), u.FormatChosen(hollow.Depth)), width)...)
	}
	blocks = append(blocks, g.heading(fmt.Sprintf("%d  Cut the base, and tick", step+1), width)...)
	said := heading(g.paragraph("The numbers are those on the round paper.", width))
	return slices.Concat(blocks, said, b.passes(), b.totals(fmt.Sprintf("%d  Count of the base", step+2)))
}

// baseMarks says how to mark the base, step by step. The side may be bare of marks.
func (g glass) baseMarks(alone bool) []string {
	p, u := g.plan, g.Unit
	first := "Turn the glass over. Carry the mark of the side's repeat 1 square round the foot to the edge of the base: it is the middle of repeat 1 here too"
	if alone {
		first = "Turn the glass over. Make a mark at the edge of the base: it is the middle of repeat 1"
	}
	if p.Repeats > 1 {
		first += fmt.Sprintf(". From it step %d marks round the edge, and number them clockwise", p.Repeats)
	}
	middle := "Mark the middle, with a centre square or by the cross of the round paper."
	if free := report.Free(p); free != "" {
		middle += " " + strings.ToUpper(free[:1]) + free[1:] + "."
	}
	band := fmt.Sprintf("Band: a circle %s from the middle, and one %s from it.", u.Format(p.Band.Foot), u.Format(p.Band.Top))
	return []string{first + ".", middle, band}
}
