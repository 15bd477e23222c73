package alphabet

import (
	"math"
	"slices"

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
	Space = 0.40
)

// perHeight is how many rows a cap height has, rows how many there are from Descent below
// the level up to Ascent, and ground the row that stands on the level.
const (
	perHeight = 200
	rows      = int((Ascent + Descent) * perHeight)
	ground    = int(Descent * perHeight)
)

// row returns the row a height lies in, the nearest for one beyond the letters.
func row(y float64) int { return min(max(int(math.Floor((y+Descent)*perHeight)), 0), rows-1) }

// flanks are the sides of a letter: for each row, its leftmost and its rightmost place. In
// an empty row the left lies right of the right.
type flanks struct{ left, right [rows]float64 }

// newFlanks returns the sides of nothing.
func newFlanks() *flanks {
	var f flanks
	for i := range rows {
		f.left[i], f.right[i] = math.Inf(1), math.Inf(-1)
	}
	return &f
}

// with returns the sides of more strokes. Places on them are nearer to each other than a
// row is high, so no row is left out.
func (f flanks) with(strokes []geometry.Bezier) *flanks {
	for _, s := range strokes {
		for _, p := range places(s, step) {
			i := row(p.Y)
			f.left[i], f.right[i] = min(f.left[i], p.X), max(f.right[i], p.X)
		}
	}
	return &f
}

// extent returns the leftmost and the rightmost place of all.
func (f *flanks) extent() (from, to float64) {
	return slices.Min(f.left[:]), slices.Max(f.right[:])
}

// indents returns how far a letter stands back from an upright at its outermost place, on
// its left side and on its right, no deeper than Depth, in the mean over the height of
// the capitals. A straight side has none, a round one some, a diagonal more and an open
// one nearly all of Depth.
func (f *flanks) indents() (left, right float64) {
	from, to := f.extent()
	for i := ground; i < ground+perHeight; i++ {
		left += min(f.left[i]-from, Depth) / perHeight
		right += min(to-f.right[i], Depth) / perHeight
	}
	return left, right
}

// bearing returns how far a letter's outermost place keeps from the edge of its cell:
// half the white, less what its own shape gives, and nothing below zero.
func bearing(indent float64) float64 { return max(White/2-indent, 0) }

// gap returns how far a letter's leftmost place stands behind the rightmost of the one
// before it, below 0 where it reaches under or over that.
func gap(a, b glyph) float64 { return max(White-a.right-b.left, clearing(a, b)) }

// clearing returns the least gap that keeps the strokes of two letters, and their accents,
// Clearance apart. Places in two rows are taken to be as near in height as they can be, so
// the distance is never less, and at most two rows more.
func clearing(a, b glyph) float64 {
	var aside [int(Clearance*perHeight) + 1]float64 // by how many rows one lies above the other
	for n := range aside {
		up := max(float64(n)-1, 0) / perHeight
		aside[n] = math.Sqrt(Clearance*Clearance - up*up)
	}
	least := math.Inf(-1)
	for i, x := range a.sides.right {
		if math.IsInf(x, -1) {
			continue // an empty row
		}
		nearest := math.Inf(1)
		for j := max(i-len(aside)+1, 0); j < min(i+len(aside), rows); j++ {
			nearest = min(nearest, b.sides.left[j]-aside[max(i-j, j-i)])
		}
		least = max(least, x-a.wide-nearest)
	}
	return least
}
