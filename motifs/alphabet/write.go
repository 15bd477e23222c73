package alphabet

import "roundlay/geometry"

// The bounds of every stroke, in cap heights.
const (
	MinRadius = 0.40 // the tightest a stroke turns
	MinLetter = 0.25 // the shortest stroke of a letter or a figure
	MinLength = 0.12 // the shortest of an accent or a sign
	AccentGap = 0.10 // the least between a letter and its accents above and below
	Ascent    = 1.32 // the highest place of an accent
	Descent   = 0.32 // the lowest, below the level the letters stand on
	Overshoot = 0.02 // how far a round letter may pass the level and the cap height
)

// The parts a stroke plays.
const (
	Letter = "letter"
	Accent = "accent"
)

// Stroke is one cut of the wheel: the part it plays, its centre line, and the strokes,
// by index, that it meets or crosses by design. A join is given on both of its strokes.
type Stroke struct {
	Part  string
	Path  geometry.Bezier
	Joins []int
}

// Line is a text in strokes, in cap heights: x from 0, where it begins, to Advance, and
// y from 0, the level the letters stand on, to 1, their height. Along says where one on an
// arc lies.
type Line struct {
	Strokes []Stroke
	Advance float64
	cells   []cell
}

// cell is where one letter stands in its line: its strokes, and its sides.
type cell struct {
	first, end int
	from, to   float64
}

// Write sets a text as a line along the level. An error says what was read and what is
// accepted.
func Write(text string) (Line, error) {
	letters, err := read(text)
	if err != nil {
		return Line{}, err
	}
	var l Line
	x := 0.0                    // the letter's leftmost place
	var last glyph              // the last letter that was no space
	spaces, begun := 0.0, false // white of the spaces since
	for _, s := range letters {
		if s.base == ' ' {
			spaces += Space
			continue
		}
		g := draw(s)
		switch {
		case !begun:
			x, _ = g.overhang()
		case spaces > 0:
			// Over a space no letter reaches under the other.
			x += last.wide + max(bearing(last.right)+spaces+bearing(g.left), clearing(last, g))
		default:
			x += last.wide + gap(last, g)
		}
		l.add(g, x)
		last, spaces, begun = g, 0, true
	}
	_, after := last.overhang()
	l.Advance = x + last.wide + after
	return l, nil
}

// overhang returns how far the edges of a line keep from a letter that begins or ends
// it: its bearings, or what its accents need.
func (g glyph) overhang() (left, right float64) {
	from, to := g.sides.extent()
	return max(bearing(g.left), -from), max(bearing(g.right), to-g.wide)
}

// add puts a letter into the line, its leftmost place at x.
func (l *Line) add(g glyph, x float64) {
	first := len(l.Strokes)
	for i, s := range moved(g.strokes(), x, 0) {
		part := Letter
		if i >= len(g.letter) {
			part = Accent
		}
		l.Strokes = append(l.Strokes, Stroke{Part: part, Path: s})
	}
	for i := first; i < len(l.Strokes); i++ {
		for j := first; j < i; j++ {
			if meet(l.Strokes[i].Path, l.Strokes[j].Path) {
				l.Strokes[i].Joins = append(l.Strokes[i].Joins, j)
				l.Strokes[j].Joins = append(l.Strokes[j].Joins, i)
			}
		}
	}
	l.cells = append(l.cells, cell{first, len(l.Strokes), x, x + g.wide})
}

// meet reports whether two strokes of a letter meet or cross. Strokes that don't are
// more than twice as far apart as is looked for here.
func meet(a, b geometry.Bezier) bool {
	const near = 0.02
	q := places(b, near)
	for _, p := range places(a, near) {
		for _, r := range q {
			if x, y := p.X-r.X, p.Y-r.Y; x*x+y*y < near*near {
				return true
			}
		}
	}
	return false
}

// Box returns a box round all strokes of the line.
func (l Line) Box() geometry.Box {
	box := geometry.EmptyBox()
	for _, s := range l.Strokes {
		for _, p := range places(s.Path, step) {
			box = box.Add(p)
		}
	}
	return box
}
