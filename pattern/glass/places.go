package glass

import "math"

// Place is a point of a curve in the half-plane of radius and height.
type Place struct{ Radius, Height float64 }

// Places returns points of the inside surface, from the axis along the floor and
// up to the rim, a step apart or less.
func (n *Inner) Places(step float64) []Place {
	var all []Place
	on := func(a, b spot) {
		parts := max(int(math.Ceil(math.Hypot(b.radius-a.radius, b.height-a.height)/step)), 1)
		for i := 1; i <= parts; i++ {
			share := float64(i) / float64(parts)
			all = append(all, Place{a.radius + share*(b.radius-a.radius), a.height + share*(b.height-a.height)})
		}
	}
	begin := func(at spot) {
		if len(all) == 0 || all[len(all)-1] != (Place{at.radius, at.height}) {
			all = append(all, Place{at.radius, at.height})
		}
	}
	if n.FloorKnown() && n.corner > 0 {
		begin(spot{0, n.floor})
		on(spot{0, n.floor}, spot{n.corner, n.floor})
	}
	for _, s := range n.spans {
		begin(s.ends[0])
		on(s.ends[0], s.ends[1])
	}
	return all
}
