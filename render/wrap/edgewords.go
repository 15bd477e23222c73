package wrap

import (
	"iter"
	"math"

	"roundlay/pattern"
)

// edgeWords says at an edge of the paper that is not at the end of its face how
// high it is to be.
func (l *labels) edgeWords() {
	u, face := l.plan.Job.Length, l.face
	if l.piece.lowest && face.Lower.Why != pattern.WholeGlass {
		above, from := u.Format(l.low), "table"
		if l.side == Inside {
			above, from = u.Format(l.low-face.Lower.Own), "inside floor"
		}
		l.edgeWord(l.low, aboveLine, "lower edge ", above+" above the "+from)
	}
	if l.piece.highest && face.Upper.Why != pattern.WholeGlass && l.high == face.High {
		l.edgeWord(l.high, -belowLine, "upper edge ", u.Format(face.Upper.Own-l.high)+" below the rim")
	}
}

// edgeWord writes along an edge where it is, or else as near to it as there is
// room. Words that stand further off name the edge, as another one may be near.
func (l *labels) edgeWord(z, aside float64, edge, where string) {
	along := func(yield func(spot) bool) {
		for _, off := range []float64{aside, 2.4 * aside, 4 * aside} {
			for i := range l.panes {
				for s := range l.row(&l.panes[i], z+off) {
					if !yield(s) {
						return
					}
				}
			}
		}
	}
	if l.put(along, sizes([]float64{8, 7, 6}, "this edge stands "+where)...) || l.put(along, sizes([]float64{6, 5}, where)...) {
		return
	}
	half := (l.piece.high - l.piece.low) / 2
	for _, reach := range []float64{0.2 * half, 0.4 * half, 0.8 * half} {
		if l.put(l.level(z, reach), l.narrowing(edge+where)...) || l.put(l.near(z, reach), l.narrowing(edge+where)...) {
			return
		}
	}
	l.put(l.anywhere(), l.narrowing(edge+where)...)
}

// narrowing returns words in one line, and in more and more.
func (l *labels) narrowing(words string) []wording {
	var all []wording
	for _, points := range [][]float64{{6, 5}, {4}} {
		for _, width := range []float64{60, 18, 12, 9} {
			for _, size := range points {
				all = append(all, wording{lines: l.letters.Lines(words, size, false, width), size: size})
			}
		}
	}
	return all
}

// near returns places on a piece no further from a height than some way up or
// down, the nearest first: for words level, and then for words that run upwards.
func (l *labels) near(height, reach float64) iter.Seq[spot] {
	return func(yield func(spot) bool) {
		for s := range l.level(height, reach) {
			if !yield(s) {
				return
			}
		}
		for s := range l.level(height, reach) {
			s.turn += math.Pi / 2
			if !yield(s) {
				return
			}
		}
	}
}

// level returns those of the places near a height that are for words level.
func (l *labels) level(height, reach float64) iter.Seq[spot] {
	const step = 0.8
	return func(yield func(spot) bool) {
		for off := aboveLine; off <= reach; off += step {
			for _, z := range []float64{height + off, height - off} {
				if z <= l.piece.low || z >= l.piece.high {
					continue
				}
				for i := range l.panes {
					for s := range l.closeRow(&l.panes[i], z) {
						if !yield(s) {
							return
						}
					}
				}
			}
		}
	}
}

// closeRow returns places along a strip at a height that lie closer together than
// those of a row, for paper so narrow that a row misses what room there is.
func (l *labels) closeRow(on *pane, z float64) iter.Seq[spot] {
	const step, least = 1.0, 0.8
	return func(yield func(spot) bool) {
		r := on.on.RadiusAt(z)
		for along := least; along < (on.to-on.from)*r-least; along += step {
			theta := on.from + along/r
			if !yield(spot{at: on.at(theta, z), turn: on.tilt(theta, z), on: on}) {
				return
			}
		}
	}
}
