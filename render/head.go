package render

import (
	"cmp"
	"fmt"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// head is what stands at the top of a page, below its title.
type head struct {
	title  string // the paper's, where none is given
	number string // such as page 1 of 2
	about  string
	piece  *piece // the one on the page, to be shown on a map of all
	see    string // where to look for what is not on the page
}

// Sizes in the head: points, and millimetres.
const (
	titleSize, numberSize, headSize = 11.0, 10.0, 9.0

	titleDrop, headDrop, headAir = 4.0, 0.7, 2.3
	mapWidth, mapDepth           = 30.0, 11.0
)

// headLine is the distance between the lines of a head, in millimetres.
const headLine = 3.8

// headRoom returns how deep a head may get on a page.
func (a author) headRoom(f format) float64 {
	lines := len(a.headLines(f, head{about: a.longestAbout(), piece: &piece{}}))
	return max(titleDrop+headDrop+float64(lines)*headLine, titleDrop+1.5+mapDepth) + headAir
}

// headStart returns where the head's lines begin: to the right of the bar up, on
// a page so low that the bar reaches up to them.
func (a author) headStart(f format) float64 {
	const deepHead = 40
	if f.height-f.margin-deepHead < f.bars().Y+upEnd {
		return f.margin + sideRoom
	}
	return f.margin
}

// headLines returns the words of a head in lines.
func (a author) headLines(f format, h head) []string {
	width := f.width - f.margin - a.headStart(f)
	if h.piece != nil {
		width -= mapWidth + 3
	}
	print := printWords
	if f.narrow() {
		print = printShort
	}
	texts := []string{print}
	if !f.printed.True() {
		texts = append(texts, f.printed.corrected())
	}
	var lines []string
	for _, words := range append(texts, h.about) {
		lines = append(lines, fold(note{words: words, size: headSize}, width, a.letters)...)
	}
	return lines
}

// frame adds what every page carries: its head, the check bars and the cautions.
func (a author) frame(d *drawing.Drawing, f format, h head) {
	top, left := f.height-f.margin, a.headStart(f)
	right := f.width - f.margin - left
	if h.number != "" {
		d.Add(drawing.Notes, drawing.Text{
			At: geometry.Point{X: f.width - f.margin, Y: top - titleDrop}, Words: h.number, Size: numberSize, Align: drawing.Right,
		})
		right -= a.letters.Width(h.number, numberSize, false) + 4
	}
	title := cmp.Or(h.title, a.heading(right))
	d.Add(drawing.Notes, drawing.Text{
		At: geometry.Point{X: left, Y: top - titleDrop}, Words: a.shortened(title, right, titleSize, true),
		Size: titleSize, Bold: true,
	})
	y := top - titleDrop - headDrop
	for _, line := range a.headLines(f, h) {
		y -= headLine
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: left, Y: y}, Words: line, Size: headSize})
	}
	if h.piece != nil {
		a.mapOf(d, *h.piece, geometry.Point{X: f.width - f.margin, Y: top - titleDrop - 1.5})
	}
	a.foot(d, f, h.see)
}

// foot adds the check bars and the cautions, and where to look for what is not on
// the page.
func (a author) foot(d *drawing.Drawing, f format, see string) {
	for _, b := range CheckBars(a.sheet.plan.Job.Length) {
		d.Add(drawing.CheckBars, b.Marks(f.bar(b))...)
	}
	words := Cautions
	if f.narrow() {
		words = CautionsShort
	}
	notes := []note{{words: words, size: 7.5}}
	if see != "" {
		notes = append([]note{{words: see, size: 9, bold: true}}, notes...)
	}
	set, _, _ := column(notes, f.cautions(), a.letters)
	d.Add(drawing.Notes, set...)
}

// mapOf draws the pieces of a paper as they lie, from a place to the left and
// down, and shows which is this one.
func (a author) mapOf(d *drawing.Drawing, p piece, corner geometry.Point) {
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

// shortened cuts words that are too long for a line.
func (a author) shortened(words string, width, size float64, bold bool) string {
	return a.letters.Shortened(words, size, bold, width)
}
