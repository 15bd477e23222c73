package pattern

import (
	"math"

	"roundlay/pattern/groove"
)

// MinLand returns the smallest land between two cuts that don't join, or the limit if none
// is below it. It leaves out pairs for which the job asks for no land.
func (p *Plan) MinLand(limit float64) float64 {
	c := crowding{plan: p, turned: map[[2]int]*groove.Groove{}}
	p.neighbours(limit, func(q pair) bool {
		first := p.Cuts[q.first]
		if p.landOf(first.side(), p.Cuts[q.second].side()) == 0 {
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

// Nearest returns the smallest land between two cuts that don't join. ok is false where
// none is below the limit, or where the job asks for no land at all.
func (p *Plan) Nearest(limit float64) (land float64, ok bool) {
	// Look at near cuts first: in a dense design many pairs are within the limit, and the
	// least land is far below it.
	for _, within := range []float64{min(2*p.Job.Limits.Land, limit), limit} {
		if land = p.MinLand(within); land < within {
			return land, true
		}
	}
	return land, false
}

// MinLeft returns the least glass left under any cut, +Inf if all are off the glass.
func (p *Plan) MinLeft() float64 {
	least := math.Inf(1)
	for _, c := range p.Cuts {
		least = min(least, c.Left)
		if c.Bridges() {
			least = min(least, c.Bridge.Left)
		}
	}
	return least
}
