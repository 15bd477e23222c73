package wrap

import (
	"context"
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// picture puts all the paper on one sheet as large as it needs, a whole number
// of millimetres each way.
func (a composer) picture(ctx context.Context) (printing.Page, error) {
	const noteWidth, maxAcross, slack = 180.0, 400.0, 1
	s, papers := a.sheet, a.sheet.papers()
	box := s.box(papers[0])
	width, height := box.Size()
	columns := min(len(papers), max(1, fitting(width, maxAcross)))
	rows := (len(papers) + columns - 1) / columns
	wide := float64(columns)*(width+packGap) - packGap
	tall := float64(rows)*(height+packGap) - packGap

	for _, p := range papers { // the notes list what finds no room on them
		if err := ctx.Err(); err != nil {
			return printing.Page{}, err
		}
		s.draw(p)
	}
	notes := a.notes(false, papers)
	inner := max(wide, noteWidth)
	depth := max(a.Depth(notes, inner), page.UpEnd-page.FootRoom) + 6
	f := a.pictureFormat(inner+slack, tall+depth+slack, a.fittedWhole)
	room := f.Above()
	room.Min.X += (room.Max.X - room.Min.X - wide) / 2
	var d drawing.Drawing
	for i, place := range grid(width, height, geometry.Box{
		Min: geometry.Point{X: room.Min.X, Y: room.Max.Y - tall}, Max: geometry.Point{X: room.Min.X + wide, Y: room.Max.Y},
	}, false) {
		if i < len(papers) {
			d.Append(s.draw(papers[i]).Moved(place.put(s.box(papers[i]))))
		}
	}
	below := f.Beside()
	below.Max.Y = room.Max.Y - tall - 3
	set, _, _ := a.Set(notes, below)
	d.Add(drawing.Notes, set...)
	a.frame(&d, f, head{about: a.aboutAll()})
	return f.Correct(d, ""), nil
}

// pictureFormat returns a page for a picture of all there is: with room for a width and
// a depth, and for the head that fit gives it.
func (a composer) pictureFormat(inner, deep float64, fit func(page.Format) page.Format) page.Format {
	laid := func(landscape bool) page.Format {
		across, up := a.options.Printed.Scale(landscape)
		f := page.Format{Margin: a.options.Margin * max(1, across, up), Landscape: landscape, Printed: a.options.Printed}
		f.Width = math.Ceil((inner+page.SideRoom+2*f.Margin)/across) * across
		f.Height = 1e3 // until the head is known: it stands clear of the bar up
		f = fit(f)
		f.Height = math.Ceil((deep+f.Foot+2*f.Margin+f.Head)/up) * up
		return f
	}
	if f := laid(false); f.Width <= f.Height {
		return f
	}
	return laid(true)
}
