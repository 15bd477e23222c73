package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// pose is a wheel set on the glass at one place. It is in the plane of the surface's normal
// and the cut's direction, with its rim a depth below the surface.
type pose struct {
	frame
	wheelRadius, depth float64
	stands             float64        // how far along the stroke
	at, ahead          geometry.Point // on the surface's chart
	cosine, sine       float64        // of the cut's angle from the profile, to the right
	curve              curvature
	roll               *rolling // nil for a wheel that is upright
	// On a curved glass: the heading, and its rate. Both are worked out when they are first
	// asked for.
	way, rate heading
	headed    bool
}

// curvature is how the surface curves at a place, seen along a direction on it:
// Euler's theorem, and the twist that goes with it.
type curvature struct{ along, across, twist float64 }

// place sets a wheel on the glass at a place of the chart, along a direction there.
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

// spot returns the place on the glass at a distance straight ahead of the wheel and, from
// there, at a distance square to the left.
func (p *pose) spot(ahead, left float64) spot {
	if p.flat {
		return p.on(ahead*p.sine-left*p.cosine, ahead*p.cosine+left*p.sine)
	}
	return p.straight(ahead).left().straight(p.surface, left).spot(p.surface)
}

// heading returns the wheel's place and direction.
func (p *pose) heading() heading {
	return heading{p.theta, p.along, math.Atan2(p.sine, p.cosine)}
}

// straight returns the heading at a distance straight ahead of the wheel.
func (p *pose) straight(ahead float64) heading {
	if !p.headed {
		p.way = p.heading()
		p.rate, p.headed = p.way.rate(p.surface), true
	}
	return p.way.straightOn(p.rate, p.surface, ahead)
}

// local is the inverse of spot: how far ahead of the wheel, and to its left, a place is.
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

// chart returns the place on a straight glass's chart at a distance ahead of the wheel and
// to its left. The chart keeps every length and angle.
func (p *pose) chart(ahead, left float64) geometry.Point {
	return geometry.Point{X: p.at.X + ahead*p.ahead.X - left*p.ahead.Y, Y: p.at.Y + ahead*p.ahead.Y + left*p.ahead.X}
}

// seen converts a direction or a place from the frame's coordinates to the wheel's: X ahead
// of it, Y to its left and Z outwards along the normal.
func (p *pose) seen(v r3.Vec) r3.Vec {
	return r3.Vec{X: v.Y*p.cosine + v.X*p.sine, Y: v.Y*p.sine - v.X*p.cosine, Z: v.Z}
}

// bite returns how far a blade's edge is below the surface at a place, along the wheel's
// normal, and the room from there to the wheel's nearer face. Both are positive where the
// blade is in the glass. aside is the place's distance to the left of the blade's line.
func (p *pose) bite(b *blade, s spot) (deep, room, aside float64) {
	return p.covers(b, p.seen(p.space(s)))
}

// covers is bite for any place in space, in the wheel's coordinates. Of a wheel that is rolled
// it is that of the roll at which the blade takes most there.
func (p *pose) covers(b *blade, v r3.Vec) (deep, room, aside float64) {
	if p.roll != nil {
		v = p.rolled(b, v)
	}
	return p.coversUpright(b, v)
}

// coversUpright is covers for the wheel in whose coordinates the place is, without a roll.
func (p *pose) coversUpright(b *blade, v r3.Vec) (deep, room, aside float64) {
	aside = v.Y - b.offset
	rim := p.above(p.wheelRadius-b.drop(aside), v.X)
	deep = v.Z - rim
	// In a narrow hollow the glass may rise past the hub of a wheel that is rolled towards it. An
	// upright one is taken to go on upwards, which tells its groove wider, never narrower.
	if hub := p.wheelRadius - p.depth; p.roll != nil && hub > 0 && v.Z > hub {
		deep = 2*hub - rim - v.Z
	}
	return deep, b.face - math.Abs(v.Y), aside
}

// depthAt returns the depth of a blade under a place, square to the surface, and the radius
// and height of the bottom. Where the blade doesn't reach, that is 0 and the place itself.
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

// above returns the height over the wheel's place of the part of the wheel with the given
// radius, at a distance ahead.
func (p *pose) above(radius, ahead float64) float64 {
	ahead = math.Abs(ahead)
	chord := radius - ahead // beyond the wheel this stays negative, by as much as it falls short
	if chord > 0 {
		chord = math.Sqrt(chord * (radius + ahead))
	}
	return p.wheelRadius - p.depth - chord
}

// inside is positive where the blade is in the glass, and falls with distance from there.
func (p *pose) inside(b *blade, s spot) float64 {
	deep, room, _ := p.bite(b, s)
	return min(deep, room)
}

// contact returns how far along the cut a blade stays in the glass, ahead of its place (side
// 1) or behind it (side -1).
func (p *pose) contact(b *blade, side float64) float64 {
	guess, fall := p.tail()
	return root(func(s float64) float64 { return p.inside(b, p.spot(side*s, 0)) }, guess, fall)
}

// tail returns, to second order, how far along the cut the rim stays in the glass,
// √(2d/(1/R + κ_along)), and how steeply it leaves it.
func (p *pose) tail() (length, fall float64) {
	length = math.Sqrt(2 * p.depth / p.stiff())
	return length, p.stiff() * length
}

// stiff is how fast the rim curves away from the surface, 1/R + κ_along. In a hollow as
// round as the wheel, or rounder, it doesn't. What follows from it is only a first guess
// then, so a small value will do.
func (p *pose) stiff() float64 {
	const little = 0.02
	return max(1/p.wheelRadius+p.curve.along, little/p.wheelRadius)
}
