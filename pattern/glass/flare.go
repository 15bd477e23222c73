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
	f, edge := flare{blank: b}, b.BaseRadius()
	for _, p := range b.pieces() {
		if p[1].radius < edge {
			f.pieces = append(f.pieces, p)
		}
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
