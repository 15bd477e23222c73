package render

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

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
	a.annotate(&all, l)
	pages := make([]printing.Page, len(all))
	for i, d := range all {
		a.frame(&d.Drawing, l.format, head{
			number: fmt.Sprintf("page %d of %d", i+1, len(all)), about: d.about, piece: d.piece,
		})
		pages[i] = l.correct(d.Drawing, d.label)
	}
	return pages
}

// annotate sets the notes below the papers: in smaller letters where that saves
// a page, else what finds no room on pages of its own.
func (a author) annotate(pages *[]drawn, l layout) {
	sets, rest := a.below(*pages, l, a.notes())
	if len(rest) > 0 {
		if small, none := a.below(*pages, l, scaled(a.notes(), smallNotes)); len(none) == 0 {
			sets, rest = small, nil
		}
	}
	for i, set := range sets {
		(*pages)[i].Add(drawing.Notes, set...)
	}
	for len(rest) > 0 {
		page := drawn{about: "Notes for the " + a.what() + ".", label: "notes", lowest: l.height}
		sets, left := a.below([]drawn{page}, l, rest)
		if len(left) == len(rest) {
			return // a note taller than a page: nothing this small is printed
		}
		page.Add(drawing.Notes, sets[0]...)
		*pages, rest = append(*pages, page), left
	}
}

// below sets notes below the papers of pages, and returns those without room.
func (a author) below(pages []drawn, l layout, notes []note) (sets [][]drawing.Mark, rest []note) {
	for _, d := range pages {
		room := l.beside()
		room.Max.Y = min(room.Max.Y, d.lowest-3)
		var set []drawing.Mark
		set, _, notes = column(notes, room, a.letters)
		sets = append(sets, set)
	}
	return sets, notes
}

// smallNotes is how small notes are set to save a page: 9 points become 8.
const smallNotes = 8.0 / 9

func scaled(notes []note, size float64) []note {
	out := make([]note, len(notes))
	for i, n := range notes {
		n.size *= size
		out[i] = n
	}
	return out
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
