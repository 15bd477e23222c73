package glass

import "math"

// flare is the outside of a glass where it stands over its flat underside: the top of a
// spread foot, and what rises from it. It is empty where the glass is nowhere narrower than
// its underside.
type flare struct {
	blank  *Blank
	pieces [][2]spot // upwards
	kinks  []float64 // the radii of its stations below the inside floor
}

func (b *Blank) flare() flare {
	const fine = 0.25 // mm; along a bend of 5 mm a chord is 0.002 mm out
	f, edge := flare{blank: b}, b.BaseRadius()
	top := b.profile.Top()
	steps := math.Ceil(top / fine)
	from := spot{radius: b.profile.Radius(0)}
	for i := 1.0; i <= steps; i++ {
		to := spot{height: top * i / steps}
		to.radius = b.profile.Radius(to.height)
		if to.radius < edge {
			f.pieces = append(f.pieces, [2]spot{from, to})
		}
		from = to
	}
	for _, s := range b.Stations {
		if s.Height < b.thin.floor && s.Radius < edge {
			f.kinks = append(f.kinks, s.Radius)
		}
	}
	return f
}

// distance returns how much glass lies between a place over the underside and the outside
// above it. It is below zero where the place lies outside the glass.
func (f flare) distance(radius, height float64) float64 {
	nearest := math.Inf(1)
	for _, p := range f.pieces {
		if p[0].height-height >= nearest {
			break
		}
		nearest = min(nearest, apart(p, spot{radius, height}))
	}
	if len(f.pieces) > 0 && height > f.pieces[0][0].height && radius > f.blank.profile.Radius(height) {
		return -nearest
	}
	return nearest
}

// apart returns the distance of a place from a straight piece.
func apart(piece [2]spot, at spot) float64 {
	r, h := piece[1].radius-piece[0].radius, piece[1].height-piece[0].height
	share := ((at.radius-piece[0].radius)*r + (at.height-piece[0].height)*h) / (r*r + h*h)
	share = min(max(share, 0), 1)
	return math.Hypot(at.radius-piece[0].radius-share*r, at.height-piece[0].height-share*h)
}
