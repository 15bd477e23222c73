package groove_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// square returns the walker at the place of a sample who has its edges straight to the left and to
// the right, as near as they are to one straight way. Seen from there a straight way to an edge
// and the chord to it part, as the glass twists.
func (s *handed) square(place r3.Vec, at groove.Sample) walker {
	left, right := s.chart.space(at.LeftEdge), s.chart.space(at.RightEdge)
	begin := s.vessel.looking(place, r3.Cross(r3.Sub(left, right), s.vessel.normal(place)))
	side := s.vessel.left(begin)
	turned := func(by float64) walker {
		return s.vessel.looking(place, r3.Add(begin.ahead, r3.Scale(math.Tan(by), side)))
	}
	miss := func(by float64) float64 {
		w := turned(by)
		off := func(hand, far float64, edge r3.Vec) float64 {
			if far <= 0 {
				return 0
			}
			return r3.Norm2(r3.Sub(edge, s.vessel.trail(w, hand, far+1).at(far)))
		}
		return off(1, at.Left, left) + off(-1, at.Right, right)
	}
	const golden = 0.6180339887498949
	from, to := -degrees(3), degrees(3)
	for range 20 {
		a, b := to-golden*(to-from), from+golden*(to-from)
		if miss(a) > miss(b) {
			from = a
		} else {
			to = b
		}
	}
	return turned((from + to) / 2)
}
