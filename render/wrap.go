package render

import (
	"fmt"
	"io"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// Wrap is a plan's paper, ready to be written: in pages to print, and in one
// picture to look at.
type Wrap struct {
	Title string
	Pages []printing.Page
	Whole printing.Page
	// Remarks is what its maker should hear: what the paper can't show, how it
	// is divided, what was corrected.
	Remarks []string

	letters *lettering.Letters
}

// NewWrap draws the paper for a plan's blank. The error says why it can't be.
func NewWrap(p *pattern.Plan, o Options) (*Wrap, error) {
	a, err := newAuthor(p, o)
	if err != nil {
		return nil, err
	}
	for _, f := range []format{o.standing(), o.lying()} {
		if err := a.roomForBars(f); err != nil {
			return nil, err
		}
	}
	w := &Wrap{Title: a.title(), letters: a.letters, Remarks: a.remarks()}
	pages, ok := a.layout()
	if !ok {
		return nil, fmt.Errorf("the %s does not go on paper %q (%.0f × %.0f mm, margin %.0f mm), not even in %d pieces: use a larger sheet",
			a.what(), o.Paper.Name, o.Paper.Width, o.Paper.Height, o.Margin, mostPieces)
	}
	w.Pages = a.pages(pages)
	w.Whole = a.picture()
	return w, nil
}

// PDF writes the pages to print.
func (w *Wrap) PDF(to io.Writer) error { return printing.PDF(to, w.Title, w.Pages, w.letters) }

// SVG writes the whole wrap in one picture.
func (w *Wrap) SVG(to io.Writer) error { return printing.SVG(to, w.Title, w.Whole, w.letters) }

// PageSVG writes one page, from 1.
func (w *Wrap) PageSVG(to io.Writer, number int) error {
	return printing.SVG(to, w.Title, w.Pages[number-1], w.letters)
}

// PagePNG writes one page, from 1, at a number of dots to the inch.
func (w *Wrap) PagePNG(to io.Writer, number int, dpi float64) error {
	return printing.PNG(to, w.Pages[number-1], dpi, w.letters)
}

// author puts papers on pages, with the words that go with them.
type author struct {
	sheet   *sheet
	options Options
	letters *lettering.Letters
}

func newAuthor(p *pattern.Plan, o Options) (author, error) {
	letters, err := lettering.Load()
	if err != nil {
		return author{}, err
	}
	s, err := newSheet(p, o, letters)
	return author{s, o, letters}, err
}

// layout is how papers are put on pages: each cut into pieces with a page to
// each, or several whole ones on a page.
type layout struct {
	format
	pieces [][]piece // of each paper
	slots  []slot    // on a page, for whole papers; none where each piece has a page
}

// layout finds the fewest pages. Which way round pages lie is found for a true
// printer, so that correcting for a printer that is not doesn't turn them: its
// two errors belong to the page's sides.
func (a author) layout() (layout, bool) {
	straight := a
	straight.options.Printed = truePrinter
	l, ok := straight.layoutOn(straight.format(false), straight.format(true))
	if !ok || a.options.Printed.True() {
		return l, ok
	}
	return a.layoutOn(a.format(l.width < l.height))
}

// format returns the page that stands upright, or lies on its side, with room
// for the head that this paper needs.
func (a author) format(standing bool) format {
	f := a.options.lying()
	if standing {
		f = a.options.standing()
	}
	f.head = a.headRoom(f)
	return f
}

func (a author) layoutOn(pages ...format) (layout, bool) {
	s, papers := a.sheet, a.sheet.papers()
	if s.apart() {
		if found, f := pack(s.box(papers[0]), len(papers), pages...); found != nil {
			return layout{format: f, pieces: one(papers), slots: found}, true
		}
	}
	var l layout
	for i, paper := range papers {
		if i > 0 {
			pages = []format{l.format}
		}
		pieces, f, ok := s.split(paper, pages...)
		if !ok {
			return l, false
		}
		l.format, l.pieces = f, append(l.pieces, pieces)
	}
	return l, true
}

func one(papers []piece) [][]piece {
	all := make([][]piece, len(papers))
	for i, p := range papers {
		all[i] = []piece{p}
	}
	return all
}

// drawn is a page that is still to get its head and foot.
type drawn struct {
	drawing.Drawing
	about  string
	label  string
	piece  *piece  // the one it holds, where others belong to it
	lowest float64 // how far down the paper on it reaches
}

// pages puts the papers on pages, the notes below them, and those that find no
// room there on further pages.
func (a author) pages(l layout) []printing.Page {
	var all []drawn
	if l.slots != nil {
		all = a.packed(l)
	} else {
		all = a.cut(l)
	}
	notes := a.notes()
	for i := 0; len(notes) > 0; i++ {
		if i == len(all) {
			all = append(all, drawn{about: "Notes for the " + a.what() + ".", label: "notes", lowest: l.height})
		}
		room := l.beside()
		room.Max.Y = min(room.Max.Y, all[i].lowest-3)
		set, _, rest := column(notes, room, a.letters)
		if len(rest) == len(notes) && i >= len(all)-1 && all[i].label == "notes" {
			break // a note taller than a page: nothing this small is printed
		}
		all[i].Add(drawing.Notes, set...)
		notes = rest
	}
	pages := make([]printing.Page, len(all))
	for i, d := range all {
		a.frame(&d.Drawing, l.format, head{
			number: fmt.Sprintf("page %d of %d", i+1, len(all)), about: d.about, piece: d.piece,
		})
		pages[i] = l.correct(d.Drawing, d.label)
	}
	return pages
}

// cut gives each piece a page.
func (a author) cut(l layout) []drawn {
	var all []drawn
	for _, pieces := range l.pieces {
		for _, p := range pieces {
			box := a.sheet.box(p)
			shift, _ := l.place(box)
			page := drawn{
				Drawing: a.sheet.draw(p).Moved(shift), about: a.about(p), lowest: box.Min.Y + shift.Y,
				label: fmt.Sprintf("%s %d", a.sheet.side, p.number),
			}
			if len(l.pieces) > 1 {
				page.label = fmt.Sprintf("%s %d, %d", a.sheet.paperName(), p.paper, p.number)
			}
			if len(pieces) > 1 {
				page.piece = &p
			}
			all = append(all, page)
		}
	}
	return all
}

// packed puts whole papers on pages, as many on each as there are slots.
func (a author) packed(l layout) []drawn {
	var all []drawn
	for i, pieces := range l.pieces {
		k := i % len(l.slots)
		if k == 0 {
			last := min(i+len(l.slots), len(l.pieces))
			all = append(all, drawn{about: a.aboutSome(i, last), label: fmt.Sprintf("%s %d–%d", a.sheet.paperName(), i+1, last), lowest: l.height})
		}
		page := &all[len(all)-1]
		page.Append(a.sheet.draw(pieces[0]).Moved(l.slots[k].put(a.sheet.box(pieces[0]))))
		page.lowest = min(page.lowest, l.slots[k].at.Y)
	}
	return all
}
