package wrap

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
)

// head is what stands at the top of a page of the paper, below its title.
type head struct {
	number string // such as page 1 of 2
	about  string
	piece  *piece // the one on the page, to be shown on a map of all
	see    string // where to look for what is not on the page
}

// Room for the map of a paper's pieces, in millimetres.
const (
	mapWidth, mapDepth = 30.0, 11.0
	mapApart           = 3.0
)

// onPage returns the words of a head.
func (a composer) onPage(h head) page.Head {
	words := page.Head{Title: a.sheet.plan.Job.Title, Ending: a.of(), Number: h.number, About: h.about}
	if h.piece != nil {
		words.Aside = mapWidth + mapApart
	}
	return words
}

// fitted returns a page with room for the deepest head that any page may get.
func (a composer) fitted(f page.Format) page.Format {
	f = a.Fit(f, a.onPage(head{about: a.longestAbout(), piece: &piece{}}))
	f.Head = max(f.Head, a.AsideRoom(mapDepth))
	return f
}

// fittedWhole returns a page with room for the head of the only page that shows
// paper. A second page may hold notes.
func (a composer) fittedWhole(f page.Format) page.Format {
	return a.Fit(f, a.onPage(head{about: a.aboutAll() + continues(nil, []int{2})}))
}

// frame adds what every page carries: its head, the check bars and the cautions.
func (a composer) frame(d *drawing.Drawing, f page.Format, h head) {
	a.DrawHead(d, f, a.onPage(h))
	if h.piece != nil {
		a.mapOf(d, *h.piece, a.Aside(f))
	}
	a.DrawFoot(d, f, h.see)
}

// mapOf draws a small map of a paper's pieces to the left of and below a corner, and
// marks this piece on it.
func (a composer) mapOf(d *drawing.Drawing, p piece, corner geometry.Point) {
	const wide, tall, numberRoom = 6.0, 4.0, 3.2
	width, height := min(wide, mapWidth/float64(p.columns)), min(tall, mapDepth/float64(p.rows))
	corner.X -= width*float64(p.columns) + 0.1 // its line stays off the margin
	for row := range p.rows {
		for column := range p.columns {
			number := row*p.columns + column + 1
			at := column
			if a.sheet.mirror {
				at = p.columns - 1 - column
			}
			cell := geometry.Box{
				Min: geometry.Point{X: corner.X + width*float64(at), Y: corner.Y - height*float64(row+1)},
				Max: geometry.Point{X: corner.X + width*float64(at+1), Y: corner.Y - height*float64(row)},
			}
			own := number == p.number
			if own {
				d.Add(drawing.Notes, drawing.Fill{Points: drawing.Rectangle(cell), Ink: footprintInk})
			}
			d.Add(drawing.Notes, drawing.Stroke{Points: drawing.Rectangle(cell), Closed: true, Pen: drawing.Pen{Width: 0.15}})
			if own || width >= numberRoom && height >= 2.6 {
				d.Add(drawing.Notes, drawing.Text{
					At:    geometry.Point{X: (cell.Min.X + cell.Max.X) / 2, Y: (cell.Min.Y+cell.Max.Y)/2 - 0.9},
					Words: fmt.Sprint(number), Size: 7, Bold: own, Align: drawing.Centre,
				})
			}
		}
	}
}
