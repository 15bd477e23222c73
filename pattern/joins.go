package pattern

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// joinCopies adds to every cut's joins the cuts of its motif's other copies that it meets
// end to end. With the joins that the motif names, that is all of them.
func (p *Plan) joinCopies() {
	boxes := p.endBoxes()
	meeting := make([]cutEnds, len(p.sized)) // of each motif, once one of its copies comes near another
	for turns := range p.farthest() + 1 {
		if turns == 0 && p.Period == 1 {
			continue // there is only one copy
		}
		moved := p.Surface.Turned(float64(turns*p.Period) * p.PitchAngle())
		for i := range p.Cuts {
			motif := p.Cuts[i].Motif
			for _, end := range p.Cuts[i].Ends() {
				at := moved.Apply(end)
				if !boxes[motif].Contains(at) {
					continue
				}
				if meeting[motif] == nil {
					meeting[motif] = p.endsOf(motif)
				}
				meeting[motif].near(at, func(first int) { p.joinPair(pair{first: first, second: i, turns: turns}) })
			}
		}
	}
}

// endBoxes returns the box round the ends of all cuts of each motif.
func (p *Plan) endBoxes() []geometry.Box {
	boxes := make([]geometry.Box, len(p.sized))
	for i := range boxes {
		boxes[i] = geometry.EmptyBox()
	}
	for i := range p.Cuts {
		box := &boxes[p.Cuts[i].Motif]
		for _, at := range p.Cuts[i].Ends() {
			*box = box.Add(at)
		}
	}
	for i := range boxes {
		boxes[i] = boxes[i].Grow(touching)
	}
	return boxes
}

func (p *Plan) endsOf(motif int) cutEnds {
	all := cutEnds{}
	for i := range p.Cuts {
		if p.Cuts[i].Motif == motif {
			for _, at := range p.Cuts[i].Ends() {
				all.add(cutEnd{i, at})
			}
		}
	}
	return all
}

// joinPair adds a join to both of its cuts. With few repeats two cuts may meet on both
// sides, and a cut may meet itself round the glass.
func (p *Plan) joinPair(q pair) {
	if q.turns == 0 && (q.second <= q.first || p.sameRepeat(q)) {
		return
	}
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	if id := p.id(second.ID, q.turns); id != first.ID {
		first.join(id)
		second.join(p.id(first.ID, -q.turns))
	}
}

// join adds a cut to those that c joins.
func (c *Cut) join(id int) {
	if !slices.Contains(c.Joins, id) {
		c.Joins = append(c.Joins, id)
	}
}

// joinAll adds the cuts of some numbers in c's copy of its motif, whose first has an id.
func (c *Cut) joinAll(first int, numbers []int) {
	for _, number := range numbers {
		c.join(first + number)
	}
}

// meet reports whether the lines of two grooves share an end.
func meet(a, b *groove.Groove) bool {
	for _, p := range a.Ends() {
		for _, q := range b.Ends() {
			if r2.Norm(r2.Sub(p, q)) < touching {
				return true
			}
		}
	}
	return false
}

// cutEnds holds the ends of cuts by the square of the chart they lie in, like meetings for
// lines.
type cutEnds map[[2]int][]cutEnd

// cutEnd is an end of the cut with an index in the plan.
type cutEnd struct {
	cut int
	at  geometry.Point
}

func (e cutEnds) add(one cutEnd) { e[square(one.at)] = append(e[square(one.at)], one) }

// near calls visit for each cut with an end that touches a place.
func (e cutEnds) near(at geometry.Point, visit func(cut int)) {
	from := square(geometry.Point{X: at.X - touching, Y: at.Y - touching})
	to := square(geometry.Point{X: at.X + touching, Y: at.Y + touching})
	for x := from[0]; x <= to[0]; x++ {
		for y := from[1]; y <= to[1]; y++ {
			for _, other := range e[[2]int{x, y}] {
				if r2.Norm(r2.Sub(other.at, at)) < touching {
					visit(other.cut)
				}
			}
		}
	}
}
