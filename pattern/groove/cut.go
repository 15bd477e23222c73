package groove

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Lathe holds a glass to the wheel. It cuts one groove at a time, and has room
// for what is measured along it, used again for the next: processors that cut
// the same glass have a lathe each.
type Lathe struct {
	surface  surface
	stations []station
	placings []placing
	sections footprint
	// What the grooves keep.
	samples  stock[Sample]
	points   stock[geometry.Point]
	outlines stock[geometry.Outline]
}

// NewLathe returns a lathe that holds a cone.
func NewLathe(cone geometry.Cone) *Lathe { return &Lathe{surface: newSurface(cone)} }

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
func (l *Lathe) Cut(line Line, wheel Wheel, depth, polish float64) Groove {
	l.placings = l.placings[:0]
	k := stroke{Lathe: l, line: line, wheel: wheel, middle: wheel.middle(), depth: depth}
	pressed := k
	pressed.line = line.chord()
	pressed.press()
	// A straight line, all of it, is too short to draw along just where one touch
	// as long as it is not as deep.
	touch := line.whole() && pressed.depth < depth
	if touch = touch || !k.draw(); touch {
		k = pressed
	}
	g := Groove{Touch: touch, Length: k.line.Length(), Depth: k.depth, Asked: depth}
	g.Ends, _ = line.Ends()
	g.RunsOn = line.on[0] || line.on[1]
	k.trace(&g, polish)
	g.Strain = k.strain(line, g)
	return g
}

// Cut returns the groove of a single cut: see Lathe.Cut.
func Cut(cone geometry.Cone, line Line, wheel Wheel, depth, polish float64) Groove {
	return NewLathe(cone).Cut(line, wheel, depth, polish)
}

// stock hands out short runs from longer ones, which are made anew as they are
// used up: twice as long each time, up to a point.
type stock[T any] struct {
	left []T
	made int
}

func (s *stock[T]) take(n int) []T {
	const most = 1024
	if len(s.left) < n {
		s.made = max(n, min(2*s.made, most))
		s.left = make([]T, s.made)
	}
	run := s.left[:n:n]
	s.left = s.left[n:]
	return run
}

// stroke is a wheel's way along a line: it is set down at first, carried to
// last, and lifted.
type stroke struct {
	*Lathe
	line        Line
	wheel       Wheel
	middle      blade
	depth       float64
	first, last float64
}

// at sets the wheel down at a distance along the line.
func (k *stroke) at(s float64) placing {
	at, ahead := k.line.At(s)
	return k.surface.place(k.wheel.Radius, k.depth, at, ahead)
}

// draw finds where to set the wheel down and lift it so that its tails end
// where the line does. It reports whether the line is long enough.
func (k *stroke) draw() bool {
	length := k.line.Length()
	// The tail runs straight out from where the wheel stands, as long as that is
	// from the end of the line.
	tail := func(end, side float64) float64 {
		stand := k.at(end)
		guess, fall := stand.tail()
		return root(func(s float64) float64 {
			p := k.at(end + side*s)
			return p.inside(&k.middle, r2.Sub(p.at, r2.Scale(side*s, p.ahead)))
		}, guess, fall)
	}
	k.first, k.last = 0, length
	if !k.line.on[0] {
		k.first = tail(0, 1)
	}
	if !k.line.on[1] {
		k.last -= tail(length, -1)
	}
	return k.first < k.last
}

// press finds the depth and the place at which one touch of the wheel makes a
// mark as long as the line: where it meets both ends at the same depth.
func (k *stroke) press() {
	k.depth = 0
	length := k.line.Length()
	start, _ := k.line.At(0)
	end, _ := k.line.At(length)
	needs := func(p *placing, q geometry.Point) float64 { deep, _, _ := p.bite(&k.middle, q); return -deep }
	middle := k.at(length / 2)
	k.first = root(func(s float64) float64 {
		p := k.at(s)
		return needs(&p, end) - needs(&p, start)
	}, length/2, middle.stiff()*length)
	k.last = k.first
	p := k.at(k.first)
	k.depth = (needs(&p, start) + needs(&p, end)) / 2
}
