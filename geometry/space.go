package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Distances on a curved surface are taken straight through space. On a surface
// that bends with a radius R, a distance d comes out short by about d³/24R². On a
// ball of radius 15 mm that is 0.0002 mm for a land of 1 mm, and 0.01 mm for one of
// 4 mm. So a land is never reported wider than it is.

// edgeInSpace returns the ends of an outline's edge in space.
func (o *Outline) edgeInSpace(i int) (a, b r3.Vec) {
	if i+1 == len(o.space) {
		return o.space[i], o.space[0]
	}
	return o.space[i], o.space[i+1]
}

// edgeDistance2 returns the square of the distance in space between two edges of
// two outlines that do not cross, and the place on the chart of each where it is
// measured: at an end of one of them.
func (o *Outline) edgeDistance2(a int, p Outline, b int) (d2 float64, on, off Point) {
	a0, a1 := o.edgeInSpace(a)
	b0, b1 := p.edgeInSpace(b)
	aOn, aOff := o.edge(a)
	bOn, bOff := p.edge(b)
	d2 = math.Inf(1)
	try := func(from, to0, to1 r3.Vec, at, at0, at1 Point, swap bool) {
		e, share := nearestInSpace(from, to0, to1)
		if e >= d2 {
			return
		}
		there := r2.Add(at0, r2.Scale(share, r2.Sub(at1, at0)))
		d2, on, off = e, at, there
		if swap {
			on, off = there, at
		}
	}
	try(a0, b0, b1, aOn, bOn, bOff, false)
	try(a1, b0, b1, aOff, bOn, bOff, false)
	try(b0, a0, a1, bOn, aOn, aOff, true)
	try(b1, a0, a1, bOff, aOn, aOff, true)
	return d2, on, off
}

// nearestInSpace returns the square of the distance from a point to the segment
// ab, and how far along it the nearest point lies, as a share.
func nearestInSpace(q, a, b r3.Vec) (d2, share float64) {
	u := r3.Sub(b, a)
	if length2 := r3.Norm2(u); length2 > 0 {
		share = min(max(r3.Dot(r3.Sub(q, a), u)/length2, 0), 1)
	}
	return r3.Norm2(r3.Sub(q, r3.Add(a, r3.Scale(share, u)))), share
}
