package bench

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
)

// block is something set across a column, with others below it.
type block struct {
	depth float64
	// heads says that it must stay with the block below it.
	heads bool
	draw  func(d *drawing.Drawing, left, top float64)
	// again is what stands above the block where it begins a page.
	again []block
}

// Sizes of words, in points. Nothing that is read at the wheel is smaller than
// bodySize.
const (
	bodySize    = page.BenchSize
	headingSize = 14.0
	settingSize = 16.0
)

// tall returns the depth of a line of words.
func tall(size float64) float64 { return size * lettering.MillimetresPerPoint * page.BenchLeading }

// line sets words on one baseline, each at its own distance along it.
func line(texts ...drawing.Text) block {
	b := block{}
	for _, t := range texts {
		b.depth = max(b.depth, tall(t.Size))
	}
	b.draw = func(d *drawing.Drawing, left, top float64) {
		for _, t := range texts {
			t.At.X += left
			t.At.Y += top - b.depth*(1-page.BenchRise)
			d.Add(drawing.Notes, t)
		}
	}
	return b
}

// body returns words of body size at a distance along a line.
func body(at float64, words string) drawing.Text {
	return drawing.Text{At: geometry.Point{X: at}, Words: words, Size: bodySize}
}

// ending returns words that end at a distance along a line.
func ending(at float64, words string) drawing.Text {
	t := body(at, words)
	t.Align = drawing.Right
	return t
}

func bold(t drawing.Text) drawing.Text {
	t.Bold = true
	return t
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

// note sets a note in lines of a width, each a block.
func (f format) note(n page.Note, width float64) []block {
	var blocks []block
	for _, texts := range f.Lines(n, width) {
		blocks = append(blocks, line(texts...))
	}
	return blocks
}

// paragraph sets words in lines of a width.
func (f format) paragraph(words string, width float64) []block {
	return f.item("", words, width)
}

// warning sets words that nobody is to pass over.
func (f format) warning(words string, width float64) []block {
	return append(together(f.note(page.Note{Words: words, Size: bodySize, Bold: true}, width)), space(1.2))
}

// item sets words with a mark hung before them, if it has one.
func (f format) item(mark, words string, width float64) []block {
	return append(together(f.note(page.Note{Words: words, Mark: mark, Size: bodySize}, width)), space(1.2))
}

// heading sets the name of what comes below it.
func (f format) heading(words string, width float64) []block {
	return heading(append([]block{space(2)}, f.note(page.Note{Words: words, Size: headingSize, Bold: true}, width)...))
}

// heading keeps blocks on the page of what comes below them.
func heading(blocks []block) []block {
	for i := range blocks {
		blocks[i].heads = true
	}
	return blocks
}

// together keeps blocks on one page, if they are few enough for one.
func together(blocks []block) []block {
	const few = 12
	for i := range blocks {
		blocks[i].heads = blocks[i].heads || i+1 < min(len(blocks), few)
	}
	return blocks
}

// stack sets blocks one below another as one block, which no page break divides.
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

// boxes sets a box to tick for each number, in lines of a width. The numbers, or the
// words in their place, come in groups with a gap between them. A group that does
// not fit into the rest of a line begins the next.
func (f format) boxes(groups [][]string, width float64) []boxes {
	widest := 0.0
	for _, group := range groups {
		for _, n := range group {
			widest = max(widest, f.Letters.Width(n, bodySize, false))
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

// block sets the line of boxes at a distance from the left.
func (l boxes) block(at float64) block {
	return block{depth: boxLine, draw: func(d *drawing.Drawing, left, top float64) {
		for _, b := range l.boxes {
			tick(d, left+at+b.at, top, b.number)
		}
	}}
}

// box is a box to tick, at a distance along its line.
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
