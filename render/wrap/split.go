package wrap

import (
	"math"

	"roundlay/pattern"
	"roundlay/render/page"
)

// maxPieces and maxRows bound the search for a way to cut a paper into pages. They
// are far more than the smallest sheet and the largest glass need.
const maxPieces, maxRows = 120, 12

// split cuts a paper into the fewest pieces that each go on a page, as it stands
// or lying on its side: between parts if that will do, else anywhere, and one
// above another only where that takes no more pages.
func (s *facePaper) split(paper piece, pages ...page.Format) ([]piece, page.Format, bool) {
	for n := 1; n <= maxPieces; n++ {
		for rows := 1; rows <= min(n, maxRows); rows++ {
			if n%rows != 0 {
				continue
			}
			for _, whole := range []bool{true, false} {
				pieces, ok := s.pieces(paper, rows, n/rows, whole)
				for _, f := range pages {
					if ok && s.fit(pieces, f) {
						return pieces, f, true
					}
				}
			}
		}
	}
	return nil, page.Format{}, false
}

// pieces cuts a paper into rows and columns, numbered in reading order. With whole,
// and always for gores, a column is a number of whole parts; ok is false where there
// are too few parts.
func (s *facePaper) pieces(paper piece, rows, columns int, whole bool) (pieces []piece, ok bool) {
	parts := int(math.Round((paper.to - paper.from) / s.part()))
	if (whole || s.curved) && columns > parts {
		return nil, false
	}
	edge := func(column int) float64 {
		share := float64(column) / float64(columns)
		if whole || s.curved {
			share = math.Ceil(float64(parts)*share) / float64(parts)
		}
		return paper.from + share*(paper.to-paper.from)
	}
	level := func(row int) float64 { return paper.low + (paper.high-paper.low)*float64(row)/float64(rows) }
	for row := rows - 1; row >= 0; row-- {
		for column := range columns {
			pieces = append(pieces, piece{
				paper: paper.paper, number: len(pieces) + 1, rows: rows, columns: columns,
				from: edge(column), to: edge(column + 1), low: level(row), high: level(row + 1),
				first: column == 0, last: column == columns-1, lowest: row == 0, highest: row == rows-1,
			})
		}
	}
	return pieces, true
}

// fit reports whether every piece goes on a page.
func (s *facePaper) fit(pieces []piece, f page.Format) bool {
	for _, p := range pieces {
		if _, ok := f.Place(s.box(p)); !ok {
			return false
		}
	}
	return true
}

// findSeam returns the angle of the paper's left edge: the left edge of a repeat, or
// the nearest place to it where fewest cuts are severed. Pieces are cut and gores
// end at the same place in their repeats, or at equal steps from it.
func findSeam(p *pattern.Plan, repeat, steps int) float64 {
	const gap = 0.3 // mm
	step := p.PitchAngle() / float64(steps)
	all := extentsOf(p, gap)
	best, _ := minSevered(p, repeat, step, func(seam float64) (n float64) {
		for k := range steps {
			n += all.severed(seam + float64(k)*step)
			if steps > 1 && nearMiddle(p, seam+float64(k)*step) {
				n += float64(len(p.Cuts)) // a tick on a gore's edge is hard to stand on its mark
			}
		}
		return n
	})
	return best
}

// findPatchEdge returns the angle of the first patch's left edge. A patch is one
// repeat, its middle in the middle, unless that would part most of what another
// place would leave whole, as where a motif lies across the repeat's edge.
func findPatchEdge(p *pattern.Plan, repeat int) float64 {
	const stub, gap = -1.0, 0.3 // mm: what only just runs over the edge is not parted by it
	own := repeatEdge(p, repeat)
	best, least := minSevered(p, repeat, p.PitchAngle(), extentsOf(p, gap).severed)
	if 2*least < extentsOf(p, stub).severed(own) {
		return best
	}
	return own
}

func repeatEdge(p *pattern.Plan, repeat int) float64 {
	return (float64(repeat-1) - 0.5) * p.PitchAngle()
}

// minSevered returns the place within a step of a repeat's left edge where fewest
// cuts are severed, the nearest one of several, and how many are severed there.
func minSevered(p *pattern.Plan, repeat int, step float64, count func(theta float64) float64) (best, least float64) {
	const tries = 120
	edge := repeatEdge(p, repeat)
	best, least = edge, math.Inf(1)
	for i := 0; i < tries && least > 0; i++ {
		// Alternately right and left of the repeat's edge, farther away each time.
		theta := edge + float64((i+1)/2)*float64(1-2*(i%2))*step/tries
		if n := count(theta); n < least {
			best, least = theta, n
		}
	}
	return best, least
}

// extents are the angles from and to which footprints reach, of one repeat's cuts, and
// the angle from repeat to repeat.
type extents struct {
	pitch float64
	each  [][2]float64
}

// extentsOf returns the extents of footprints with a gap on either side. A negative gap
// takes that off, or a quarter of their extent where that is less.
func extentsOf(p *pattern.Plan, gap float64) extents {
	all := extents{p.PitchAngle(), make([][2]float64, 0, len(p.Cuts))}
	for _, c := range p.Cuts {
		low, high := math.Inf(1), math.Inf(-1)
		for _, s := range c.Samples {
			aside := (math.Max(s.Left, s.Right) + max(gap, 0)) / p.Surface.RadiusAt(s.Height)
			low, high = min(low, s.Theta-aside), max(high, s.Theta+aside)
		}
		if gap < 0 {
			inside := min(-gap/p.Surface.RadiusAt(c.Samples[0].Height), (high-low)/4)
			low, high = low+inside, high-inside
		}
		all.each = append(all.each, [2]float64{low, high})
	}
	return all
}

// severed returns how many footprints, in all repeats, a line up the slant would enter.
func (x extents) severed(theta float64) (n float64) {
	for _, e := range x.each {
		for k := math.Ceil((e[0] - theta) / x.pitch); theta+k*x.pitch <= e[1]; k++ {
			n++
		}
	}
	return n
}

// nearMiddle reports whether a line up the slant comes near a repeat's middle.
func nearMiddle(p *pattern.Plan, theta float64) bool {
	const gap = 4 // mm, at the foot
	off := math.Abs(math.Remainder(theta, p.PitchAngle()))
	return off*p.Blank.Profile().Radius(0) < gap
}
