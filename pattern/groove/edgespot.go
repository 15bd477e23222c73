package groove

import "math"

// edgeSpot is a place on a wheel's edge: the wheel's place along the stroke, the column, and
// the distance ahead in it. A search moves it to where worth is greatest: the depth there if
// deep is set, else the glass left, negated.
type edgeSpot struct {
	column
	stands, ahead float64
	deep          bool
	worth         float64
}

// newEdgeSpots returns two spots for each column, before anything is found: the one that
// leaves least, and the deepest.
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

// offer moves the spot to a place of the wheel's edge if that is worth more.
func (at *edgeSpot) offer(p *pose, ahead, worth float64) {
	if worth > at.worth {
		at.worth, at.stands, at.ahead = worth, p.stands, ahead
	}
}

// lookBetween searches between the places that were looked at, along the stroke as well, for
// less glass left and for deeper bites. It starts from the best of each column, if that is
// near the best of all.
func (k *stroke) lookBetween() {
	const near = 1.0 // mm: the most that a closer look may change
	best := [2]float64{math.Inf(-1), math.Inf(-1)}
	for i := range k.spots {
		best[i%2] = max(best[i%2], k.spots[i].worth)
	}
	for i := range k.spots {
		at := &k.spots[i]
		if at.worth == best[i%2] || at.worth > best[i%2]-near {
			k.refine(*at)
		}
	}
}

// refine moves a spot, in ever smaller steps, along the stroke, along its column and to its
// sides to where it is worth most, and records what the wheel does there.
func (k *stroke) refine(at edgeSpot) {
	if math.IsInf(at.worth, 0) { // nothing was found
		return
	}
	for step := span; step > 0.01; {
		moved := false
		for _, by := range [...][3]float64{
			// Moving the wheel on and the place back on it hardly moves the place on the glass.
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
	radius, height := at.on(&p, at.ahead)
	k.bitten(&p, &at.column, at.ahead, radius, height)
}

// moved returns a spot moved along the stroke, ahead on its wheel, and to the left, with its
// worth there: -Inf where it is not in the glass.
func (k *stroke) moved(at edgeSpot, along, ahead, left float64) edgeSpot {
	at.stands = min(max(at.stands+along, k.first), k.last)
	at.ahead += ahead
	if face := 0.999 * at.blade.face; k.wheel.blades() == 1 { // a gang's spots stay on its mitres' lines
		at.left = min(max(at.left+left, -face), face)
	}
	p := k.at(at.stands)
	radius, height := at.on(&p, at.ahead)
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
