package bench

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// format is a sheet of paper, and the room on it.
type format struct {
	scribe
	width, height, margin float64
}

// Least is the smallest sheet that the bars and the columns of the cut list go
// on, in millimetres.
const (
	leastWidth  = 150.0
	leastHeight = 190.0
)

// newFormat returns the paper of some options, upright.
func newFormat(s scribe, o page.Options) (format, error) {
	f := format{s, min(o.Paper.Width, o.Paper.Height), max(o.Paper.Width, o.Paper.Height), o.Margin}
	if f.width-2*f.margin < leastWidth-12 || f.height-2*f.margin < leastHeight-12 {
		u := s.unit
		return f, fmt.Errorf("--paper: read %q, which with a margin of %s is too small to be read at the bench; accepted: %s by %s or more, or a smaller --margin",
			o.Paper.Name, u.Text(f.margin), u.Text(math.Ceil(leastWidth+2*f.margin-12)), u.Text(math.Ceil(leastHeight+2*f.margin-12)))
	}
	return f, nil
}

// Room kept on every page, in millimetres.
const (
	headRoom = 9.0
	barsEdge = 1.0 // between the bars' words and the margin
	barsRoom = barsEdge + 2*page.BarDepth + 2
	footAir  = 2.0
)

// cautions returns the lines of the cautions at the foot of a page.
func (f format) cautions() []string {
	return f.letters.Lines(page.CautionsShort, bodySize, true, f.width-2*f.margin-barsRoom)
}

// room returns the box of what a page has to say: beside the bar up, above the
// cautions.
func (f format) room() geometry.Box {
	foot := f.margin + barsRoom + float64(len(f.cautions()))*tall(bodySize) + footAir
	return geometry.Box{
		Min: geometry.Point{X: f.margin + barsRoom, Y: foot},
		Max: geometry.Point{X: f.width - f.margin, Y: f.height - f.margin - headRoom},
	}
}

// column is the width of that.
func (f format) column() float64 {
	width, _ := f.room().Size()
	return width
}

// flow sets blocks one below another onto as many pages as they need.
func (f format) flow(blocks []block) []drawing.Drawing {
	room := f.room()
	pages := []drawing.Drawing{{}}
	top := room.Max.Y
	for i := 0; i < len(blocks); i++ {
		if needs := depthWith(blocks[i:]); top-needs < room.Min.Y && top < room.Max.Y {
			pages, top = append(pages, drawing.Drawing{}), room.Max.Y
			for _, b := range blocks[i].again {
				b.draw(&pages[len(pages)-1], room.Min.X, top)
				top -= b.depth
			}
		}
		blocks[i].draw(&pages[len(pages)-1], room.Min.X, top)
		top -= blocks[i].depth
	}
	return pages
}

// depthWith returns the depth of the first block with those that it heads.
func depthWith(blocks []block) float64 {
	depth := 0.0
	for _, b := range blocks {
		depth += b.depth
		if !b.heads {
			break
		}
	}
	return depth
}

// frame adds what every page carries: what it is of, its number and the job's
// title, the cautions, and the check bars.
func (f format) frame(d *drawing.Drawing, subject, title, number string) {
	const apart = 4
	at := geometry.Point{X: f.margin, Y: f.height - f.margin - titleSize*0.3}
	room := f.width - 2*f.margin - f.letters.Width(number, bodySize, false) - apart
	subject = f.letters.Shortened(subject, titleSize, true, room)
	d.Add(drawing.Notes, drawing.Text{
		At: geometry.Point{X: f.width - f.margin, Y: at.Y}, Words: number, Size: bodySize, Align: drawing.Right,
	}, drawing.Text{At: at, Words: subject, Size: titleSize, Bold: true})
	// The title has the room that is left, if it is worth the while.
	const worth = 30
	taken := f.letters.Width(subject, titleSize, true) + apart
	if room -= taken; room > worth {
		at.X += taken
		d.Add(drawing.Notes, drawing.Text{At: at, Words: f.letters.Shortened(title, bodySize, false, room), Size: bodySize})
	}
	corner := geometry.Point{X: f.margin + barsEdge + page.BarDepth, Y: f.margin + barsEdge + page.BarDepth}
	for _, b := range page.CheckBars(f.unit) {
		at := corner
		if b.Up {
			at.Y += page.BarDepth + 0.5 // clear of the bar across
		}
		d.Add(drawing.CheckBars, b.Marks(at)...)
	}
	for i, words := range f.cautions() {
		y := f.room().Min.Y - footAir - (float64(i)+1-rises)*tall(bodySize)
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: f.margin + barsRoom, Y: y}, Words: words, Size: bodySize, Bold: true})
	}
}

// page finishes a page.
func (f format) page(d drawing.Drawing, subject, title, number, label string) printing.Page {
	f.frame(&d, subject, title, number)
	return printing.Page{Width: f.width, Height: f.height, Label: label, Drawing: d}
}
