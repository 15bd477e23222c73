package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// placing is a wheel set on the glass at one place: it lies in the plane of the
// surface's normal and of the cut's direction, its rim a depth below the surface.
type placing struct {
	foothold
	wheelRadius, depth float64
	ahead, left        geometry.Point // on the surface's flat map
	cosine, sine       float64        // of the cut's angle from the slant, to the right
	curve              bending
}

// bending is how the surface curves at a place, seen along a direction on it:
// Euler's theorem with κ₂ = 0, and the twist that goes with it.
type bending struct{ along, across, twist float64 }

// place sets a wheel on the glass.
func (c *surface) place(radius, depth float64, at, ahead geometry.Point) placing {
	p := placing{
		foothold: c.foothold(at), wheelRadius: radius, depth: depth,
		ahead: ahead, left: geometry.Point{X: -ahead.Y, Y: ahead.X},
	}
	p.cosine, p.sine = r2.Dot(ahead, p.up), r2.Dot(ahead, p.right)
	curvature := p.cos / p.radius
	p.curve = bending{
		along:  curvature * p.sine * p.sine,
		across: curvature * p.cosine * p.cosine,
		twist:  -curvature * p.sine * p.cosine,
	}
	return p
}

// seen turns a direction or a place of the foothold's to the wheel's own: X
// ahead of it, Y to its left and Z out along the normal.
func (p *placing) seen(v r3.Vec) r3.Vec {
	return r3.Vec{X: v.Y*p.cosine + v.X*p.sine, Y: v.Y*p.sine - v.X*p.cosine, Z: v.Z}
}

// local takes a place on the surface's flat map to the foothold's.
func (p *placing) local(q geometry.Point) geometry.Point {
	d := r2.Sub(q, p.at)
	return geometry.Point{X: r2.Dot(d, p.right), Y: r2.Dot(d, p.up)}
}

// bite returns how much deeper the wheel stands than it would have to for a
// blade's edge just to meet the surface at a place, and how much room there is
// from there to the wheel's nearer face: both are positive where the blade is
// in the glass. aside is how far to the left of the blade's line the place lies.
func (p *placing) bite(b *blade, q geometry.Point) (deep, room, aside float64) {
	return p.covers(b, p.seen(p.space(p.turn(p.local(q)))))
}

// covers is bite for any place in space, as the wheel sees it.
func (p *placing) covers(b *blade, v r3.Vec) (deep, room, aside float64) {
	aside = v.Y - b.offset
	return v.Z - p.above(p.wheelRadius-b.drop(aside), v.X), b.face - math.Abs(v.Y), aside
}

// depthAt returns how deep a blade goes at a place, square to the surface.
func (p *placing) depthAt(b *blade, q geometry.Point) float64 {
	sin, cos, along := p.turn(p.local(q))
	v, in := p.seen(p.space(sin, cos, along)), p.seen(p.normal(sin, cos))
	deep, _, _ := p.covers(b, v)
	return root(func(d float64) float64 {
		deep, room, _ := p.covers(b, r3.Sub(v, r3.Scale(d, in)))
		return min(deep, room)
	}, max(deep, 0), 1)
}

// above returns how far above the place the part of the wheel with the given
// radius stands, at a distance ahead.
func (p *placing) above(radius, ahead float64) float64 {
	ahead = math.Abs(ahead)
	chord := radius - ahead // past the wheel's own width: what it falls short
	if chord > 0 {
		chord = math.Sqrt(chord * (radius + ahead))
	}
	return p.wheelRadius - p.depth - chord
}

// inside is positive where the blade is in the glass, and falls away from there.
func (p *placing) inside(b *blade, q geometry.Point) float64 {
	deep, room, _ := p.bite(b, q)
	return min(deep, room)
}

// contact returns how far from the place a blade stays in the glass along the
// cut, ahead of it (side 1) or behind it (side -1).
func (p *placing) contact(b *blade, side float64) float64 {
	guess, fall := p.tail()
	return root(func(s float64) float64 { return p.inside(b, r2.Add(p.at, r2.Scale(side*s, p.ahead))) }, guess, fall)
}

// tail returns, to second order, how far from the place the rim stays in the
// glass along the cut, and how steeply it leaves it: √(2d/(1/R + κ_along)).
func (p *placing) tail() (length, fall float64) {
	length = math.Sqrt(2 * p.depth / p.stiff())
	return length, p.stiff() * length
}

// stiff is how fast the rim curves away from the surface, 1/R + κ_along.
func (p *placing) stiff() float64 { return 1/p.wheelRadius + p.curve.along }
