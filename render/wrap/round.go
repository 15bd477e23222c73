package wrap

import (
	"context"
	"fmt"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/report"
)

// roundComposer puts the round paper of a base on pages.
type roundComposer struct {
	composer
	paper *roundPaper
}

// newRound draws the round paper for the base of a plan. The error says that the plan has
// none, or is the context's.
func newRound(ctx context.Context, p *pattern.Plan, o Options) (*Wrap, error) {
	if p.Base == nil {
		return nil, fmt.Errorf("blank %q: the job has no base to make paper for: it takes a table [base], and a motif with face = \"base\"", p.Blank.Name)
	}
	letters, err := lettering.Load()
	if err != nil {
		return nil, err
	}
	s := &roundPaper{plan: p.Base, above: p.Repeats, letters: letters, mirror: o.Mirror}
	if !o.NoRings {
		s.ring()
	}
	face := &facePaper{plan: p.Base, side: Base, letters: letters, rings: s.rings}
	a := roundComposer{composer{face, o, page.NewFrame(letters, p.Job.Length)}, s}
	a.Corrects = true
	if err := a.roomForBars(); err != nil {
		return nil, err
	}
	w := &Wrap{Title: a.title(), letters: letters}
	if !o.Printed.True() {
		w.Remarks = append(w.Remarks, o.Printed.Corrected())
	}
	drawn := s.draw()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	tiles, f, ok := a.tiled()
	if !ok {
		return nil, o.Refuse(fmt.Sprintf(" (%.0f × %.0f mm, margin %.0f mm), on which the %s does not go, not even in %d pieces",
			o.Paper.Width, o.Paper.Height, o.Margin, a.what(), maxPieces), "a larger sheet")
	}
	w.Pages = a.tilePages(drawn, tiles, f)
	w.Whole = a.roundPicture(drawn)
	return w, ctx.Err()
}

// head returns the words of a page that holds a tile.
func (a roundComposer) head(number string, t tile) page.Head {
	about := "Round paper for the base, as it is seen from below"
	if t.rows*t.columns > 1 {
		about += fmt.Sprintf(", piece %d of %d; join it to its neighbours on the match lines", t.number, t.rows*t.columns)
	}
	if a.paper.mirror {
		about += ". Mirrored: lay the printed face on the glass and trace through from the back"
	}
	return page.Head{Title: a.paper.plan.Job.Title, Ending: a.of(), Number: number, About: about + "."}
}

// tilePages puts each tile on a page, the notes below the first, and what finds no room there
// on further pages.
func (a roundComposer) tilePages(drawn drawing.Drawing, tiles []tile, f page.Format) []printing.Page {
	var all []drawing.Drawing
	rest := a.roundNotes(len(tiles) > 1)
	for i, t := range tiles {
		shift, _ := f.Place(t.shown())
		d := t.of(drawn).Moved(shift)
		if i == 0 {
			room := f.Beside()
			room.Max.Y = min(room.Max.Y, t.shown().Min.Y+shift.Y-3)
			var set []drawing.Mark
			set, _, rest = a.Set(rest, room)
			d.Add(drawing.Notes, set...)
		}
		all = append(all, d)
	}
	for len(rest) > 0 {
		set, _, left := a.Set(rest, f.Beside())
		if len(left) == len(rest) {
			break // a note taller than a page, which no sheet is small enough for
		}
		var d drawing.Drawing
		d.Add(drawing.Notes, set...)
		all, rest = append(all, d), left
	}
	pages := make([]printing.Page, len(all))
	for i, d := range all {
		number, label := fmt.Sprintf("page %d of %d", i+1, len(all)), "notes"
		h := page.Head{Title: a.paper.plan.Job.Title, Ending: a.of(), Number: number, About: "Notes for the base paper."}
		if i < len(tiles) {
			h, label = a.head(number, tiles[i]), fmt.Sprintf("base %d", i+1)
		}
		a.DrawHead(&d, f, h)
		a.DrawFoot(&d, f, "")
		pages[i] = f.Correct(d, label)
	}
	return pages
}

// roundPicture puts the whole paper on one sheet as large as it needs.
func (a roundComposer) roundPicture(drawn drawing.Drawing) printing.Page {
	const noteWidth, slack = 180.0, 1
	whole := tile{box: a.paper.box(), rows: 1, columns: 1, number: 1}
	width, height := whole.box.Size()
	inner := max(width, noteWidth)
	notes := a.roundNotes(false)
	depth := max(a.Depth(notes, inner), page.UpEnd-page.FootRoom) + 6
	f := a.pictureFormat(inner+slack, height+depth+slack, func(f page.Format) page.Format { return a.Fit(f, a.head("", whole)) })
	room := f.Above()
	shift := geometry.Motion{Cos: 1, X: (room.Min.X + room.Max.X) / 2, Y: room.Max.Y - height/2}
	d := drawn.Moved(shift)
	below := f.Beside()
	below.Max.Y = room.Max.Y - height - 3
	set, _, _ := a.Set(notes, below)
	d.Add(drawing.Notes, set...)
	a.DrawHead(&d, f, a.head("", whole))
	a.DrawFoot(&d, f, "")
	return f.Correct(d, "")
}

// roundNotes returns what is to be read beside the paper.
func (a roundComposer) roundNotes(pieces bool) []page.Note {
	p, u := a.paper.plan, a.paper.plan.Job.Length
	notes := []page.Note{{Words: a.dividing(), Size: 10, Bold: true}}
	for _, c := range p.Chords {
		notes = append(notes, page.Note{Words: capital(dividers(u, c, p.From())), Size: 9, Item: true})
	}
	laying := "Cut it out on its circle and lay it on the base, printed face towards you, its centre cross on the base's middle. " +
		"Each black tick at its edge meets the mark of the side's repeat of that number, 1 the middle of repeat 1, " +
		"when it is turned to them; numbers run clockwise. Repeats of the base have their numbers on their chain lines. " +
		"Heavy: the cuts to trace. Grey: each groove at its true width. Dashed: the band's ends."
	if p.Blank.Hollow.Across > 0 {
		laying += fmt.Sprintf(" Dotted circle: the punty mark's hollow, %s across.", u.Format(p.Blank.Hollow.Across))
	}
	if free := report.Free(p); free != "" {
		laying += " " + capital(free) + "."
	}
	notes = append(notes, page.Note{Words: laying + beyond(pieces), Size: 9})
	notes = append(notes, a.wheels()...)
	notes = append(notes, noRoom(a.paper.left)...)
	return append(notes, a.findings()...)
}
