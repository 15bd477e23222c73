package pattern

import (
	"math"

	"github.com/tidwall/rtree"

	"roundlay/geometry"
)

// pair is two cuts near one another. The second stands turns periods further round the
// glass than in the plan's list; moved is the motion on the chart that takes it there.
type pair struct {
	first, second int // indices of the plan's cuts
	turns         int
	moved         geometry.Motion
}

// sameRepeat reports whether both cuts of a pair are in the same repeat. Two cuts of one
// motif are then of the same copy.
func (p *Plan) sameRepeat(q pair) bool {
	return q.turns == 0 && p.Cuts[q.first].Repeat == p.Cuts[q.second].Repeat
}

// neighbours calls visit for every two cuts whose footprints' boxes come within a distance
// of one another, until it returns false. A pair that recurs in every period is visited
// once. By symmetry one cut of a pair can always be taken from the first period, and the
// other from the same or a later one.
func (p *Plan) neighbours(within float64, visit func(pair) bool) {
	within *= p.Surface.Stretch(0, p.Surface.Length()) // as the boxes lie on the chart
	var tree rtree.RTreeGN[float32, int32]
	boxes := make([]geometry.Box, len(p.Cuts))
	all := geometry.EmptyBox()
	for i := range p.Cuts {
		boxes[i] = p.Cuts[i].Box()
		all = all.Union(boxes[i])
	}
	going := true
	near := func(box geometry.Box, turns int, second int, moved geometry.Motion) {
		box = box.Grow(within)
		low, high := outwards(box)
		tree.Search(low, high, func(_, _ [2]float32, i int32) bool {
			first := int(i)
			if box.Distance2(boxes[first]) > 0 { // apart by less than the rounding
				return going
			}
			if first > second && 2*turns == p.Periods() && p.Surface.Level() {
				return going // the same pair, seen from the other side
			}
			going = going && visit(pair{first, second, turns, moved})
			return going
		})
	}
	// Each box is searched for among those before it, so a pair is visited once.
	for i, box := range boxes {
		near(box, 0, i, geometry.Motion{Cos: 1})
		low, high := outwards(box)
		tree.Insert(low, high, int32(i))
	}
	for turns, met := 1, true; going && met && turns <= p.farthest(); turns++ {
		met = p.Surface.Level() // round the middle of a disc boxes may come near again
		moved := p.Surface.Turned(float64(turns*p.Period) * p.PitchAngle())
		for i, box := range boxes {
			if box = box.Moved(moved); box.Distance2(all) <= within*within {
				met = true
				near(box, turns, i, moved)
			}
		}
	}
}

// farthest returns how many periods further round the chart a cut may still meet another. Two
// motifs stand up to a full turn apart, and each may reach a pitch towards the other, even past
// that. The chart of a base closes on itself: there half the periods are all.
func (p *Plan) farthest() int {
	if p.Surface.Level() {
		return p.Periods() / 2
	}
	const reach = 3
	return p.Periods() + reach
}

// outwards returns the corners of a box in half the memory, rounded outwards.
func outwards(box geometry.Box) (low, high [2]float32) {
	inf := float32(math.Inf(1))
	return [2]float32{math.Nextafter32(float32(box.Min.X), -inf), math.Nextafter32(float32(box.Min.Y), -inf)},
		[2]float32{math.Nextafter32(float32(box.Max.X), inf), math.Nextafter32(float32(box.Max.Y), inf)}
}
