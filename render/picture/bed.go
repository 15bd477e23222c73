package picture

import (
	"math"
	"sort"

	"roundlay/geometry"
)

// bed is the line on which the hollow stands in the glass as the eye sees it,
// from the middle of the floor in front out to where it is widest. What lies
// above it is seen through the empty glass, what lies below through the foot.
type bed []geometry.Point

func newBed(inside body) bed {
	line := inside.front(0, 1) // the floor, then up the right side
	for i := 1; i < len(line); i++ {
		if line[i].X < line[i-1].X {
			return line[:i]
		}
	}
	return line
}

// at returns the height of the bed at a distance from the axis, and whether the
// hollow reaches that far.
func (b bed) at(x float64) (y float64, hollow bool) {
	x = math.Abs(x)
	i := sort.Search(len(b), func(i int) bool { return b[i].X >= x })
	if i == len(b) {
		return 0, false
	}
	if i == 0 {
		return b[0].Y, true
	}
	return between(b[i-1], b[i], (x-b[i-1].X)/(b[i].X-b[i-1].X)).Y, true
}

// parted divides a small polygon on the picture by the bed.
func (b bed) parted(p polygon) []polygon {
	left, right := math.Inf(1), math.Inf(-1)
	for _, q := range p {
		left, right = min(left, q.X), max(right, q.X)
	}
	from, in := b.at(left)
	to, still := b.at(right)
	if !in || !still || right-left < 1e-9 {
		return []polygon{p}
	}
	above, below := p.split(func(q geometry.Point) float64 {
		return q.Y - from - (to-from)*(q.X-left)/(right-left)
	})
	var parts []polygon
	for _, part := range []polygon{above, below} {
		if part != nil {
			parts = append(parts, part)
		}
	}
	return parts
}

// behindAt returns the tones of the glass, as it is seen through from the front,
// round a place on the picture: those of the hollow or those of the foot and wall.
func (v vessel) behindAt(at geometry.Point) func(geometry.Point) tone {
	inside := func(q geometry.Point) float64 { return v.inside.radius(min(max(q.Y, v.inside.foot()), v.inside.rim())) }
	if y, hollowed := v.bed.at(at.X); hollowed && at.Y > y && math.Abs(at.X) < inside(at) {
		return func(q geometry.Point) tone { return hollow(min(max(q.X/max(inside(q), 1e-9), -1), 1)) }
	}
	return func(q geometry.Point) tone {
		// How far in it is, from the side and from below.
		aside, out := math.Abs(q.X), v.outside.radius(min(max(q.Y, 0), v.outside.rim()))
		share := (out - aside) / (out - inside(q))
		if foot := v.inside.foot(); q.Y < foot {
			front := v.stance.down * math.Sqrt(max(out*out-aside*aside, 0))
			share = min(share, (q.Y+front)/(foot+front))
		}
		return wall(min(max(share, 0), 1))
	}
}
