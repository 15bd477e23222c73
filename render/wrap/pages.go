package wrap

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// composer puts papers on pages, with the words that go with them.
type composer struct {
	sheet   *facePaper
	options Options
	page.Frame
}

// overlaps reports whether any piece shows what lies beyond its match lines:
// gores end at theirs.
func (l layout) overlaps(curved bool) bool {
	return slices.ContainsFunc(l.pieces, func(of []piece) bool { return of[0].rows > 1 || len(of) > 1 && !curved })
}

func newComposer(p *pattern.Plan, o Options) (composer, error) {
	letters, err := lettering.Load()
	if err != nil {
		return composer{}, err
	}
	s, err := newFacePaper(p, o, letters)
	return composer{s, o, page.NewFrame(letters, p.Job.Length)}, err
}

// layout is how papers are put on pages: each cut into pieces with a page to
// each, or several whole ones on a page.
type layout struct {
	page.Format
	pieces [][]piece // of each paper
	slots  []slot    // on a page, for whole papers; none where each piece has a page
}

// layout finds the fewest pages. It chooses portrait or landscape as for a true
// printer, so that a page printed again with a correction lies as it did before.
func (a composer) layout() (layout, bool) {
	straight := a
	straight.options.Printed = page.TruePrinter()
	l, ok := straight.layoutOn(straight.options.Landscape(), straight.options.Portrait())
	if !ok || a.options.Printed.True() {
		return l, ok
	}
	if l.Landscape {
		return a.layoutOn(a.options.Landscape())
	}
	return a.layoutOn(a.options.Portrait())
}

// layoutOn finds the fewest of some pages, each with the head it needs.
func (a composer) layoutOn(pages ...page.Format) (layout, bool) {
	if l, ok := a.whole(pages...); ok {
		return l, true
	}
	pages = slices.Clone(pages)
	for i := range pages {
		pages[i] = a.fitted(pages[i])
	}
	return a.parted(pages...)
}

// whole puts the paper on one page, whose head needs less room.
func (a composer) whole(pages ...page.Format) (layout, bool) {
	s, papers := a.sheet, a.sheet.papers()
	if s.apart() {
		return layout{}, false
	}
	for _, f := range pages {
		f = a.fittedWhole(f)
		if s.fit(papers, f) {
			return layout{Format: f, pieces: [][]piece{papers}}, true
		}
	}
	return layout{}, false
}

// parted puts papers on several pages, whole or in pieces.
func (a composer) parted(pages ...page.Format) (layout, bool) {
	s, papers := a.sheet, a.sheet.papers()
	if s.apart() {
		if found, f := pack(s.box(papers[0]), len(papers), pages...); found != nil {
			return layout{Format: f, pieces: one(papers), slots: found}, true
		}
	}
	var l layout
	for i, paper := range papers {
		if i > 0 {
			pages = []page.Format{l.Format}
		}
		pieces, f, ok := s.split(paper, pages...)
		if !ok {
			return l, false
		}
		l.Format, l.pieces = f, append(l.pieces, pieces)
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

	explains bool // whether it lists all the findings
}

// pages puts the papers on pages, the notes below them, and those that find no
// room there on further pages.
func (a composer) pages(ctx context.Context, l layout) ([]printing.Page, error) {
	draw := a.cut
	if l.slots != nil {
		draw = a.packed
	}
	all, err := draw(ctx, l)
	if err != nil {
		return nil, err
	}
	a.annotate(&all, l)
	pages := make([]printing.Page, len(all))
	for i, d := range all {
		a.frame(&d.Drawing, l.Format, head{
			number: fmt.Sprintf("page %d of %d", i+1, len(all)), about: d.about + continuing(i, all), piece: d.piece, see: a.see(d, all),
		})
		pages[i] = l.Correct(d.Drawing, d.label)
	}
	return pages, nil
}

// noted is how notes are shared out: what is set on each page, which pages
// explain the findings, and what found no room.
type noted struct {
	sets     [][]drawing.Mark
	explains []bool
	spilt    bool // whether those on the setting run over the first page
	rest     []page.Note
}

// annotate sets the notes below the papers. The notes on findings stay together, on
// each page that rings some and has the room. Where it saves a page, or turning one,
// the notes are set in smaller letters, and then lists as paragraphs. What finds no
// room gets pages of its own.
func (a composer) annotate(pages *[]drawn, l layout) {
	setting, found := a.setting(l.overlaps(a.sheet.curved), slices.Concat(l.pieces...)), a.found()
	chosen := a.below(*pages, l, setting, found)
	setting, found = scaled(setting, smallNotes), scaled(found, smallNotes)
	for _, closer := range [][]page.Note{setting, page.RunOn(setting)} {
		if chosen.full() {
			break
		}
		if n := a.below(*pages, l, closer, found); n.better(chosen) {
			chosen = n
		}
	}
	for i, set := range chosen.sets {
		(*pages)[i].Add(drawing.Notes, set...)
		(*pages)[i].explains = chosen.explains[i]
	}
	for rest := chosen.rest; len(rest) > 0; {
		more := drawn{about: "Notes for the " + a.what() + ".", label: "notes", explains: true}
		set, _, left := a.Set(rest, l.Beside())
		if len(left) == len(rest) {
			return // a note taller than a page, which no sheet is small enough for
		}
		more.Add(drawing.Notes, set...)
		*pages, rest = append(*pages, more), left
	}
}

// full reports whether smaller letters could improve nothing.
func (n noted) full() bool {
	return len(n.rest) == 0 && !n.spilt && !slices.Contains(n.explains, false)
}

// better reports whether notes are shared out better than in another way.
func (n noted) better(than noted) bool {
	if (len(n.rest) == 0) != (len(than.rest) == 0) {
		return len(n.rest) == 0
	}
	count := func(n noted) (pages int) {
		for _, explains := range n.explains {
			if explains {
				pages++
			}
		}
		return pages
	}
	if count(n) != count(than) {
		return count(n) > count(than)
	}
	return than.spilt && !n.spilt
}

// below sets notes below the papers of pages: those on the setting from the first
// page on, those on findings whole, below them.
func (a composer) below(pages []drawn, l layout, setting, found []page.Note) noted {
	n := noted{sets: make([][]drawing.Mark, len(pages)), explains: make([]bool, len(pages))}
	n.rest = setting
	done := false
	for i, d := range pages {
		room := l.Beside()
		room.Max.Y = min(room.Max.Y, d.lowest-3)
		n.sets[i], room.Max.Y, n.rest = a.Set(n.rest, room)
		n.spilt = n.spilt || len(n.rest) > 0
		if len(n.rest) > 0 || done && d.ringed() == nil {
			continue
		}
		if set, _, left := a.Set(found, room); len(left) == 0 {
			n.sets[i], n.explains[i], done = append(n.sets[i], set...), true, true
		}
	}
	if !done {
		n.rest = append(n.rest[:len(n.rest):len(n.rest)], found...)
	}
	return n
}

// ringed returns the letters of the findings that a page rings.
func (d drawn) ringed() []string {
	var letters []string
	for _, m := range d.On(drawing.Findings) {
		if text, ok := m.(drawing.Text); ok {
			letters = append(letters, strings.Split(text.Words, letterBreak)...)
		}
	}
	return letters
}

// see says where the findings that a page rings are explained, if not on that page.
func (a composer) see(d drawn, all []drawn) string {
	letters := d.ringed()
	if d.explains || letters == nil {
		return ""
	}
	which := letterRuns(a.sheet.plan.Groups(), func(letter string) bool { return slices.Contains(letters, letter) })
	at := slices.IndexFunc(all, func(d drawn) bool { return d.explains })
	rings := "Rings"
	if !strings.Contains(which, " ") {
		rings = "Ring"
	}
	return fmt.Sprintf("%s %s: page %d says what was found.", rings, which, at+1)
}

// smallNotes is how small notes are set to save a page: 9 points become 8.
const smallNotes = 8.0 / 9

func scaled(notes []page.Note, size float64) []page.Note {
	out := make([]page.Note, len(notes))
	for i, n := range notes {
		n.Size *= size
		out[i] = n
	}
	return out
}

// cut gives each piece a page.
func (a composer) cut(ctx context.Context, l layout) ([]drawn, error) {
	var all []drawn
	for _, pieces := range l.pieces {
		for _, p := range pieces {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			box := a.sheet.box(p)
			shift, _ := l.Place(box)
			one := drawn{
				Drawing: a.sheet.draw(p).Moved(shift), about: a.about(p), lowest: box.Min.Y + shift.Y,
				label: fmt.Sprintf("%s %d", a.sheet.side, p.number),
			}
			if len(l.pieces) > 1 {
				one.label = fmt.Sprintf("%s %d, %d", a.sheet.paperName(), p.paper, p.number)
			}
			if len(pieces) > 1 {
				one.piece = &p
			}
			all = append(all, one)
		}
	}
	return all, nil
}

// packed puts whole papers on pages, as many on each as there are slots.
func (a composer) packed(ctx context.Context, l layout) ([]drawn, error) {
	var all []drawn
	for i, pieces := range l.pieces {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		k := i % len(l.slots)
		if k == 0 {
			last := min(i+len(l.slots), len(l.pieces))
			all = append(all, drawn{about: a.aboutSome(i, last), label: a.sheet.paperName() + " " + a.sheet.paperNumbers(i, last, "–"), lowest: l.Height})
		}
		last := &all[len(all)-1]
		last.Append(a.sheet.draw(pieces[0]).Moved(l.slots[k].put(a.sheet.box(pieces[0]))))
		last.lowest = min(last.lowest, l.slots[k].at.Y)
	}
	return all, nil
}
