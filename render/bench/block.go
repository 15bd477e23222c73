package bench

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// block is something set across a column, with others below it.
type block struct {
	depth float64
	// heads says that it is nothing without the block below it.
	heads bool
	draw  func(d *drawing.Drawing, left, top float64)
	// again is what stands above the block where it begins a page.
	again []block
}

// Sizes of words, in points. Nothing that is read at the wheel is smaller than
// bodySize.
const (
	bodySize    = 12.0
	headingSize = 14.0
	titleSize   = 15.0
	settingSize = 16.0

	leading = 1.3 // lines, in sizes
)

// tall returns the depth of a line of words.
func tall(size float64) float64 { return size * lettering.MillimetresPerPoint * leading }

// rises is how far a line's words stand above the foot of its depth, as a share of
// the depth: their tails have room there.
const rises = 0.25

// text is words on one line, some way along it.
type text struct {
	at    float64
	words string
	size  float64
	bold  bool
	align drawing.Align
}

// line sets texts beside one another, all on one foot.
func line(texts ...text) block {
	b := block{}
	for _, t := range texts {
		b.depth = max(b.depth, tall(t.size))
	}
	b.draw = func(d *drawing.Drawing, left, top float64) {
		for _, t := range texts {
			d.Add(drawing.Notes, drawing.Text{
				At: geometry.Point{X: left + t.at, Y: top - b.depth*(1-rises)}, Words: t.words, Size: t.size, Bold: t.bold, Align: t.align,
			})
		}
	}
	return b
}

// space is room left free.
func space(depth float64) block {
	return block{depth: depth, draw: func(*drawing.Drawing, float64, float64) {}}
}

// rule is a line across the column.
func rule(width float64) block {
	const room = 1.2
	return block{depth: room, heads: true, draw: func(d *drawing.Drawing, left, top float64) {
		d.Add(drawing.Marks, drawing.Stroke{
			Points: []geometry.Point{{X: left, Y: top - room/2}, {X: left + width - 0.2, Y: top - room/2}}, Pen: drawing.Pen{Width: 0.25, Cap: drawing.FlatCap},
		})
	}}
}

// scribe sets words.
type scribe struct {
	letters *lettering.Letters
	unit    geometry.Unit
}

// paragraph sets words in lines of a width, each a block.
func (s scribe) paragraph(words string, width float64) []block {
	var blocks []block
	for _, l := range s.letters.Lines(words, bodySize, false, width) {
		blocks = append(blocks, line(text{words: l, size: bodySize}))
	}
	return append(together(blocks), space(1.2))
}

// together keeps blocks on one page, if they are few enough for one.
func together(blocks []block) []block {
	const few = 12
	for i := range blocks {
		blocks[i].heads = blocks[i].heads || i+1 < min(len(blocks), few)
	}
	return blocks
}

// item sets words with a mark hung before them.
func (s scribe) item(mark, words string, width float64) []block {
	const indent = 6.5
	var blocks []block
	for i, l := range s.letters.Lines(words, bodySize, false, width-indent) {
		texts := []text{{at: indent, words: l, size: bodySize}}
		if i == 0 {
			texts = append(texts, text{words: mark, size: bodySize, bold: true})
		}
		blocks = append(blocks, line(texts...))
	}
	return append(together(blocks), space(1.2))
}

// heading sets the name of what comes below it.
func (s scribe) heading(words string, width float64) []block {
	blocks := []block{space(2)}
	for _, l := range s.letters.Lines(words, headingSize, true, width) {
		blocks = append(blocks, line(text{words: l, size: headingSize, bold: true}))
	}
	for i := range blocks {
		blocks[i].heads = true
	}
	return blocks
}

// stack sets blocks one below another as a block of its own, which no page
// parts.
func stack(blocks []block) block {
	whole := block{}
	for _, b := range blocks {
		whole.depth += b.depth
	}
	whole.draw = func(d *drawing.Drawing, left, top float64) {
		for _, b := range blocks {
			b.draw(d, left, top)
			top -= b.depth
		}
	}
	return whole
}

// Sizes of a box to tick, and of the room about it, in millimetres.
const (
	boxSide   = 5.0
	boxNumber = 1.4 // from the box to its number
	boxApart  = 3.5 // from the number to the next box
	boxLine   = 7.2 // from one line of boxes to the next
)

// boxFoot is how far the words beside a box stand below its line's top: half way
// up the box, by their capitals.
const boxFoot = (boxLine + 0.72*bodySize*lettering.MillimetresPerPoint) / 2

// boxes sets a box to tick for each of some numbers, in lines of a width. The
// numbers, or what stands for them, come in groups that stand a little apart; one that does not fit what is
// left of a line begins the next.
func (s scribe) boxes(groups [][]string, width float64) []boxes {
	widest := 0.0
	for _, group := range groups {
		for _, n := range group {
			widest = max(widest, s.letters.Width(n, bodySize, false))
		}
	}
	cell := boxSide + boxNumber + widest + boxApart
	var lines []boxes
	at := math.Inf(1) // where the next box stands
	for _, group := range groups {
		if whole := float64(len(group))*cell - boxApart; at+whole > width && whole <= width {
			at = math.Inf(1)
		}
		for _, n := range group {
			if at+cell-boxApart > width {
				lines, at = append(lines, boxes{}), 0
			}
			last := &lines[len(lines)-1]
			last.boxes = append(last.boxes, box{at, n})
			last.width = at + cell - boxApart
			at += cell
		}
		at += boxApart
	}
	return lines
}

// boxes is a line of boxes to tick, and how wide it is.
type boxes struct {
	boxes []box
	width float64
}

// block sets the line, some way along its own.
func (l boxes) block(at float64) block {
	return block{depth: boxLine, draw: func(d *drawing.Drawing, left, top float64) {
		for _, b := range l.boxes {
			tick(d, left+at+b.at, top, b.number)
		}
	}}
}

// box is a box to tick, some way along its line.
type box struct {
	at     float64
	number string
}

// tick draws a box to tick with words beside it.
func tick(d *drawing.Drawing, left, top float64, words string) {
	foot := top - (boxLine+boxSide)/2
	d.Add(drawing.Marks, drawing.Stroke{
		Points: drawing.Rectangle(geometry.Box{
			Min: geometry.Point{X: left, Y: foot}, Max: geometry.Point{X: left + boxSide, Y: foot + boxSide},
		}),
		Closed: true, Pen: drawing.Pen{Width: 0.35},
	})
	d.Add(drawing.Notes, drawing.Text{
		At: geometry.Point{X: left + boxSide + boxNumber, Y: top - boxFoot}, Words: words, Size: bodySize,
	})
}
