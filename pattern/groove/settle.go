package groove

import "math"

// edgeSpot is a place of a wheel's edge: where along the stroke the wheel stands,
// in which column the place is, and how far ahead in it. Deep says what it is sought
// for: to be the deepest, or to leave least; worth is the more the better.
type edgeSpot struct {
	column
	stands, ahead float64
	deep          bool
	worth         float64
}

// newEdgeSpots returns what is sought in each column before anything is found: where
// least is left, and the deepest bite.
func newEdgeSpots(columns []column) []edgeSpot {
	spots := make([]edgeSpot, 0, 2*len(columns))
	for _, c := range columns {
		thin := edgeSpot{column: c, worth: math.Inf(-1)}
		deep := thin
		deep.deep = true
		spots = append(spots, thin, deep)
	}
	return spots
}

// offer takes a place of the wheel's edge for the spot if it is worth more.
func (at *edgeSpot) offer(p *pose, ahead, worth float64) {
	if worth > at.worth {
		at.worth, at.stands, at.ahead = worth, p.stands, ahead
	}
}

// lookBetween looks between the places that were looked at, along the stroke as well,
// for where less is left and for where the wheel bites deeper: about the best of each
// column that comes near the best of all.
func (k *stroke) lookBetween() {
	const near = 1.0 // mm: what looking closer may change
	best := [2]float64{math.Inf(-1), math.Inf(-1)}
	for i := range k.spots {
		best[i%2] = max(best[i%2], k.spots[i].worth)
	}
	for i := range k.spots {
		at := &k.spots[i]
		if at.worth == best[i%2] || at.worth > best[i%2]-near {
			k.settle(*at)
		}
	}
}

// settle moves a spot, by less and less, along the stroke, along its column and to
// its sides to where it is worth most, and notes what the wheel does there.
func (k *stroke) settle(at edgeSpot) {
	if math.IsInf(at.worth, 0) { // nothing was found
		return
	}
	for step := span; step > 0.01; {
		moved := false
		for _, by := range [...][3]float64{
			// A place that stays behind where the wheel goes on hardly moves on the glass.
			{5, -5, 0}, {-5, 5, 0}, {1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1},
		} {
			if next := k.moved(at, by[0]*step, by[1]*step, by[2]*step); next.worth > at.worth+1e-6 {
				at, moved = next, true
				break
			}
		}
		if !moved {
			step /= 2
		}
	}
	p := k.at(at.stands)
	radius, height := p.rim(&at.blade, at.ahead, at.left)
	k.bitten(&p, &at.column, at.ahead, radius, height)
}

// moved returns a spot moved along the stroke, ahead on its wheel, and to the left,
// and what it is worth there: nothing where it is not in the glass.
func (k *stroke) moved(at edgeSpot, along, ahead, left float64) edgeSpot {
	at.stands = min(max(at.stands+along, k.first), k.last)
	at.ahead += ahead
	if face := 0.999 * at.blade.face; k.wheel.blades() == 1 { // a gang is sought on its mitres' lines
		at.left = min(max(at.left+left, -face), face)
	}
	p := k.at(at.stands)
	radius, height := p.rim(&at.blade, at.ahead, at.left)
	switch {
	case !k.holds(radius, height):
		at.worth = math.Inf(-1)
	case at.deep:
		at.worth = k.depthUnder(radius, height)
	default:
		at.worth = -k.inside.Distance(radius, height)
	}
	return at
}
