package render

import (
	"fmt"
	"io"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// Options is how a wrap is to be printed.
type Options struct {
	Paper  Paper
	Margin float64 // what the printer leaves white along the sheet's edges
}

// DefaultOptions returns what holds where nothing else is asked for.
func DefaultOptions(unit geometry.Unit) Options {
	name := "a4"
	if unit == geometry.Inch {
		name = "letter"
	}
	paper, _ := ParsePaper(name)
	return Options{Paper: paper, Margin: 6}
}

// Wrap is a plan's wrap, ready to be written: in pages to print, and in one
// picture to look at.
type Wrap struct {
	Title string
	Pages []printing.Page
	Whole printing.Page

	letters *lettering.Letters
}

// NewWrap draws the wrap of a plan's blank, outside round the glass. The error
// says why it can't be put on the paper.
func NewWrap(p *pattern.Plan, o Options) (*Wrap, error) {
	letters, err := lettering.Load()
	if err != nil {
		return nil, err
	}
	s := sheet{plan: p, paper: p.Surface, seam: findSeam(p), letters: letters}
	asked := format{o.Paper.Width, o.Paper.Height, o.Margin}
	pieces, f, ok := s.split(asked)
	if !ok {
		return nil, fmt.Errorf("the wrap does not go on paper %q (%.0f × %.0f mm, margin %.0f mm), not even in %d pieces: use a larger sheet",
			o.Paper.Name, o.Paper.Width, o.Paper.Height, o.Margin, mostPieces*mostRows)
	}
	w := &Wrap{Title: title(p), letters: letters}
	a := author{sheet: s, letters: letters}
	w.Pages = a.pages(pieces, f)
	w.Whole = a.picture(s.whole(), o.Margin)
	return w, nil
}

// PDF writes the pages to print.
func (w *Wrap) PDF(to io.Writer) error { return printing.PDF(to, w.Title, w.Pages, w.letters) }

// SVG writes the whole wrap in one picture.
func (w *Wrap) SVG(to io.Writer) error { return printing.SVG(to, w.Title, w.Whole, w.letters) }

func title(p *pattern.Plan) string {
	return fmt.Sprintf("%s, wrap for %s", p.Job.Title, p.Blank.Name)
}

// author puts pieces of a sheet on pages, with the words that go with them.
type author struct {
	sheet   sheet
	letters *lettering.Letters
}

// pages puts each piece on a page of its own, and the notes that find no room
// beside them on further ones.
func (a author) pages(pieces []piece, f format) []printing.Page {
	var pages []printing.Page
	notes := a.notes(f)
	for _, p := range pieces {
		d, _ := a.sheet.draw(p)
		shift, _ := f.place(a.sheet.box(p))
		d = d.Moved(shift)
		foot := a.sheet.box(p).Min.Y + shift.Y
		room := f.room()
		room.Min.X += sideRoom
		room.Max.Y = min(room.Max.Y, foot-3)
		var set []drawing.Mark
		set, _, notes = column(notes, room, a.letters)
		d.Add(drawing.Notes, set...)
		pages = append(pages, printing.Page{Width: f.width, Height: f.height, Drawing: d})
	}
	for len(notes) > 0 {
		var d drawing.Drawing
		room := f.room()
		room.Min.X += sideRoom
		set, _, rest := column(notes, room, a.letters)
		if len(rest) == len(notes) {
			break // a single note taller than a page: nothing this small is printed
		}
		d.Add(drawing.Notes, set...)
		notes = rest
		pages = append(pages, printing.Page{Width: f.width, Height: f.height, Drawing: d})
	}
	for i := range pages {
		about := "notes"
		if i < len(pieces) {
			about = a.about(pieces[i], len(pieces))
		}
		a.frame(&pages[i].Drawing, f, fmt.Sprintf("page %d of %d", i+1, len(pages)), about)
	}
	return pages
}

// picture puts the whole wrap on one sheet as large as it needs.
func (a author) picture(p piece, margin float64) printing.Page {
	const noteWidth = 180.0
	d, _ := a.sheet.draw(p)
	box := a.sheet.box(p)
	width, height := box.Size()
	inner := max(width, noteWidth)
	// The notes' depth is found by setting them into a column that is deep enough.
	tall := geometry.Box{Max: geometry.Point{X: inner, Y: 1e4}}
	_, y, _ := column(a.notes(format{width: inner + sideRoom, margin: margin}), tall, a.letters)
	depth := max(tall.Max.Y-y, barsEnd-footRoom) + 6
	const slack = 1 // for rounding
	f := format{math.Ceil(inner + sideRoom + 2*margin + slack), 0, margin}
	f.height = math.Ceil(slack + height + depth + footRoom + 2*margin + f.head())
	shift, _ := f.place(box)
	d = d.Moved(shift)
	room := f.room()
	room.Min.X += sideRoom
	room.Max.Y = box.Min.Y + shift.Y - 3
	set, _, _ := column(a.notes(f), room, a.letters)
	d.Add(drawing.Notes, set...)
	a.frame(&d, f, "", a.about(p, 1))
	return printing.Page{Width: f.width, Height: f.height, Drawing: d}
}

// frame adds what every page carries: its head, the check bars and the cautions.
func (a author) frame(d *drawing.Drawing, f format, number, about string) {
	top := f.height - f.margin
	text := func(y float64, words string, size float64, bold bool) {
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: f.margin, Y: y}, Words: words, Size: size, Bold: bold})
	}
	right := f.width - 2*f.margin
	if number != "" {
		d.Add(drawing.Notes, drawing.Text{
			At: geometry.Point{X: f.width - f.margin, Y: top - 4}, Words: number, Size: 10, Align: drawing.Right,
		})
		right -= a.letters.Width(number, 10, false) + 4
	}
	text(top-4, a.shortened(title(a.sheet.plan), right, 11, true), 11, true)
	y := top - 4.7
	for _, words := range []string{printWords, about} {
		for _, line := range fold(note{words: words, size: 9}, f.width-2*f.margin, a.letters) {
			y -= 3.8
			text(y, line, 9, false)
		}
	}
	corner := f.bars()
	for _, b := range CheckBars(a.sheet.plan.Job.Length) {
		d.Add(drawing.CheckBars, b.Marks(corner)...)
	}
	if box, ok := f.cautions(); ok {
		set, _, _ := column([]note{{words: cautions, size: 7.5}}, box, a.letters)
		d.Add(drawing.Notes, set...)
	}
}

// shortened cuts words that are too long for a line.
func (a author) shortened(words string, width, size float64, bold bool) string {
	if a.letters.Width(words, size, bold) <= width {
		return words
	}
	runes := []rune(words)
	for len(runes) > 0 && a.letters.Width(string(runes)+"…", size, bold) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// about says what a page's piece is and how it goes on the glass.
func (a author) about(p piece, pieces int) string {
	// A repeat is on the piece that holds its middle.
	pitch := a.sheet.plan.Pitch()
	first := math.Ceil(p.from/pitch) + 1
	last := math.Floor(p.to/pitch) + 1
	what := fmt.Sprintf("Outside wrap, repeats %.0f to %.0f", first, last)
	if first >= last {
		what = fmt.Sprintf("Outside wrap, repeat %.0f", first)
	}
	if pieces > 1 {
		what += "; join it to its neighbours on the match lines"
	}
	return what + ". The base edge stands on the table, the arrow points to the rim."
}
