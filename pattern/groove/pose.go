package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// pose is a wheel set on the glass at one place: it lies in the plane of the
// surface's normal and of the cut's direction, its rim a depth below the surface.
type pose struct {
	frame
	wheelRadius, depth float64
	stands             float64        // how far along the stroke
	at, ahead          geometry.Point // on the surface's chart
	cosine, sine       float64        // of the cut's angle from the profile, to the right
	curve              curvature
}

// curvature is how the surface curves at a place, seen along a direction on it:
// Euler's theorem, and the twist that goes with it.
type curvature struct{ along, across, twist float64 }

// place sets a wheel on the glass at a place of the chart.
func place(surface *geometry.Surface, radius, depth float64, at, ahead geometry.Point) pose {
	theta, along := surface.ReverseAlong(at)
	p := pose{
		frame: newFrame(surface, theta, along), wheelRadius: radius, depth: depth, at: at, ahead: ahead,
	}
	right, up := surface.Compass(theta)
	p.cosine, p.sine = r2.Dot(ahead, up), r2.Dot(ahead, right)
	if !p.flat {
		p.sine *= p.radius / surface.ChartRadius(along)
		unit := 1 / math.Sqrt(p.sine*p.sine+p.cosine*p.cosine)
		p.sine, p.cosine = p.sine*unit, p.cosine*unit
	}
	sin2, cos2 := p.sine*p.sine, p.cosine*p.cosine
	p.curve = curvature{
		along:  p.round*sin2 + p.bulge*cos2,
		across: p.round*cos2 + p.bulge*sin2,
		twist:  (p.bulge - p.round) * p.sine * p.cosine,
	}
	return p
}

// spot returns the place on the glass so far ahead of the wheel, straight on, and
// from there so far to the left, square to that line.
func (p *pose) spot(ahead, left float64) spot {
	if p.flat {
		return p.on(ahead*p.sine-left*p.cosine, ahead*p.cosine+left*p.sine)
	}
	return p.heading().straight(p.surface, ahead).left().straight(p.surface, left).spot(p.surface)
}

// heading returns where the wheel stands and the way it looks.
func (p *pose) heading() heading {
	return heading{p.theta, p.along, math.Atan2(p.sine, p.cosine)}
}

// local returns how far ahead of the wheel, and how far to its left, a place on
// the glass lies: it undoes spot.
func (p *pose) local(s spot) (ahead, left float64) {
	for range 20 {
		at := p.spot(ahead, left)
		x, y := (s.theta-at.theta)*s.radius, s.along-at.along
		ahead, left = ahead+x*p.sine+y*p.cosine, left-x*p.cosine+y*p.sine
		if x*x+y*y < 1e-16 {
			break
		}
	}
	return ahead, left
}

// chart returns the place on a straight glass's chart so far ahead of the wheel
// and so far to its left: it keeps every length and angle.
func (p *pose) chart(ahead, left float64) geometry.Point {
	return geometry.Point{X: p.at.X + ahead*p.ahead.X - left*p.ahead.Y, Y: p.at.Y + ahead*p.ahead.Y + left*p.ahead.X}
}

// seen turns a direction or a place of the frame to the wheel's own: X
// ahead of it, Y to its left and Z out along the normal.
func (p *pose) seen(v r3.Vec) r3.Vec {
	return r3.Vec{X: v.Y*p.cosine + v.X*p.sine, Y: v.Y*p.sine - v.X*p.cosine, Z: v.Z}
}

// bite returns how much deeper the wheel stands than it would have to for a
// blade's edge just to meet the surface at a place, and how much room there is
// from there to the wheel's nearer face: both are positive where the blade is
// in the glass. aside is how far to the left of the blade's line the place lies.
func (p *pose) bite(b *blade, s spot) (deep, room, aside float64) {
	return p.covers(b, p.seen(p.space(s)))
}

// covers is bite for any place in space, as the wheel sees it.
func (p *pose) covers(b *blade, v r3.Vec) (deep, room, aside float64) {
	aside = v.Y - b.offset
	return v.Z - p.above(p.wheelRadius-b.drop(aside), v.X), b.face - math.Abs(v.Y), aside
}

// depthAt returns how deep a blade goes at a place, square to the surface, and
// where that ends, as a radius and a height: 0 and the place itself where it does
// not reach.
func (p *pose) depthAt(b *blade, s spot) (depth, radius, height float64) {
	leanSin, leanCos := p.lean(s)
	v, in := p.seen(p.space(s)), p.seen(p.normal(s, leanSin, leanCos))
	deep, room, _ := p.covers(b, v)
	if deep <= 0 || room <= 0 {
		return 0, s.radius, s.height
	}
	depth = root(func(d float64) float64 {
		deep, room, _ := p.covers(b, r3.Sub(v, r3.Scale(d, in)))
		return min(deep, room)
	}, max(deep, 0), 1)
	return depth, s.radius - depth*leanCos, s.height + depth*leanSin
}

// above returns how far above the place the part of the wheel with the given
// radius stands, at a distance ahead.
func (p *pose) above(radius, ahead float64) float64 {
	ahead = math.Abs(ahead)
	chord := radius - ahead // past the wheel's own width: what it falls short
	if chord > 0 {
		chord = math.Sqrt(chord * (radius + ahead))
	}
	return p.wheelRadius - p.depth - chord
}

// inside is positive where the blade is in the glass, and falls away from there.
func (p *pose) inside(b *blade, s spot) float64 {
	deep, room, _ := p.bite(b, s)
	return min(deep, room)
}

// contact returns how far from the place a blade stays in the glass along the
// cut, ahead of it (side 1) or behind it (side -1).
func (p *pose) contact(b *blade, side float64) float64 {
	guess, fall := p.tail()
	return root(func(s float64) float64 { return p.inside(b, p.spot(side*s, 0)) }, guess, fall)
}

// tail returns, to second order, how far from the place the rim stays in the
// glass along the cut, and how steeply it leaves it: √(2d/(1/R + κ_along)).
func (p *pose) tail() (length, fall float64) {
	length = math.Sqrt(2 * p.depth / p.stiff())
	return length, p.stiff() * length
}

// stiff is how fast the rim curves away from the surface, 1/R + κ_along. In a
// hollow as round as the wheel, or rounder, it does not: all that follows from
// it is a first guess then, and a little is a better one than nothing.
func (p *pose) stiff() float64 {
	const little = 0.02
	return max(1/p.wheelRadius+p.curve.along, little/p.wheelRadius)
}
