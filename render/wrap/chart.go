package wrap

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// NewChart draws a swatch of every kind of motif at its defaults.
func NewChart(ctx context.Context, kinds []motifs.Kind, o Options) (*Wrap, error) {
	const repeats, tall, columns = 7, 50, 5
	c := &chart{
		title: "The motifs", about: "Each at its defaults and true to size, as seven of them go round " + swatchGlass() + ".",
		repeats: repeats, columns: columns,
	}
	var cells []cell
	for _, k := range kinds {
		w, err := newSwatch(ctx, k, repeats, tall)
		if err != nil {
			return nil, err
		}
		w.name, w.about = k.Name, k.About
		cells = append(cells, cell{swatch: &w})
	}
	c.groups = [][]cell{append(cells, cell{words: chartKey(kinds...)})}
	return c.draw(ctx, o)
}

// NewMotifChart draws one kind of motif at its defaults, and what each of its
// parameters does.
func NewMotifChart(ctx context.Context, kind motifs.Kind, o Options) (*Wrap, error) {
	const repeats, tall, columns = 6, 42, 4
	c := &chart{
		title:   "The motif " + kind.Name,
		about:   "One parameter a row, the others at their defaults. True to size, as six motifs go round " + swatchGlass() + ".",
		repeats: repeats, columns: columns,
	}
	plain, err := newSwatch(ctx, kind, repeats, tall)
	if err != nil {
		return nil, err
	}
	whole := plain
	whole.name = "at its defaults"
	c.groups = [][]cell{{
		{words: []page.Note{{Words: kind.Name, Size: nameSize, Bold: true}, {Words: kind.About, Size: aboutSize}}},
		{swatch: &whole}, {words: chartKey(kind)},
	}}
	for _, p := range kind.Params {
		group := []cell{{words: []page.Note{
			{Words: p.Name, Size: nameSize, Bold: true}, {Words: p.About, Size: aboutSize},
			{Words: "Takes " + p.Range() + ".", Size: aboutSize},
		}}}
		for _, w := range varied(plain, p) {
			group = append(group, cell{swatch: &w})
		}
		c.groups = append(c.groups, group)
	}
	return c.draw(ctx, o)
}

func swatchGlass() string {
	return "a straight glass " + geometry.Inch.Format(swatchAcross) + " across"
}

// chartKey says what the swatches of some kinds are cut with.
func chartKey(kinds ...motifs.Kind) []page.Note {
	with := func(k motifs.Kind) string {
		wheel, depth := swatchCut(k)
		u := geometry.Inch
		what := fmt.Sprintf("a %s mitre of %.0f°", u.Format(2*wheel.Radius), wheel.Angle*180/math.Pi)
		switch wheel.Edge {
		case groove.Round:
			what = fmt.Sprintf("a %s wheel with a round edge of %s radius", u.Format(2*wheel.Radius), u.Format(wheel.Convex))
		case groove.Flat:
			what = fmt.Sprintf("a %s flat wheel, %s wide", u.Format(2*wheel.Radius), u.Format(wheel.Thick))
		}
		return fmt.Sprintf("%s, %s deep", what, u.Format(depth))
	}
	words := "Heavy: the line to trace. Grey: the groove at its true width. Cut with " + with(kinds[0])
	for _, k := range kinds[1:] {
		if with(k) != with(kinds[0]) {
			words += fmt.Sprintf("; %s with %s", k.Name, with(k))
		}
	}
	notes := []page.Note{
		{Words: "How to read it", Size: nameSize, Bold: true}, {Words: words + ".", Size: aboutSize},
		{Words: "Whether it clears is for check to say: that is a matter of the glass, the wheel and the depth.", Size: aboutSize},
	}
	if len(kinds) > 1 {
		notes = append(notes, page.Note{Words: "roundlay motifs NAME --chart shows what a motif's parameters do.", Size: aboutSize})
	}
	return notes
}

// Sizes of a chart: points, and millimetres.
const (
	nameSize, aboutSize = 9.5, 7.5

	cellGap = 2.8 // the least between two columns
	rowGap  = 5.0
	maxGap  = 12.0
	wordGap = 0.8 // between a picture and its words
)

// chart is swatches in rows. A group of cells begins a row of its own.
type chart struct {
	title, about string
	repeats      int // of each swatch's glass
	columns      int // of the picture of all
	groups       [][]cell
}

// cell is one place in a row: a swatch with its words below, or words alone.
type cell struct {
	swatch *swatch
	words  []page.Note
}

// notes returns what stands below the cell's picture, if it has one.
func (c cell) notes() []page.Note {
	if c.swatch == nil {
		return c.words
	}
	notes := []page.Note{{Words: c.swatch.name, Size: nameSize, Bold: true}}
	if c.swatch.about != "" {
		notes = append(notes, page.Note{Words: c.swatch.about, Size: aboutSize})
	}
	return notes
}

// put draws the cell below and to the right of a corner, and returns how far
// down it reaches.
func (c cell) put(ctx context.Context, d *drawing.Drawing, corner geometry.Point, wide float64, letters *lettering.Letters) (float64, error) {
	y := corner.Y
	if c.swatch != nil {
		picture, err := c.swatch.draw(ctx, letters)
		if err != nil {
			return 0, err
		}
		d.Append(picture.Moved(geometry.Motion{Cos: 1, X: corner.X, Y: y - c.swatch.tall}))
		y -= c.swatch.tall + wordGap
	}
	const deep = 1e3 // a cell is as deep as its words
	set, low, _ := page.NewColumn(letters).Set(c.notes(), geometry.Box{
		Min: geometry.Point{X: corner.X, Y: y - deep}, Max: geometry.Point{X: corner.X + wide, Y: y},
	})
	d.Add(drawing.Notes, set...)
	return low, nil
}

// row is cells drawn side by side, its upper left corner at the origin.
type row struct {
	drawing.Drawing
	tall float64
}

// rows draws the chart's rows of a number of columns, with a gap between them.
func (c *chart) rows(ctx context.Context, columns int, gap float64, letters *lettering.Letters) ([]row, error) {
	var all []row
	for _, group := range c.groups {
		for cells := range slices.Chunk(group, columns) {
			var r row
			for i, cell := range cells {
				low, err := cell.put(ctx, &r.Drawing, geometry.Point{X: float64(i) * (wide(c.repeats) + gap)}, wide(c.repeats), letters)
				if err != nil {
					return nil, err
				}
				r.tall = max(r.tall, -low)
			}
			all = append(all, r)
		}
	}
	return all, nil
}

// draw puts the chart on pages, and in one picture.
func (c *chart) draw(ctx context.Context, o Options) (*Wrap, error) {
	a, err := c.composer(ctx, o)
	if err != nil {
		return nil, err
	}
	f := o.Portrait()
	if err := o.RoomForBars(f, a.Unit); err != nil {
		return nil, err
	}
	w := &Wrap{Title: c.title, letters: a.Letters}
	if w.Pages, err = c.pages(ctx, a, f); err != nil {
		return nil, err
	}
	w.Whole, err = c.picture(ctx, a)
	return w, err
}

// composer returns what frames pages. It needs a plan for its unit: any swatch's
// will do.
func (c *chart) composer(ctx context.Context, o Options) (composer, error) {
	for _, group := range c.groups {
		for _, cell := range group {
			if cell.swatch == nil {
				continue
			}
			p, err := cell.swatch.plan(ctx)
			if err != nil {
				return composer{}, err
			}
			return newComposer(p, o)
		}
	}
	return composer{}, errors.New("a chart needs at least one motif")
}

func (c *chart) pages(ctx context.Context, a composer, f page.Format) ([]printing.Page, error) {
	f = a.Fit(f, page.Head{About: c.about})
	room := f.Beside()
	across, tall := room.Size()
	columns := int((across + cellGap) / (wide(c.repeats) + cellGap))
	gap := 0.0
	if columns > 1 {
		gap = min((across-float64(columns)*wide(c.repeats))/float64(columns-1), maxGap)
	}
	rows, err := c.rows(ctx, max(columns, 1), gap, a.Letters)
	if err != nil {
		return nil, err
	}
	for _, r := range rows {
		if columns == 0 || r.tall > tall {
			return nil, a.options.Refuse(fmt.Sprintf(" (%.0f × %.0f mm, margin %.0f mm), on which a swatch with its words does not go",
				a.options.Paper.Width, a.options.Paper.Height, a.options.Margin), "a larger sheet")
		}
	}
	pages := stacked(rows, room, len(rows))
	// The same number of pages, with rows shared out evenly.
	pages = stacked(rows, room, (len(rows)+len(pages)-1)/len(pages))
	out := make([]printing.Page, len(pages))
	for i := range pages {
		a.DrawHead(&pages[i], f, page.Head{Title: c.title, Number: fmt.Sprintf("page %d of %d", i+1, len(pages)), About: c.about})
		a.DrawFoot(&pages[i], f, "")
		out[i] = f.Correct(pages[i], fmt.Sprintf("swatches %d", i+1))
	}
	return out, nil
}

// stacked puts rows into a room, one below another, page after page: on each as many
// as fit, but no more than most.
func stacked(rows []row, room geometry.Box, most int) []drawing.Drawing {
	var pages []drawing.Drawing
	y, n := math.Inf(-1), 0
	for _, r := range rows {
		if y-r.tall < room.Min.Y || n == most {
			pages, y, n = append(pages, drawing.Drawing{}), room.Max.Y, 0
		}
		pages[len(pages)-1].Append(r.Moved(geometry.Motion{Cos: 1, X: room.Min.X, Y: y}))
		y, n = y-r.tall-rowGap, n+1
	}
	return pages
}

// picture puts all rows on one sheet as large as they need, a whole number of
// millimetres each way.
func (c *chart) picture(ctx context.Context, a composer) (printing.Page, error) {
	const gap, slack = 5, 1
	rows, err := c.rows(ctx, c.columns, gap, a.Letters)
	if err != nil {
		return printing.Page{}, err
	}
	tall := -rowGap
	for _, r := range rows {
		tall += r.tall + rowGap
	}
	width := float64(c.columns)*(wide(c.repeats)+gap) - gap
	f := a.pictureFormat(width, max(tall, page.UpEnd)+slack, func(f page.Format) page.Format {
		return a.Fit(f, page.Head{About: c.about})
	})
	room := f.Beside()
	var d drawing.Drawing
	y := room.Max.Y
	for _, r := range rows {
		d.Append(r.Moved(geometry.Motion{Cos: 1, X: room.Min.X, Y: y}))
		y -= r.tall + rowGap
	}
	a.DrawHead(&d, f, page.Head{Title: c.title, About: c.about})
	a.DrawFoot(&d, f, "")
	return f.Correct(d, ""), nil
}
