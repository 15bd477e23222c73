package alphabet

import (
	"math"

	"roundlay/geometry"
)

const (
	// White is the white between two letters that the eye takes for even: its area over
	// the height of the capitals, so its mean width, in cap heights.
	White = 0.42
	// Depth is how far into a letter white is counted from the letter's outermost place:
	// the eye gives the inside of a C or an L to the letter, not to the gap.
	Depth = 0.26
	// Clearance is the least distance between the strokes of two letters.
	Clearance = 0.20
	// Space is the white of a space between words, beyond that between letters.
	Space = 0.30
)

// rows is in how many strips white is measured up a letter.
const rows = 256

// indent returns how far a letter stands back from an upright at its outermost place,
// on its right side or on its left, no deeper than Depth, in the mean over the height of
// the capitals. A straight side has none, a round one some, a diagonal more and an open
// one nearly all of Depth. Accents are not looked at.
func (g glyph) indent(right bool) float64 {
	var back [rows]float64
	for i := range back {
		back[i] = Depth
	}
	for _, s := range g.letter {
		last := s[0]
		for _, p := range places(s) {
			in := p.X
			if right {
				in = g.wide - p.X
			}
			low, high := row(min(p.Y, last.Y)), row(max(p.Y, last.Y))
			for i := low; i <= high; i++ {
				back[i] = min(back[i], in)
			}
			last = p
		}
	}
	sum := 0.0
	for _, b := range back {
		sum += max(b, 0)
	}
	return sum / rows
}

// row returns the strip a height lies in, the nearest for a height beyond the capitals.
func row(y float64) int { return min(max(int(math.Floor(y*rows)), 0), rows-1) }

// bearing returns how far a letter's outermost place keeps from the edge of its cell:
// half the white, less what its own shape gives, and nothing below zero.
func (g glyph) bearing(right bool) float64 { return max(White/2-g.indent(right), 0) }

// gap returns how far a letter's leftmost place stands behind the rightmost of the one
// before it, below 0 where it reaches under or over that.
func gap(a, b glyph) float64 {
	return max(White-a.indent(true)-b.indent(false), clear(a, b))
}

// kern returns how much nearer a pair stands than the bearings of the two would have
// it, as a number below 0, or farther apart where their strokes would come too near.
func kern(a, b glyph) float64 { return gap(a, b) - a.bearing(true) - b.bearing(false) }

// clear returns the least gap that keeps the strokes of two letters, and their accents,
// Clearance apart.
func clear(a, b glyph) float64 {
	least := math.Inf(-1)
	right := allPlaces(b)
	for _, p := range allPlaces(a) {
		for _, q := range right {
			up := q.Y - p.Y
			if math.Abs(up) < Clearance {
				least = max(least, p.X-a.wide-q.X+math.Sqrt(Clearance*Clearance-up*up))
			}
		}
	}
	return least
}

func allPlaces(g glyph) []geometry.Point {
	var all []geometry.Point
	for _, s := range g.strokes() {
		all = append(all, places(s)...)
	}
	return all
}
