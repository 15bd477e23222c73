package render

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
)

// mostPieces bounds the search for a way to cut a wrap into pages: by far
// enough for the smallest paper and the largest glass.
const mostPieces, mostRows = 60, 8

// split cuts a sheet into the fewest pieces that each go on a page: as it
// stands or lying on its side, between repeats if that will do, else anywhere,
// and one above another only where the paper is too short.
func (s sheet) split(f format) ([]piece, format, bool) {
	for rows := 1; rows <= mostRows; rows++ {
		for columns := 1; columns <= mostPieces; columns++ {
			for _, turned := range []format{f.lying(), f.standing()} {
				if pieces := s.pieces(rows, columns); s.fit(pieces, turned) {
					return pieces, turned, true
				}
			}
		}
	}
	return nil, f, false
}

// pieces cuts a sheet into columns and rows. As long as there are no more
// columns than repeats, each column is a number of whole repeats.
func (s sheet) pieces(rows, columns int) []piece {
	n := s.plan.Repeats
	whole := s.whole()
	edge := func(column int) float64 {
		share := float64(column) / float64(columns)
		if columns <= n {
			share = math.Ceil(float64(n)*share) / float64(n)
		}
		return whole.from + share*(whole.to-whole.from)
	}
	level := func(row int) float64 { return whole.low + (whole.high-whole.low)*float64(row)/float64(rows) }
	var pieces []piece
	for row := range rows {
		for column := range columns {
			pieces = append(pieces, piece{
				column: column + 1, from: edge(column), to: edge(column + 1), low: level(row), high: level(row + 1),
				first: column == 0, last: column == columns-1, lowest: row == 0, highest: row == rows-1,
			})
		}
	}
	return pieces
}

// fit reports whether every piece goes on a page.
func (s sheet) fit(pieces []piece, f format) bool {
	for _, p := range pieces {
		if _, ok := f.place(s.box(p)); !ok {
			return false
		}
	}
	return true
}

// box returns the box of a piece as it is drawn, its middle line upright.
func (s sheet) box(p piece) geometry.Box {
	turn := s.paper.Turned(-(p.from + p.to) / 2)
	left, right := overlap, overlap
	if p.first {
		left = 0
	}
	if p.last {
		right = tabWidth
	}
	box := geometry.EmptyBox()
	for _, z := range []float64{p.low, p.high} {
		radius := s.paper.RadiusAt(z)
		for _, q := range s.arc(p.from-left/radius, p.to+right/radius, z) {
			box = box.Add(turn.Apply(q))
		}
	}
	if !p.lowest {
		box.Min.Y -= overlap
	}
	if !p.highest {
		box.Max.Y += overlap
	}
	return box
}

// findSeam returns the angle of the paper's left edge: between the last repeat
// and the first, or as near to that as no cut is severed there. The pieces of a
// wrap are cut at the same place in their repeats.
func findSeam(p *pattern.Plan) float64 {
	const tries = 120 // in a pitch
	edge := -p.Pitch() / 2
	cuts := append(p.Turned(p.Turns()-1), p.Turned(0)...)
	cuts = append(cuts, p.Turned(1)...)
	best, least := edge, math.Inf(1)
	for i := range tries {
		// Alternately right and left of the repeats' edge, ever farther off.
		step := float64((i+1)/2) * float64(1-2*(i%2))
		seam := edge + step*p.Pitch()/tries
		if n := severed(p, cuts, seam); n < least {
			best, least = seam, n
		}
	}
	return best
}

// severed returns how many of the cuts' footprints a line up the slant would
// sever, or come near, in any repeat.
func severed(p *pattern.Plan, cuts []pattern.Cut, theta float64) (n float64) {
	const clear = 0.3 // mm
	for _, c := range cuts {
		low, high := math.Inf(1), math.Inf(-1)
		for _, s := range c.Samples {
			aside := (math.Max(s.Left, s.Right) + clear) / p.Surface.RadiusAt(s.Height)
			low, high = min(low, s.Theta-aside), max(high, s.Theta+aside)
		}
		for k := math.Ceil((low - theta) / p.Pitch()); theta+k*p.Pitch() <= high; k++ {
			n++
		}
	}
	return n
}
