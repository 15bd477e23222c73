package picture

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
	"roundlay/render/report"
)

// sheet sets views side by side on a page, with a head above them and what they
// show below.
type sheet struct {
	plan    *pattern.Plan
	options Options
	views   []view
	letters *lettering.Letters
}

// Sizes on the page, in millimetres.
const (
	margin  = 7.0
	air     = 13.0  // round the glasses on their ground
	apart   = 17.0  // between two of them
	narrow  = 104.0 // the least width of their ground: a check bar's
	caption = 6.0   // room under a glass that tells how it is turned
)

// page returns the page, with check bars in its lower left corner if asked for.
func (s sheet) page(bars bool) printing.Page {
	ground := s.ground()
	width, up := ground.Size()
	head, foot := s.head(width), s.foot(width)
	// Words are set downwards from 0; the ground stands between head and foot.
	p := printing.Page{Width: math.Ceil(width + 2*margin), Height: math.Ceil(head.depth + up + foot.depth + 2*margin)}
	corner := geometry.Point{X: margin, Y: margin}
	if bars {
		const room = 2*page.BarDepth + 2
		corner = geometry.Point{X: margin + room, Y: margin + room}
		p.Width += room
		p.Height = max(p.Height+room, corner.Y+narrow+margin)
	}
	d := &p.Drawing
	d.Add(drawing.Paper, drawing.Fill{
		Points: drawing.Rectangle(geometry.Box{Max: geometry.Point{X: p.Width, Y: p.Height}}), Ink: drawing.White,
	})
	top := p.Height - margin
	head.set(d, corner.X, top)
	foot.set(d, corner.X, top-head.depth-up)
	to := geometry.Point{X: grained(corner.X - ground.Min.X), Y: grained(top - head.depth - ground.Max.Y)}
	s.glasses(d, ground, to)
	if bars {
		for _, b := range page.CheckBars(s.plan.Job.Length) {
			d.Add(drawing.CheckBars, b.Marks(geometry.Point{X: margin + page.BarDepth, Y: margin + page.BarDepth})...)
		}
	}
	return p
}

// ground returns the box of what the views stand on, the first with its axis at
// x = 0.
func (s sheet) ground() geometry.Box {
	box := geometry.EmptyBox()
	for i := range s.views {
		place := s.offset(i)
		box = box.Union(s.views[i].box.Moved(geometry.Motion{Cos: 1, X: place}))
	}
	box = box.Grow(air)
	if s.captioned() {
		box.Min.Y -= caption
	}
	if width, _ := box.Size(); width < narrow {
		box.Min.X -= (narrow - width) / 2
		box.Max.X += (narrow - width) / 2
	}
	return box
}

// offset returns how far to the right of the first a view stands.
func (s sheet) offset(i int) float64 {
	width, _ := s.views[0].box.Size()
	return float64(i) * math.Ceil(width+apart)
}

// captioned reports whether it has to be said how the glass is turned.
func (s sheet) captioned() bool { return len(s.views) > 1 || s.options.Turn != 0 }

// glasses draws the ground and the views on it.
func (s sheet) glasses(d *drawing.Drawing, ground geometry.Box, to geometry.Point) {
	shift := geometry.Motion{Cos: 1, X: to.X, Y: to.Y}
	d.Add(drawing.Paper, drawing.Fill{Points: drawing.Rectangle(ground.Moved(shift)), Ink: backdrop(1)})
	for i, v := range s.views {
		place := shift
		place.X += s.offset(i)
		d.Append(v.drawing.Moved(place))
		if s.captioned() {
			at := geometry.Point{X: place.X, Y: ground.Min.Y + to.Y + caption}
			d.Add(drawing.Notes, drawing.Text{At: at, Words: "turned " + degrees(v.turn), Size: 9, Align: drawing.Centre})
		}
	}
}

// degrees writes an angle within one turn, to a tenth of a degree.
func degrees(radians float64) string {
	tenths := math.Mod(math.Round(radians*1800/math.Pi), 3600)
	return fmt.Sprintf("%g°", math.Mod(tenths+3600, 3600)/10)
}

// head says what is drawn.
func (s sheet) head(width float64) block {
	p := s.plan
	b := block{letters: s.letters, width: width}
	b.add(note{words: p.Job.Title, size: 13, bold: true})
	repeats, cuts := "repeats", p.Totals().Cuts
	if p.Repeats == 1 {
		repeats = "repeat"
	}
	b.add(note{words: fmt.Sprintf("%s: %d %s, %d cuts", p.Blank.Name, p.Repeats, repeats, cuts), size: 9})
	b.depth += 3
	return b
}

// foot says how large it is drawn, and what is found.
func (s sheet) foot(width float64) block {
	p, u := s.plan, s.plan.Job.Length
	b := block{letters: s.letters, width: width, depth: 1.5}
	widest := 0.0
	for _, z := range levels(0, p.Blank.Height()) {
		widest = max(widest, 2*p.Blank.Profile().Radius(z))
	}
	size := fmt.Sprintf("Drawn true to size: %s high, %s across at its widest. Printed without scaling, its heights and its widths can be measured.",
		u.Text(p.Blank.Height()), u.Text(widest))
	if p.Blank.Floor == 0 {
		size += " The floor was not measured: it is drawn as thick as the wall at the foot."
	}
	b.add(note{words: size, size: 8})
	if !s.options.Findings {
		return b
	}
	if len(p.Findings) == 0 {
		b.add(note{words: "Checked: nothing is crowded, thin, shallow or out of place.", size: 8, bold: true})
	}
	told, more := report.Told(p)
	for _, g := range told {
		b.add(note{mark: g.Letter, words: fmt.Sprintf("%s: %s", g.Kind, report.Measured(p, g.Worst())), size: 8})
	}
	if more != "" {
		b.add(note{words: more, size: 8})
	}
	return b
}
