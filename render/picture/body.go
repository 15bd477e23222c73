package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/render/drawing"
)

// body is a body turned about the upright axis, such as the glass itself or the
// hollow in it.
type body struct {
	stance        stance
	radius, slope func(z float64) float64
	heights       []float64 // rising, at which its outline is taken
}

// outside returns the glass as if it were solid.
func outside(b *glass.Blank, s stance) body {
	p := b.Profile()
	return body{s, p.Radius, p.Slope, levels(0, b.Height())}
}

// shell returns the surface within the glass at a share of the way from outside to
// inside: the profile less that share of the wall, measured square to it, down to
// that share of the floor. A share of 1 is the inside itself. The corner between wall
// and floor, which nobody measures, is drawn round.
func shell(b *glass.Blank, s stance, share float64) body {
	p, foot := b.Profile(), share*floor(b)
	wide := func(z float64) float64 {
		return max(p.Radius(z)-share*b.Wall(z)*math.Hypot(1, p.Slope(z)), 0)
	}
	const sharp, round = 0.5, 5.5 // mm: the corner's radius outside and inside
	const least = 1e-6            // where there is no room for one
	corner := max(min(sharp+share*(round-sharp), wide(foot)/2, (b.Height()-foot)/4), least)
	radius := func(z float64) float64 {
		up := min(max((z-foot)/corner, 0), 1)
		return max(wide(z)-corner*(1-math.Sqrt(up*(2-up))), 0)
	}
	slope := func(z float64) float64 {
		const h = 0.01 // mm
		low, high := max(z-h, foot), min(z+h, b.Height())
		return (radius(high) - radius(low)) / (high - low)
	}
	return body{s, radius, slope, slices.Concat(s.corner(foot, corner), levels(foot+corner, b.Height()))}
}

// floor returns the height of the inside's floor. Where it was not measured it
// is drawn as thick as the wall is at the foot.
func floor(b *glass.Blank) float64 {
	if b.Floor > 0 {
		return b.Floor
	}
	return min(b.Wall(0), b.Height()/2)
}

// levels returns heights from one to another that is not below it, both ends
// included, close enough for a profile.
func levels(from, to float64) []float64 {
	const apart = 1.0 // mm
	n := max(int(math.Ceil((to-from)/apart)), 1)
	z := make([]float64, n+1)
	for i := range z {
		z[i] = from + (to-from)*float64(i)/float64(n)
	}
	return z
}

func (b body) foot() float64 { return b.heights[0] }
func (b body) rim() float64  { return b.heights[len(b.heights)-1] }

// at returns where a place on the body comes to lie.
func (b body) at(angle, z float64) geometry.Point { return b.stance.at(angle, b.radius(z), z, false) }

// edge returns the angle from the middle of what lies at a share of the body's
// width, from -1 at the left to 1 at the right.
func (b body) edge(share, z float64) float64 {
	side := b.stance.side(b.slope(z))
	if math.Abs(share) >= 1 {
		return math.Copysign(side, share)
	}
	return math.Asin(share * math.Sin(side))
}

// outline returns the outline of the body, anticlockwise: round the foot in
// front, up the right side, round the rim at the back, and down the left side.
func (b body) outline() []geometry.Point {
	line := b.front(-1, 1)
	left := slices.Clone(line[len(line)-len(b.heights)+1:])
	right := b.edge(1, b.rim())
	line = line[:len(line)-len(b.heights)]
	line = append(line, b.arc(b.rim(), right, 2*math.Pi-right)...)
	return append(line, left...)
}

// front returns the part of the near side between two shares of the body's
// width, anticlockwise from the left end of its foot. It ends above straight
// across from the right to the left.
func (b body) front(from, to float64) []geometry.Point {
	foot := b.foot()
	line := b.arc(foot, b.edge(from, foot), b.edge(to, foot))
	for _, z := range b.heights[1:] {
		line = append(line, b.at(b.edge(to, z), z))
	}
	for _, z := range slices.Backward(b.heights[1:]) {
		line = append(line, b.at(b.edge(from, z), z))
	}
	return line
}

// arc returns part of a level circle of the body between two angles from the
// middle, within drawing.Flatness.
func (b body) arc(z, from, to float64) []geometry.Point {
	n := 1
	if r := b.radius(z); b.stance.down > 0 && r > 0 {
		n = max(1, int(math.Ceil(math.Abs(to-from)*math.Sqrt(r/(8*drawing.Flatness)))))
	}
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = b.at(from+(to-from)*float64(i)/float64(n), z)
	}
	return points
}
