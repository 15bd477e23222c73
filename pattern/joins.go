package pattern

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// joinCopies notes on every cut which cuts of its motif's other copies it meets end
// to end. With those that its motif names, they are all of its joins.
func (p *Plan) joinCopies() {
	ends := make([]cutEnds, len(p.sized))
	for i := range p.Cuts {
		m := p.Cuts[i].Motif
		if ends[m] == nil {
			ends[m] = cutEnds{}
		}
		for _, at := range p.Cuts[i].Ends {
			ends[m].add(i, at)
		}
	}
	// On the chart, a motif reaches towards its next copies by up to a pitch each way,
	// also beyond a full turn.
	const reach = 3
	for turns := range p.Turns() + reach + 1 {
		moved := p.Surface.Turned(float64(turns*p.Period) * p.Pitch())
		for second := range p.Cuts {
			c := &p.Cuts[second]
			for _, at := range c.Ends {
				ends[c.Motif].near(moved.Apply(at), func(first int) { p.joinPair(pair{first: first, second: second, turns: turns}) })
			}
		}
	}
}

// joinPair notes a join on both of its cuts. With so few repeats that the glass
// closes on itself, two cuts may meet on both sides, and one with itself.
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

// join notes that a cut joins another.
func (c *Cut) join(id int) {
	if !slices.Contains(c.Joins, id) {
		c.Joins = append(c.Joins, id)
	}
}

// meet reports whether the lines of two grooves share an end.
func meet(a, b groove.Groove) bool {
	for _, p := range a.Ends {
		for _, q := range b.Ends {
			if r2.Norm(r2.Sub(p, q)) < touching {
				return true
			}
		}
	}
	return false
}

// cutEnds holds the ends of cuts by the square of the chart they lie in, as
// meetings does those of lines.
type cutEnds map[[2]int][]cutEnd

// cutEnd is an end of a cut, which is named by its index in the plan.
type cutEnd struct {
	cut int
	at  geometry.Point
}

func (e cutEnds) add(cut int, at geometry.Point) {
	e[square(at)] = append(e[square(at)], cutEnd{cut, at})
}

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
