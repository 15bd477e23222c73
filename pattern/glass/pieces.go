package glass

import (
	"math"
	"slices"
)

// pieces returns the outside from the foot up as straight pieces, with an end at every
// station.
func (b *Blank) pieces() [][2]spot {
	const fine = 0.25 // mm; along a bend of 5 mm a chord is 0.002 mm out
	top := b.profile.Top()
	ends := append(b.heights(), top)
	slices.Sort(ends)
	var all [][2]spot
	low, from := 0.0, spot{radius: b.profile.Radius(0)}
	for _, end := range ends {
		end = min(end, top)
		n := math.Ceil((end - low) / fine)
		for i := 1.0; i <= n; i++ {
			to := spot{height: low + (end-low)*i/n}
			to.radius = b.profile.Radius(to.height)
			all = append(all, [2]spot{from, to})
			from = to
		}
		low = max(low, end)
	}
	return all
}

// apart returns the distance of a place from a straight piece.
func apart(piece [2]spot, at spot) float64 {
	r, h := piece[1].radius-piece[0].radius, piece[1].height-piece[0].height
	share := ((at.radius-piece[0].radius)*r + (at.height-piece[0].height)*h) / (r*r + h*h)
	share = min(max(share, 0), 1)
	return math.Hypot(at.radius-piece[0].radius-share*r, at.height-piece[0].height-share*h)
}
