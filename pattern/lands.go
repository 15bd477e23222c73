package pattern

import "roundlay/pattern/groove"

// LeastLand returns the smallest land between two cuts that don't join, if it is
// below a limit; otherwise the limit. Where the job asks for no land, none is
// looked for.
func (p *Plan) LeastLand(limit float64) float64 {
	c := crowding{plan: p, turned: map[[2]int]groove.Groove{}}
	p.neighbours(limit, func(q pair) bool {
		first := p.Cuts[q.first]
		if p.land(first.Motif, p.Cuts[q.second].Motif) == 0 {
			return true
		}
		other := c.standing(q)
		if near, _, _ := distance(first.Groove, other, limit); near < limit && !c.joined(q, other) {
			limit = near
		}
		return limit > 0
	})
	return limit
}
