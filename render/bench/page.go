package bench

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// format is a sheet of paper, and what sets words on it.
type format struct {
	page.Format
	page.Frame
}

// The smallest sheet with room for the bars and the columns of the cut list, in
// millimetres.
const (
	minWidth  = 150.0
	minHeight = 190.0
)

// newFormat returns the upright page of some options, not corrected for the printer:
// nothing on the sheet is measured.
func newFormat(frame page.Frame, o page.Options) (format, error) {
	o.Printed = page.TruePrinter()
	f := o.Portrait()
	if f.Width-2*f.Margin < minWidth-12 || f.Height-2*f.Margin < minHeight-12 {
		u := frame.Unit
		return format{}, o.Refuse(fmt.Sprintf(", which with a margin of %s is too small to be read at the bench", u.Format(f.Margin)),
			fmt.Sprintf("%s by %s or more, or a smaller margin", u.Format(math.Ceil(minWidth+2*f.Margin-12)), u.Format(math.Ceil(minHeight+2*f.Margin-12))))
	}
	return format{frame.Fit(f, page.Head{}), frame}, nil
}

// room returns the box of what a page has to say: beside the bar up, above the
// cautions.
func (f format) room() geometry.Box { return f.Beside() }

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

// page finishes a page with its subject, its number and the job's title.
func (f format) page(d drawing.Drawing, subject, title, number, label string) printing.Page {
	f.DrawHead(&d, f.Format, page.Head{Title: subject, After: title, Number: number})
	f.DrawFoot(&d, f.Format, "")
	return f.Correct(d, label)
}
