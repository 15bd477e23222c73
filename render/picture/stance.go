package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
)

// stance is how the glass is looked at: which angle of it faces the eye, and how
// far down the eye looks. The picture stands upright whatever the eye does: all
// widths and all heights on it are true, and a level circle is an ellipse, lower
// than wide by the tangent of the angle the eye looks down at.
type stance struct {
	turn float64 // the angle on the glass that faces the eye
	down float64 // the tangent of the angle the eye looks down at; 0 is from the side
}

// at returns where a place comes to lie: at an angle to the right from the middle
// of the near side, or of the far one, a radius and a height. The axis stands at
// x = 0, and the middle of the foot at the origin.
func (s stance) at(angle, radius, z float64, far bool) geometry.Point {
	sin, cos := math.Sincos(angle)
	if far {
		sin, cos = -sin, -cos
	}
	return geometry.Point{X: radius * sin, Y: z - s.down*radius*cos}
}

// faces returns the angle from the middle of the near side, or of the far one,
// of an angle on the glass, from -π to π.
func (s stance) faces(theta float64, far bool) float64 {
	if far {
		theta += math.Pi
	}
	return math.Remainder(theta-s.turn, 2*math.Pi)
}

// side returns the angle from the middle of the near side at which a body whose
// radius grows with the height at a slope turns away from the eye. There the
// picture of its surface runs along its outline: cos ϑ = r′ tan φ. Where the
// slope is so great that the eye sees all round the body, or none of it, the
// angle is 0 or π.
func (s stance) side(slope float64) float64 {
	return math.Acos(min(max(s.down*slope, -1), 1))
}

// corner returns the heights at which the outline of a round corner at the foot
// of a body is taken. Seen from above the outline goes round the corner's foot
// first, where cos ϑ = tan φ cot t at the angle t up the round, then up its side.
func (s stance) corner(foot, radius float64) []float64 {
	const parts = 14
	angles := make([]float64, 0, 2*parts)
	for i := range parts {
		quarter := float64(i) / parts * math.Pi / 2
		angles = append(angles, quarter, math.Atan2(s.down, math.Cos(quarter)))
	}
	slices.Sort(angles)
	var heights []float64
	for _, t := range slices.Compact(angles) {
		if t >= math.Atan(s.down) {
			heights = append(heights, foot+radius*(1-math.Cos(t)))
		}
	}
	return heights
}
