package alphabet

import (
	"math"

	"roundlay/geometry"
)

// glyph is one letter as it is drawn: its strokes and those of its accents, moved so
// that the letter itself, accents apart, begins at x = 0 and is wide. A space is a
// glyph without strokes.
type glyph struct {
	letter, accents []geometry.Bezier
	wide            float64
}

// draw returns a letter with its accents.
func draw(s spelled) glyph {
	letter, through := barred(s.base)
	if letter == nil {
		letter, through = letterStrokes(s.base), middleDot(s.base)
	}
	from, to := extent(letter)
	g := glyph{wide: to - from, letter: moved(letter, -from, 0), accents: moved(through, -from, 0)}
	if s.below == '\u0327' && comma(s.base) {
		s.below = '\u0326'
	}
	if s.base == 'L' && s.above == '\u030c' {
		g.accents = append(g.accents, line(0.3, 1, 0.24, 0.78)) // beside the stem, where there is room
	} else {
		g.accents = append(g.accents, moved(above(s.above), over(s.base)*g.wide, 0)...)
	}
	g.accents = append(g.accents, moved(below(s.below), under(s.base, s.below)*g.wide, 0)...)
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

// extent returns the leftmost and the rightmost place of some strokes.
func extent(strokes []geometry.Bezier) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, s := range strokes {
		for _, p := range places(s) {
			from, to = min(from, p.X), max(to, p.X)
		}
	}
	return from, to
}

// step is how far apart places are taken on a stroke, in cap heights, at most.
const step = 0.01

// places returns places along a stroke, both ends included. Handles are never more than
// a stroke's whole length, so a stroke is at most as long as all three together.
func places(s geometry.Bezier) []geometry.Point {
	length := 0.0
	for i := 1; i < len(s); i++ {
		length += math.Hypot(s[i].X-s[i-1].X, s[i].Y-s[i-1].Y)
	}
	n := 2 * int(math.Ceil(length/step))
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.At(float64(i) / float64(n))
	}
	return points
}
