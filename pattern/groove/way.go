package groove

import (
	"math"

	"roundlay/geometry"
)

// heading is a place on the glass and a direction there: the angle ψ from the profile, to
// the right.
type heading struct{ theta, along, psi float64 }

// stride is the longest step of a way on a curved glass, in millimetres. On a glass as round
// as a ball of 15 mm the error is less than 0.0001 mm.
const stride = 3.0

// straight follows the shortest way on the glass, a geodesic, for a length, forwards or
// backwards. It steps θ′ = sin ψ/r, s′ = cos ψ, ψ′ = −sin α sin ψ/r by the Runge-Kutta
// method; the last equation is Clairaut's relation, that r·sin ψ stays constant.
func (h heading) straight(surface *geometry.Surface, length float64) heading {
	if length == 0 {
		return h
	}
	return h.straightOn(h.rate(surface), surface, length)
}

// straightOn is straight where the rate at the heading is known: from one place many
// ways are followed.
func (h heading) straightOn(rate heading, surface *geometry.Surface, length float64) heading {
	n := math.Ceil(math.Abs(length) / stride)
	for i := range int(n) {
		if i > 0 {
			rate = h.rate(surface)
		}
		h = h.step(rate, surface, length/n)
	}
	return h
}

// step goes on by one step, from the rate at its start.
func (h heading) step(a heading, surface *geometry.Surface, step float64) heading {
	b := h.on(a, step/2).rate(surface)
	c := h.on(b, step/2).rate(surface)
	d := h.on(c, step).rate(surface)
	const third = 1.0 / 3
	return heading{
		h.theta + step*third*(a.theta/2+b.theta+c.theta+d.theta/2),
		h.along + step*third*(a.along/2+b.along+c.along+d.along/2),
		h.psi + step*third*(a.psi/2+b.psi+c.psi+d.psi/2),
	}
}

func (h heading) on(by heading, step float64) heading {
	return heading{h.theta + step*by.theta, h.along + step*by.along, h.psi + step*by.psi}
}

func (h heading) rate(surface *geometry.Surface) heading {
	const least = 0.01 // mm: no way comes nearer to the axis
	radius, lean := surface.Bearing(h.along)
	radius = max(radius, least)
	sin, cos := math.Sincos(h.psi)
	return heading{sin / radius, cos, -lean * sin / radius}
}

// left returns the heading square to this one, to the left.
func (h heading) left() heading { return heading{h.theta, h.along, h.psi - math.Pi/2} }

// spot returns where the heading is.
func (h heading) spot(surface *geometry.Surface) spot {
	s := spot{theta: h.theta, along: h.along}
	s.radius, s.height = surface.At(h.along)
	return s
}
