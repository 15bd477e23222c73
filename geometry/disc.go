package geometry

import "math"

// A disc is the underside of a body: the cone whose half-angle is a right angle. Its flat
// map is the disc itself with its middle at the origin, ρ = r and φ = θ. It is seen from
// outside, which is from below: θ = 0 points up, and θ grows to the right of there, as it
// does on the side of the body.
//
// All of a disc lies at one height. Its heights z are therefore counted outwards from its
// middle: they are the radii, and the distances along the profile too. Only At and Space
// speak of the height in space, which is 0.

// Disc returns a disc of a radius above zero.
func Disc(radius float64) Surface {
	return Surface{
		Meridian: Meridian{step: radius, joints: []joint{{sin: 1}, {radius: radius, sin: 1}}},
		chart: Cone{
			HalfAngle: math.Pi / 2, Circle: Circle{Radius: radius, Height: radius}, Along: radius, sin: 1,
		},
		flat: true,
	}
}

// Level reports whether the meridian is that of a disc, which does not rise.
func (m *Meridian) Level() bool { return len(m.joints) == 2 && m.joints[0].cos == 0 }

// Level reports whether the cone is a disc.
func (c Cone) Level() bool { return c.cos == 0 }

// rise is how much the height z changes with the distance along the profile.
func (c Cone) rise() float64 {
	if c.Level() {
		return 1
	}
	return c.cos
}
