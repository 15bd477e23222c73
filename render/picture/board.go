package picture

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// board is what is set out on a page: rows of glasses, the first row at the top.
type board []row

// row is glasses on one table, each with its head above it and its notes below.
type row struct{ glasses []layout }

// rowSize is how much room a row takes: the ground of each glass in that glass's own
// coordinates, all of one height, and the depth of the words above and below.
type rowSize struct {
	grounds    []geometry.Box
	width      float64
	head, foot float64
}

// up is the height of the grounds.
func (s rowSize) up() float64 {
	_, up := s.grounds[0].Size()
	return up
}

// all is the height of the row with its words.
func (s rowSize) all() float64 { return s.head + s.up() + s.foot }

// page returns the page. If it is for a printer it has check bars in its lower left
// corner, and the cautions: a printed page may come to the bench.
func (b board) page(printed bool) printing.Page {
	sizes := make([]rowSize, len(b))
	width, height := 0.0, gutter*float64(len(b)-1)
	for i, r := range b {
		sizes[i] = r.size(b.below(i, printed))
		width = max(width, sizes[i].width)
		height += sizes[i].all()
	}
	// Words are set downwards from the top; the grounds stand between heads and feet.
	f := page.Format{Width: math.Ceil(width + 2*margin), Height: math.Ceil(height + 2*margin), Margin: margin, Printed: page.TruePrinter()}
	corner := geometry.Point{X: margin, Y: margin}
	if printed {
		corner = geometry.Point{X: margin + page.SideRoom, Y: margin + page.SideRoom}
		f.Width += page.SideRoom
		f.Height = max(f.Height+page.SideRoom, corner.Y+narrow+margin)
	}
	var d drawing.Drawing
	d.Add(drawing.Paper, drawing.Fill{
		Points: drawing.Rectangle(geometry.Box{Max: geometry.Point{X: f.Width, Y: f.Height}}), Ink: drawing.White,
	})
	top := f.Height - margin
	for i, r := range b {
		r.draw(&d, sizes[i], b.below(i, printed), geometry.Point{X: corner.X, Y: top})
		top -= sizes[i].all() + gutter
	}
	first := b[0].glasses[0]
	if printed {
		page.NewFrame(first.letters, first.plan.Job.Length).DrawBars(&d, f)
	}
	return f.Correct(d, "")
}

// below returns the notes below each glass of a row. On a printed page the cautions stand
// under the first of the last row.
func (b board) below(i int, printed bool) [][]page.Note {
	notes := make([][]page.Note, len(b[i].glasses))
	for k, l := range b[i].glasses {
		notes[k] = l.foot()
		if printed && k == 0 && i == len(b)-1 {
			notes[k] = append(notes[k], page.Cautions())
		}
	}
	return notes
}

// size finds the room that a row takes.
func (r row) size(below [][]page.Note) rowSize {
	s := rowSize{width: gutter * float64(len(r.glasses)-1)}
	low, high := math.Inf(1), math.Inf(-1)
	for k, l := range r.glasses {
		ground := l.ground()
		low, high = min(low, ground.Min.Y), max(high, ground.Max.Y)
		width, _ := ground.Size()
		column := l.column()
		s.grounds = append(s.grounds, ground)
		s.width += width
		s.head = max(s.head, column.Depth(l.head(), width)+headAir)
		s.foot = max(s.foot, footAir+column.Depth(below[k], width))
	}
	for k := range s.grounds {
		s.grounds[k].Min.Y, s.grounds[k].Max.Y = low, high
	}
	return s
}

// draw sets a row out, its upper left corner at a place.
func (r row) draw(d *drawing.Drawing, s rowSize, below [][]page.Note, at geometry.Point) {
	x := at.X
	for k, l := range r.glasses {
		ground := s.grounds[k]
		width, _ := ground.Size()
		for _, words := range []struct {
			notes []page.Note
			top   float64
		}{{l.head(), at.Y}, {below[k], at.Y - s.head - s.up() - footAir}} {
			set, _, _ := l.column().Set(words.notes, geometry.Box{
				Min: geometry.Point{X: x, Y: math.Inf(-1)}, Max: geometry.Point{X: x + width, Y: words.top},
			})
			d.Add(drawing.Notes, set...)
		}
		l.glasses(d, ground, geometry.Point{X: grained(x - ground.Min.X), Y: grained(at.Y - s.head - ground.Max.Y)})
		x += width + gutter
	}
}
