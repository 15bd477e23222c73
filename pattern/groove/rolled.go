package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// rolling is how far a wheel is rolled to both sides about the line that touches its rim at
// its deepest place, along the cut. An angle is positive where the wheel's hub leans to the
// left: then its left flank lies flatter.
type rolling struct{ low, high roll }

// roll is an angle by which a wheel is rolled, with its sine and cosine.
type roll struct{ angle, sin, cos float64 }

func newRoll(angle float64) roll {
	sin, cos := math.Sincos(angle)
	return roll{angle, sin, cos}
}

// newRolling returns the rolling to the left and to the right.
func newRolling(by [2]float64) *rolling { return &rolling{newRoll(-by[1]), newRoll(by[0])} }

// some returns a number of rolls, from one side to the other; of an upright wheel the only one.
func (r *rolling) some(n int) []roll {
	if r == nil {
		return []roll{{cos: 1}}
	}
	all := make([]roll, n)
	for i := range all {
		all[i] = newRoll(r.low.angle + (r.high.angle-r.low.angle)*float64(i)/float64(n-1))
	}
	return all
}

// within returns a roll that isn't beyond either side.
func (r *rolling) within(angle float64) roll {
	return newRoll(min(max(angle, r.low.angle), r.high.angle))
}

// leaning returns the roll at a share of the way from upright to the left (1) or the right (-1).
func (r *rolling) leaning(share float64) roll {
	switch {
	case r == nil || share == 0:
		return roll{cos: 1}
	case share > 0:
		return newRoll(share * r.high.angle)
	}
	return newRoll(-share * r.low.angle)
}

// into converts a place from the upright wheel's coordinates to those of the wheel rolled
// about the deepest place of its rim.
func (r roll) into(v r3.Vec, depth float64) r3.Vec {
	y, z := v.Y, v.Z+depth
	return r3.Vec{X: v.X, Y: y*r.cos - z*r.sin, Z: y*r.sin + z*r.cos - depth}
}

// outOf is the inverse of into.
func (r roll) outOf(v r3.Vec, depth float64) r3.Vec {
	y, z := v.Y, v.Z+depth
	return r3.Vec{X: v.X, Y: y*r.cos + z*r.sin, Z: z*r.cos - y*r.sin - depth}
}

// rolled returns a place in the coordinates of the wheel as it is rolled where it takes most
// there. The deeper a place is within an edge's shape the nearer it is to the blade's own
// line, and at the same distance from the pivot an edge in the wheel's middle has that at the
// roll nearest to the place.
func (p *pose) rolled(b *blade, v r3.Vec) r3.Vec {
	if b.offset != 0 {
		return p.rolledAside(b, v)
	}
	y, z := v.Y, v.Z+p.depth
	if y*y+z*z > p.wheelRadius*p.wheelRadius {
		return p.rolledFar(b, v)
	}
	switch beyond, before := y*p.roll.high.cos-z*p.roll.high.sin, y*p.roll.low.cos-z*p.roll.low.sin; {
	case z > 0 && beyond <= 0 && before >= 0:
		return r3.Vec{X: v.X, Z: math.Sqrt(y*y+z*z) - p.depth}
	case z > 0 && beyond > 0, z <= 0 && y > 0:
		return p.roll.high.into(v, p.depth)
	}
	return p.roll.low.into(v, p.depth)
}

// rolledFar is rolled for a place that is farther from the pivot than the hub is. As the wheel
// is rolled towards it, it comes nearer to the blade's line, but may pass the hub and come out
// on the wheel's far side.
func (p *pose) rolledFar(b *blade, v r3.Vec) r3.Vec {
	deepIn := func(angle float64) float64 {
		deep, room, _ := p.coversUpright(b, newRoll(angle).into(v, p.depth))
		return min(deep, room)
	}
	towards := p.roll.within(math.Atan2(v.Y, v.Z+p.depth))
	at := towards.into(v, p.depth)
	if at.Z <= p.wheelRadius-p.depth {
		return at
	}
	away := p.roll.low.angle
	if towards.angle <= 0 {
		away = p.roll.high.angle
	}
	if finer := p.roll.within(highest(deepIn, towards.angle, away, 24)); deepIn(finer.angle) > deepIn(towards.angle) {
		return finer.into(v, p.depth)
	}
	return at
}

// rolledAside is rolled for a mitre of a gang beside the wheel's middle. Turned about the
// pivot, a place comes nearer to the mitre's line and then passes it. It is deepest there, or
// before, where the flank is as steep as the place's own way.
func (p *pose) rolledAside(b *blade, v r3.Vec) r3.Vec {
	y, z := v.Y, v.Z+p.depth
	far, at := math.Hypot(y, z), math.Atan2(y, z)
	side := math.Copysign(1, b.offset)
	off := math.Asin(min(math.Abs(b.offset)/far, 1))
	if b.sharp() {
		radius := p.wheelRadius - b.drop(0)
		steep := b.slope * radius / math.Sqrt(max(radius*radius-v.X*v.X, radius*radius/100))
		return p.roll.within(at-side*min(off, math.Atan(steep))).into(v, p.depth)
	}
	worth := func(angle float64) float64 {
		deep, room, _ := p.coversUpright(b, p.roll.within(angle).into(v, p.depth))
		return min(deep, room)
	}
	inner := math.Asin(min(max(math.Abs(b.offset)-b.breadth, 0)/far, 1))
	return p.roll.within(highest(worth, at-side*off, at-side*min(inner, math.Atan(b.slope)), 12)).into(v, p.depth)
}

// highest returns where f, which rises to one place and falls from there, is highest between
// two, in any order: by golden sections, so many of them.
func highest(f func(float64) float64, from, to float64, sections int) float64 {
	const golden = 0.6180339887498949
	a, b := to-golden*(to-from), from+golden*(to-from)
	atA, atB := f(a), f(b)
	for range sections {
		if atA > atB {
			to, b, atB = b, a, atA
			a = to - golden*(to-from)
			atA = f(a)
		} else {
			from, a, atA = a, b, atB
			b = from + golden*(to-from)
			atB = f(b)
		}
	}
	return (from + to) / 2
}

// tipOf returns the place of a blade's line at a distance ahead of the wheel and a roll, as
// far to the left of the wheel as it comes then.
func (p *pose) tipOf(b *blade, r roll, ahead float64) (left float64) {
	radius := p.wheelRadius
	lifted := radius - math.Sqrt(max(radius*radius-ahead*ahead, 0))
	return r.outOf(r3.Vec{Y: b.offset, Z: lifted - p.depth}, p.depth).Y
}

// skin returns the radius and the height of a place on a blade's edge, at a distance ahead of
// the wheel and to the left of its middle, as the wheel is rolled. turn is the angle round the
// glass from the wheel's place.
func (p *pose) skin(b *blade, r roll, ahead, left float64) (radius, height, turn float64) {
	out := p.above(p.wheelRadius-b.drop(left-b.offset), ahead)
	v := r.outOf(r3.Vec{X: ahead, Y: left, Z: out}, p.depth)
	right, up := v.X*p.sine-v.Y*p.cosine, v.X*p.cosine+v.Y*p.sine
	away := p.radius + up*p.sin + v.Z*p.cos
	return math.Sqrt(away*away + right*right), p.height + up*p.cos - v.Z*p.sin, math.Atan2(right, away)
}
