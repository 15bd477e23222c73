package picture

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/report"
)

// layout sets views of one glass side by side, with a head above them and notes below.
type layout struct {
	plan    *pattern.Plan
	file    string // what its job is called, where others stand beside it
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
	caption = 6.0   // room under a glass for how it is turned
	headAir = 3.0   // between the words above and the ground
	footAir = 1.5   // between the ground and the words below
	gutter  = 6.0   // between the grounds of two glasses
)

// column is what sets words: findings' letters are in the ink of their rings.
func (l layout) column() page.Column {
	return page.Column{Letters: l.letters, Leading: 1.3, Hang: 2, Ink: warning()}
}

// ground returns the box of what the views stand on, the first with its axis at
// x = 0.
func (l layout) ground() geometry.Box {
	box := geometry.EmptyBox()
	for i := range l.views {
		place := l.offset(i)
		box = box.Union(l.views[i].box.Moved(geometry.Motion{Cos: 1, X: place}))
	}
	box = box.Grow(air)
	if l.captioned() {
		box.Min.Y -= caption
	}
	if width, _ := box.Size(); width < narrow {
		box.Min.X -= (narrow - width) / 2
		box.Max.X += (narrow - width) / 2
	}
	return box
}

// offset returns how far to the right of the first a view stands.
func (l layout) offset(i int) float64 {
	width, _ := l.views[0].box.Size()
	return float64(i) * math.Ceil(width+apart)
}

// captioned reports whether the page says how each glass is turned.
func (l layout) captioned() bool { return len(l.views) > 1 || l.options.Turn != 0 }

// glasses draws the ground and the views on it.
func (l layout) glasses(d *drawing.Drawing, ground geometry.Box, to geometry.Point) {
	shift := geometry.Motion{Cos: 1, X: to.X, Y: to.Y}
	d.Add(drawing.Paper, drawing.Fill{Points: drawing.Rectangle(ground.Moved(shift)), Ink: backdrop(1)})
	for i, v := range l.views {
		place := shift
		place.X += l.offset(i)
		d.Append(v.drawing.Moved(place))
		if l.captioned() {
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
func (l layout) head() []page.Note {
	p := l.plan
	repeats, cuts := "repeats", p.Totals().Cuts
	if p.Repeats == 1 {
		repeats = "repeat"
	}
	name := p.Blank.Name
	if l.file != "" {
		name = l.file + ", " + name
	}
	return []page.Note{
		{Words: p.Job.Title, Size: 13, Bold: true},
		{Words: fmt.Sprintf("%s%s: %d %s, %d cuts", name, l.face(), p.Repeats, repeats, cuts), Size: 9},
	}
}

// foot says how large it is drawn, and what is found.
func (l layout) foot() []page.Note {
	p := l.plan
	notes := []page.Note{{Words: l.size(), Size: 8}}
	if !l.options.Findings {
		return notes
	}
	if p.Clear() {
		notes = append(notes, page.Note{Words: report.Verdict("Checked", p), Size: 8, Bold: true})
	}
	told, more := report.Listed(p)
	for _, g := range told {
		notes = append(notes, page.Note{Mark: g.Letter, Words: fmt.Sprintf("%s: %s", g.Kind, report.Measured(p, g.Worst())), Size: 8})
	}
	if more != "" {
		notes = append(notes, page.Note{Words: more, Size: 8})
	}
	return notes
}

// face names the face that is seen, where it isn't the side.
func (l layout) face() string {
	if l.options.Base {
		return ", its base from below"
	}
	return ""
}

// size says how large it is drawn.
func (l layout) size() string {
	p, u := l.plan, l.plan.Job.Length
	if l.options.Base {
		words := fmt.Sprintf("Drawn true to size: the base is %s across. Printed without scaling, all of it can be measured.", u.Format(2*p.Blank.BaseRadius()))
		if l.options.Turn == 0 {
			words += " The middle of repeat 1, of the base and of the side, is at the top; numbers run clockwise."
		}
		return words
	}
	widest := 0.0
	for _, z := range levels(0, p.Blank.Height()) {
		widest = max(widest, 2*p.Blank.Profile().Radius(z))
	}
	size := fmt.Sprintf("Drawn true to size: %s high, %s across at its widest. Printed without scaling, its heights and its widths can be measured.",
		u.Format(p.Blank.Height()), u.Format(widest))
	if p.Blank.Floor == 0 {
		size += " The floor was not measured: it is drawn as thick as the wall at the foot."
	}
	return size
}
