package wrap

import (
	"context"
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// Sizes on the test page, in millimetres.
const (
	ladderReach = 12.0 // how far in from the sheet's edges the printer's margin is tried
	rulerDepth  = 9.0
	rulerWidth  = 13.0 // of the one up the page, whose numbers are level
	testGap     = 4.0
	maxSquare   = 80.0
)

// NewTestPage draws one page that shows what a printer does: the check bars, a
// square, a circle, rulers, and the greys. It is always portrait, so that what is
// measured on it is along known sides of the paper.
func NewTestPage(ctx context.Context, p *pattern.Plan, o Options) (*Wrap, error) {
	a, err := newComposer(p, o)
	if err != nil {
		return nil, err
	}
	a.Corrects = true
	if err := o.RoomForBars(o.Portrait(), a.Unit); err != nil {
		return nil, err
	}
	t := &testPage{composer: a, Format: o.Portrait(), title: "Test page for the printer"}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	drawn := t.draw()
	return &Wrap{Title: t.title, Pages: []printing.Page{drawn}, Whole: drawn, letters: a.Letters}, nil
}

type testPage struct {
	composer
	page.Format
	title string
}

func (t *testPage) draw() printing.Page {
	var d drawing.Drawing
	// What is printed stays clear of the ladders, if the bars leave it room.
	spare := min(t.Width, t.Height) - 2*t.Margin - page.BarsReach(t.Unit)
	t.Margin = max(t.Margin, min(ladderReach, t.Margin+spare/2))
	t.ladders(&d)
	t.frame(&d)

	room := t.Beside()
	across, up := room.Max.X-room.Min.X-rulerWidth-testGap, room.Max.Y-room.Min.Y-rulerDepth-testGap
	t.ruler(&d, geometry.Point{X: room.Min.X, Y: room.Max.Y - rulerDepth/2}, across, false)
	t.ruler(&d, geometry.Point{X: room.Max.X - rulerWidth/2, Y: room.Min.Y}, up, true)
	room.Max.X -= rulerWidth + testGap
	room.Max.Y -= rulerDepth + testGap

	wide, tall := room.Size()
	side := math.Floor(min(maxSquare, wide, 0.45*tall)/10) * 10
	words := room
	if side >= 20 {
		t.square(&d, geometry.Point{X: room.Min.X, Y: room.Max.Y - side}, side)
		words.Max.Y -= side + 12
	}
	set, y, _ := t.Set(t.words(), words)
	d.Add(drawing.Notes, set...)
	if wide > side+60 {
		words = geometry.Box{Min: geometry.Point{X: room.Min.X + side + testGap, Y: room.Max.Y - side}, Max: room.Max}
		y = words.Max.Y
	}
	t.greys(&d, geometry.Point{X: words.Min.X, Y: y - 3}, words.Min.Y)
	return t.Correct(d, "test page")
}

// frame adds the head, the bars and the cautions, and keeps the room they take.
func (t *testPage) frame(d *drawing.Drawing) {
	words := page.Head{Title: t.title + ", portrait"}
	t.Format = t.Fit(t.Format, words)
	t.DrawHead(d, t.Format, words)
	t.DrawFoot(d, t.Format, "")
}

func (t testPage) words() []page.Note {
	line := func(words string) page.Note { return page.Note{Words: words, Size: 9} }
	return []page.Note{
		{Words: "What to look at", Size: 10, Bold: true},
		line("Bars: lay a ruler on both. If each reads 100 mm the printer is true. If not, write down what they read:"),
		line("100 mm across reads ____________     100 mm up reads ____________"),
		line("and give it with the next wrap: --printed-across … --printed-up … It holds for all its pages, portrait and landscape: across is along the short side of the paper, up along the long side."),
		line("Rulers: where one drifts from yours along its length, the paper slipped. Print again before you correct anything."),
		line("Square: corner to corner must be the same both ways. If it is not, the printer pulls the paper askew, which no number mends."),
		line("Circle: as wide as high once the bars are true."),
		line(`Edges: the lowest number you can still see beside its line is what the printer leaves white, in millimetres. If it is 5, give --margin "5 mm".`),
		line("Greys: all three must differ from white and from each other, and every line must show."),
	}
}

// ruler draws a ruler from a place to the right or up: millimetres on one side,
// and for a job in inches inches on the other.
func (t testPage) ruler(d *drawing.Drawing, at geometry.Point, length float64, up bool) {
	scale{at: at, up: up, side: 1, step: 1, ticks: []int{1, 5, 10}, number: 10, unit: "mm"}.draw(d, length)
	if t.sheet.plan.Job.Length == geometry.Inch {
		scale{at: at, up: up, side: -1, step: geometry.MillimetresPerInch / 16, ticks: []int{1, 4, 8, 16}, number: 1, unit: "in"}.draw(d, length)
	}
}

// scale is one side of a ruler.
type scale struct {
	at   geometry.Point
	up   bool
	side float64 // 1 for above or to the right of its line, -1 for the other
	step float64 // between two ticks
	// ticks says of how many steps each longer kind of tick is the first; those
	// of the last kind are numbered, and the number grows by number.
	ticks  []int
	number int
	unit   string // written behind the first number over 0
}

// place returns where a point along the ruler and beside it lies.
func (s scale) place(along, beside float64) geometry.Point {
	if s.up {
		return geometry.Point{X: s.at.X + s.side*beside, Y: s.at.Y + along}
	}
	return geometry.Point{X: s.at.X + along, Y: s.at.Y + s.side*beside}
}

func (s scale) draw(d *drawing.Drawing, length float64) {
	const size, shortest, longer, tick = 6, 1.2, 0.75, 1.55
	pen := drawing.Pen{Width: 0.15, Cap: drawing.FlatCap}
	n := int(length / s.step)
	line := func(fromAlong, fromBeside, toAlong, toBeside float64) {
		d.Add(drawing.Marks, drawing.Stroke{
			Points: []geometry.Point{s.place(fromAlong, fromBeside), s.place(toAlong, toBeside)}, Pen: pen,
		})
	}
	line(0, 0, float64(n)*s.step, 0)
	numbered := s.ticks[len(s.ticks)-1]
	for i := range n + 1 {
		tall := 0.0
		for k, every := range s.ticks {
			if i%every == 0 {
				tall = shortest + longer*float64(k)
			}
		}
		along := float64(i) * s.step
		line(along, 0, along, tall)
		if i%numbered != 0 {
			continue
		}
		// The number stands over the end of its tick.
		number := drawing.Text{Words: fmt.Sprint(i / numbered * s.number), Size: size}
		if i == numbered {
			number.Words += " " + s.unit
		}
		switch {
		case s.up && s.side > 0:
			number.At = s.place(along-tick/2, tall+0.4)
		case s.up:
			number.At, number.Align = s.place(along-tick/2, tall+0.4), drawing.Right
		case s.side > 0:
			number.At, number.Align = s.place(along, tall+0.4), drawing.Centre
		default:
			number.At, number.Align = s.place(along, tall+0.4+tick), drawing.Centre
		}
		d.Add(drawing.Notes, number)
	}
}

// square draws a square with its diagonals, and the circle that just fits it.
func (t testPage) square(d *drawing.Drawing, at geometry.Point, side float64) {
	pen, thin := drawing.Pen{Width: 0.2}, drawing.Pen{Width: 0.15, Ink: 90, Dash: []float64{2, 1.2}}
	corners := drawing.Rectangle(geometry.Box{Min: at, Max: geometry.Point{X: at.X + side, Y: at.Y + side}})
	d.Add(drawing.Marks,
		drawing.Stroke{Points: corners, Closed: true, Pen: pen},
		drawing.Stroke{Points: []geometry.Point{corners[0], corners[2]}, Pen: thin},
		drawing.Stroke{Points: []geometry.Point{corners[1], corners[3]}, Pen: thin},
		drawing.Stroke{Points: drawing.Circle(geometry.Point{X: at.X + side/2, Y: at.Y + side/2}, side/2), Closed: true, Pen: pen},
	)
	const least = 50 // of the room for words below
	words := []page.Note{
		{Words: fmt.Sprintf("Square: %.0f mm, corner to corner %.1f mm.", side, side*math.Sqrt2), Size: 8},
		{Words: fmt.Sprintf("Circle: %.0f mm across.", side), Size: 8},
	}
	box := geometry.Box{Min: geometry.Point{X: at.X, Y: at.Y - 12}, Max: geometry.Point{X: at.X + max(side, least), Y: at.Y - 0.5}}
	set, _, _ := t.Set(words, box)
	d.Add(drawing.Notes, set...)
}

// greys draws the inks and pens of a wrap, as far down as there is room.
func (t testPage) greys(d *drawing.Drawing, at geometry.Point, lowest float64) {
	const wide, line = 24.0, 6.0
	for _, sample := range []struct {
		words string
		draw  func(box geometry.Box) []drawing.Mark
	}{
		{"a groove's width", func(b geometry.Box) []drawing.Mark {
			return []drawing.Mark{drawing.Fill{Points: drawing.Rectangle(b), Ink: footprintInk, Edge: grooveEdge()}}
		}},
		{"too thin to cut", func(b geometry.Box) []drawing.Mark {
			var lines []drawing.Mark
			for _, l := range drawing.Hatch(drawing.Rectangle(b), math.Pi/4, 2.5) {
				lines = append(lines, drawing.Stroke{Points: l, Pen: hatchPen()})
			}
			return lines
		}},
		{"black", func(b geometry.Box) []drawing.Mark {
			return []drawing.Mark{drawing.Fill{Points: drawing.Rectangle(b)}}
		}},
		{"a line to trace", level(cutPen())},
		{"the paper's edge", level(edgePen())},
		{"where pieces meet", level(matchPen())},
		{"the band's end", level(bandPen())},
		{"a repeat's middle", level(centrePen())},
		{"between repeats", level(repeatPen())},
	} {
		if at.Y-line < lowest {
			return
		}
		at.Y -= line
		d.Add(drawing.Marks, sample.draw(geometry.Box{Min: at, Max: geometry.Point{X: at.X + wide, Y: at.Y + line - 2}})...)
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: at.X + wide + 3, Y: at.Y + 1}, Words: sample.words, Size: 8})
	}
}

// level draws a level line of a pen through the middle of a box.
func level(pen drawing.Pen) func(geometry.Box) []drawing.Mark {
	return func(b geometry.Box) []drawing.Mark {
		y := (b.Min.Y + b.Max.Y) / 2
		return []drawing.Mark{drawing.Stroke{Points: []geometry.Point{{X: b.Min.X, Y: y}, {X: b.Max.X, Y: y}}, Pen: pen}}
	}
}

// ladders draw short lines ever farther in from the middle of each edge of the
// sheet: the first that shows is what the printer leaves white.
func (t testPage) ladders(d *drawing.Drawing) {
	const rung, step, tick = 4.0, 6.5, 1.6
	pen := drawing.Pen{Width: 0.3, Cap: drawing.FlatCap}
	count := int(t.Margin) - 2
	// x runs along the edge, y in from it; numbers stand on the inner side.
	edge := func(place func(x, y float64) geometry.Point, turn, inwards float64) {
		for i := range count {
			y, x := float64(i+1), (float64(i)-float64(count)/2)*step
			d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{place(x, y), place(x+rung, y)}, Pen: pen})
			words := fmt.Sprint(i + 1)
			if i+1 == count {
				words += " mm"
			}
			d.Add(drawing.Notes, drawing.Text{At: place(x+rung+0.4, y+inwards), Words: words, Size: 6, Turn: turn})
		}
	}
	w, h := t.Width, t.Height
	edge(func(x, y float64) geometry.Point { return geometry.Point{X: w/2 + x, Y: y} }, 0, 0)
	edge(func(x, y float64) geometry.Point { return geometry.Point{X: w/2 + x, Y: h - y} }, 0, tick)
	edge(func(x, y float64) geometry.Point { return geometry.Point{X: y, Y: h/2 + x} }, math.Pi/2, tick)
	edge(func(x, y float64) geometry.Point { return geometry.Point{X: w - y, Y: h/2 + x} }, math.Pi/2, 0)
}
