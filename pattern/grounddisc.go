package pattern

import (
	"math"

	"roundlay/pattern/groove"
)

// A period of a disc is a sector, whose cells near the middle would be slivers, and cuts run
// over the middle. So the map of a disc is a square round all of it, and all copies are laid on
// it.

// discMap returns an empty map of a disc up to a radius, on which grooves cover so much.
func discMap(p *Plan, radius, covered float64) *groundMap {
	size := max(math.Sqrt(covered/maxGroundLaid), 2*radius/math.Sqrt(maxGroundCells), finestGround)
	n := 2 * (int(math.Ceil(radius/size)) + 1)
	m := &groundMap{surface: &p.Surface, disc: true, rise: size, up: n, across: n, cells: make([]groundCell, n*n), area: make([]float64, n)}
	for row := range m.area {
		m.area[row] = size * size
	}
	return m
}

// copies returns how often the grooves of a period are laid on the map.
func (m *groundMap) copies(p *Plan) int {
	if m.disc {
		return p.Periods()
	}
	return 1
}

// turnedRelief returns a relief as it lies so many periods further round.
func turnedRelief(p *Plan, relief groove.Relief, turns int) groove.Relief {
	if turns == 0 {
		return relief
	}
	moved := p.Surface.Turned(float64(turns*p.Period) * p.PitchAngle())
	all := make(groove.Relief, len(relief))
	for i, hollow := range relief {
		all[i] = make(groove.Hollow, len(hollow))
		for k, c := range hollow {
			c.Left, c.Right = moved.Apply(c.Left), moved.Apply(c.Right)
			all[i][k] = c
		}
	}
	return all
}
