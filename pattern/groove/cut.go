package groove

import (
	"math"

	"roundlay/geometry"
)

// Cut returns the groove that a wheel leaves along a line on the cone when it
// is asked for a depth. A mark's length is the whole groove, tails included:
// where the line is too short for the depth the wheel is pressed in once, on
// the straight line between the mark's ends, as deep as its length allows.
// Polish widens the footprint on every side.
//
// The second-order rules of each step are its first guess. With the wheel's
// radius R, depth d and the surface's curvatures κ along and across the cut:
// contact half-length a ≈ √(2d / (1/R + κ_along)), depth along the tails
// h(s) = d − s²/2 · (1/R + κ_along), half width by blade.halfWidth. The answer
// is where the wheel's surface meets the glass's.
func Cut(cone geometry.Cone, line Line, wheel Wheel, depth, polish float64) Groove {
	k := stroke{cone: cone, line: line, wheel: wheel, depth: depth}
	touch := !k.draw()
	if touch {
		k.line = line.chord()
		k.press()
	}
	g := Groove{Touch: touch, Length: k.line.Length(), Depth: k.depth, Asked: depth}
	g.Ends, _ = line.Ends()
	k.trace(&g, polish)
	g.Strain = k.strain(line, g)
	return g
}

// stroke is a wheel's way along a line: it is set down with its middle at
// first, carried to last, and lifted.
type stroke struct {
	cone        geometry.Cone
	line        Line
	wheel       Wheel
	depth       float64
	first, last float64
}

// at sets the wheel down at a distance along the line.
func (k *stroke) at(s float64) *placing {
	at, ahead := k.line.At(s)
	return place(k.cone, k.wheel.Radius, k.depth, at, ahead)
}

// draw finds where to set the wheel down and lift it so that its tails end
// where the line does. It reports whether the line is long enough.
func (k *stroke) draw() bool {
	length := k.line.Length()
	k.first, k.last = length/2, length/2
	middle := k.wheel.middle()
	if k.line.on == [2]bool{} && k.at(length/2).tail(k.depth) > 0.7*length {
		return false // far too short: no need to look closer
	}
	k.first, k.last = 0, length
	// The tail's length says where the wheel stands, and where it stands says,
	// on a taper or a bend, how long the tail is: it settles in a few rounds.
	for range 4 {
		first, last := 0.0, length
		if !k.line.on[0] {
			first = k.at(k.first).contact(middle, k.depth, -1)
		}
		if !k.line.on[1] {
			last -= k.at(k.last).contact(middle, k.depth, 1)
		}
		settled := math.Abs(first-k.first)+math.Abs(last-k.last) < 1e-4
		k.first, k.last = first, last
		if settled {
			break
		}
	}
	return k.first < k.last
}

// press finds the depth and the place at which one touch of the wheel makes a
// mark as long as the line: d ≈ L²/8 · (1/R + κ_along).
func (k *stroke) press() {
	length := k.line.Length()
	k.first = length / 2
	middle := k.wheel.middle()
	k.depth = length * length / 8 * (1/k.wheel.Radius + k.at(k.first).curve.along)
	for range 12 {
		p := k.at(k.first)
		behind, ahead := p.contact(middle, k.depth, -1), p.contact(middle, k.depth, 1)
		ratio := length / (behind + ahead)
		k.first = length * behind / (behind + ahead)
		k.depth *= ratio * ratio
		if math.Abs(ratio-1) < 1e-5 {
			break
		}
	}
	k.last = k.first
}
