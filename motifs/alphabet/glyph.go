package alphabet

import (
	"math"

	"roundlay/geometry"
)

// glyph is one letter as it is drawn: its strokes and those of its accents, moved so
// that the letter itself, accents apart, begins at x = 0 and is wide.
type glyph struct {
	letter, accents []geometry.Bezier
	wide            float64
	left, right     float64 // the indents of the letter's sides; accents are not looked at
	sides           *flanks // of letter and accents
}

// draw returns a letter with its accents.
func draw(s spelled) glyph {
	letter, through := barred(s.base)
	if letter == nil {
		letter, through = letterStrokes(s.base), middleDot(s.base)
	}
	from, _ := newFlanks().with(letter).extent()
	g := glyph{letter: moved(letter, -from, 0), accents: moved(through, -from, 0)}
	sides := newFlanks().with(g.letter)
	_, g.wide = sides.extent()
	g.left, g.right = sides.indents()
	if s.below == '\u0327' && comma(s.base) {
		s.below = '\u0326'
	}
	if s.base == 'L' && s.above == '\u030c' {
		g.accents = append(g.accents, line(0.3, 1, 0.24, 0.78)) // beside the stem, where there is room
	} else {
		g.accents = append(g.accents, moved(above(s.above), over(s.base)*g.wide, 0)...)
	}
	g.accents = append(g.accents, moved(below(s.below), under(s.base, s.below)*g.wide, 0)...)
	g.sides = sides.with(g.accents)
	return g
}

// letterStrokes returns the strokes of a capital, figure or sign without its accents,
// nil for anything else.
func letterStrokes(r rune) []geometry.Bezier {
	if r == 'Ŀ' {
		return capital('L')
	}
	for _, of := range []func(rune) []geometry.Bezier{capital, figure, sign, ligature} {
		if strokes := of(r); strokes != nil {
			return strokes
		}
	}
	letter, _ := barred(r)
	return letter
}

// middleDot returns the dot of the Catalan L, nil for any other letter.
func middleDot(r rune) []geometry.Bezier {
	if r != 'Ŀ' {
		return nil
	}
	return []geometry.Bezier{line(0.28, 0.6, 0.28, 0.46)}
}

// strokes returns the strokes of letter and accents, the letter's first.
func (g glyph) strokes() []geometry.Bezier {
	return append(append([]geometry.Bezier(nil), g.letter...), g.accents...)
}

// step is how far apart places are taken on a stroke, in cap heights, at most.
const step = 0.004

// places returns places along a stroke, both ends included, at most a distance apart.
func places(s geometry.Bezier, apart float64) []geometry.Point {
	// A place moves no faster than three times the longest side of the control points.
	longest := 0.0
	for i := 1; i < len(s); i++ {
		longest = max(longest, math.Hypot(s[i].X-s[i-1].X, s[i].Y-s[i-1].Y))
	}
	n := int(math.Ceil(3 * longest / apart))
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.At(float64(i) / float64(n))
	}
	return points
}
