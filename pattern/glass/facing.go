package glass

import (
	"math"
	"slices"
)

// A mark is carried through the wall square to the outside. Opposite goes inwards,
// Facing outwards.

// Opposite returns the place on the inside that is opposite the outside at height
// z. It may lie below the floor or above the rim, where there is no inside.
func (n *Inner) Opposite(z float64) (radius, height float64) {
	p := n.curve.under(z)
	return p.radius, p.height
}

// Facing returns the height on the outside that lies opposite a height on the
// inside: it undoes Opposite. ok is false below the floor, above the rim, and where
// the surface turns back on itself and so passes the height more than once. Then z
// is the place nearest the axis.
func (n *Inner) Facing(height float64) (z float64, ok bool) {
	z, times := n.facing(height)
	return z, times == 1
}

// facing is Facing with the number of times the surface passes the height.
func (n *Inner) facing(height float64) (z float64, times int) {
	radius := math.Inf(1)
	for i := range n.spans {
		s := &n.spans[i]
		low, high := s.ends[0].height, s.ends[1].height
		// At the rim itself the last piece counts too.
		if (height >= low) == (height >= high) && !(height == n.rim && max(low, high) == height) {
			continue
		}
		times++
		at := n.solve(s, height)
		if r := n.curve.under(at).radius; r < radius {
			z, radius = at, r
		}
	}
	return z, times
}

// solve returns where within a piece the curve is at a height. It uses false
// position with the Illinois rule, so that both ends move.
func (n *Inner) solve(s *span, height float64) float64 {
	off := func(z float64) float64 { return n.curve.under(z).height - height }
	from, to := s.from, s.to
	low, high := off(from), off(to)
	if (low > 0) == (high > 0) { // only by rounding: it is at an end
		if math.Abs(low) < math.Abs(high) {
			return from
		}
		return to
	}
	const settled = 1e-12 // mm
	z, moved := from, 0
	for range 60 {
		z = from + (to-from)*low/(low-high)
		at := off(z)
		switch {
		case math.Abs(at) <= settled:
			return z
		case (at > 0) == (low > 0):
			from, low = z, at
			if moved < 0 {
				high /= 2
			}
			moved = -1
		default:
			to, high = z, at
			if moved > 0 {
				low /= 2
			}
			moved = 1
		}
	}
	return z
}

// Kinks returns the heights of the outside at which the surface opposite may have a
// corner, in rising order: the stations, and what lies opposite the floor's corner
// and the edge of the rim. The slice must not be changed.
func (n *Inner) Kinks() []float64 { return n.kinks }

func (n *Inner) bend(stations []float64) {
	n.kinks = slices.Clone(stations)
	for _, height := range [2]float64{n.floor, n.rim} {
		if z, ok := n.Facing(height); ok && z > 0 && z < n.rim {
			n.kinks = append(n.kinks, z)
		}
	}
	slices.Sort(n.kinks)
	n.kinks = slices.Compact(n.kinks)
}
