package groove

import (
	"math"

	"roundlay/geometry"
)

// Inside is the surface inside the glass, as far as a groove asks for it.
type Inside interface {
	// Distance returns how much glass lies between a place in the glass, by its
	// radius and its height, and the inside: none or less where there is none.
	Distance(radius, height float64) float64
	// Kinks returns the heights, as places of the outside, at which the glass
	// between it and the inside changes suddenly, in rising order.
	Kinks() []float64
}

// Cutter holds a glass to the wheel. It cuts one groove at a time, and has room
// for what is measured along it, used again for the next: processors that cut
// the same glass have a cutter each.
type Cutter struct {
	surface *geometry.Surface
	inside  Inside
	// How much longer the chart makes anything at most, and the least curvature of
	// the profile.
	stretch, hollowest float64
	// Of a glass with a hollow: where it begins and ends, and a radius that it nowhere
	// comes to.
	foot, rim, wide float64
	stations        []station
	poses           []pose
	sections        footprint
	// What the grooves keep.
	samples  arena[Sample]
	points   arena[geometry.Point]
	outlines arena[geometry.Outline]
}

// NewCutter returns a cutter that holds a glass by its outside and its inside:
// without one, nil, grooves don't know what glass they leave.
func NewCutter(outside *geometry.Surface, inside Inside) *Cutter {
	l := &Cutter{
		surface: outside, inside: inside,
		stretch: outside.Stretch(0, outside.Length()), hollowest: outside.Hollowest(0, outside.Length()),
	}
	if l.hollowest < 0 {
		_, l.foot = outside.At(0)
		_, l.rim = outside.At(outside.Length())
		for along := 0.0; along < outside.Length()+span; along += span {
			radius, _ := outside.At(along)
			l.wide = max(l.wide, radius+span) // it widens by no more from one place to the next
		}
	}
	return l
}

// Cut returns the groove that a wheel leaves along a line on the glass when it
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
func (l *Cutter) Cut(line Line, wheel Wheel, depth, polish float64) Groove {
	l.poses = l.poses[:0]
	asked := line
	line = l.laid(line)
	k, touch := l.set(line, wheel, depth)
	k.bridge()
	g := Groove{Touch: touch, Length: k.to - k.from, Depth: k.depth, Asked: depth}
	g.Line = asked
	g.Ends, _ = asked.Ends()
	g.RunsOn = line.on[0] || line.on[1]
	k.trace(&g, polish)
	g.WheelFit = k.wheelFit(line, g)
	return g
}

// set finds where a wheel is set down and lifted on a line that is laid on the
// glass, and how deep it goes: a touch, or drawn along.
func (l *Cutter) set(line Line, wheel Wheel, depth float64) (k stroke, touch bool) {
	k = stroke{Cutter: l, line: line, wheel: wheel, middle: wheel.middle(), depth: depth, asked: depth, about: Remains{Min: math.Inf(1)}}
	k.hollow = !l.surface.Flat() && 1/wheel.Radius+l.hollowest <= 0
	k.broad = !l.surface.Flat() && l.hollowest < 0 && k.gape() > 0
	pressed := k
	pressed.line = l.chord(line)
	pressed.press()
	// A straight line, all of it, is too short to draw along just where one touch
	// as long as it is not as deep.
	touch = line.whole() && pressed.depth < depth
	if touch = touch || !k.draw(); touch {
		k = pressed
	}
	if k.depth <= 0 {
		k.sink()
	}
	k.depth = min(k.depth, k.asked) // a mark on a bend or over a hollow may be left too short
	return k, touch
}

// Cut returns the groove of a single cut on a glass without an inside: see
// Cutter.Cut.
func Cut(outside *geometry.Surface, line Line, wheel Wheel, depth, polish float64) Groove {
	return NewCutter(outside, nil).Cut(line, wheel, depth, polish)
}

// arena hands out short runs from longer ones, which are made anew as they are
// used up: twice as long each time, up to a point.
type arena[T any] struct {
	left []T
	made int
}

func (s *arena[T]) take(n int) []T {
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
	*Cutter
	line        Line // as it lies on the glass
	wheel       Wheel
	middle      blade
	depth       float64
	asked       float64
	first, last float64
	// from and to are where the groove begins and ends: with the line, but where a
	// wheel that bridges a hollow bites beyond it.
	from, to float64
	hollow   bool // somewhere the glass is as hollow as the wheel is round, or more
	broad    bool // or so hollow that the wheel's edge may touch it before its line does
	bridges  bool
	stands   []pose // where it bridges: the wheel all along the stroke
	// elsewhere is what the wheel bites apart from its mark, about the least it
	// leaves anywhere, where the glass is so hollow that it was looked at all over.
	// deepest is how deep it bites there, at the most.
	elsewhere Bridge
	about     Remains
	deepest   float64
	// spots are where, of the places looked at, each column of the wheel's edge leaves
	// least, and where it is deepest.
	spots []edgeSpot
}

// at sets the wheel down at a distance along the line.
func (k *stroke) at(s float64) pose {
	at, ahead := k.line.At(s)
	p := place(k.surface, k.wheel.Radius, k.depth, at, ahead)
	p.stands = s
	return p
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
		bites := func(s float64) float64 {
			p := k.at(end + side*s)
			return p.inside(&k.middle, p.spot(-side*s, 0))
		}
		if k.hollow {
			return leaves(bites, length)
		}
		return root(bites, guess, fall)
	}
	k.first, k.last = 0, length
	if !k.line.on[0] {
		k.first = tail(0, 1)
	}
	if !k.line.on[1] {
		k.last -= tail(length, -1)
	}
	k.from, k.to = 0, length
	return k.first < k.last
}

// press finds the depth and the place at which one touch of the wheel makes a
// mark as long as the line: where it meets both ends at the same depth.
func (k *stroke) press() {
	k.depth = 0
	length := k.line.Length()
	middle := k.at(length / 2)
	start, end := spotOf(k.surface, k.line.start().at), spotOf(k.surface, k.line.end().at)
	needs := func(p *pose, q spot) float64 { deep, _, _ := p.bite(&k.middle, q); return -deep }
	tips := func(s float64) float64 {
		p := k.at(s)
		return needs(&p, end) - needs(&p, start)
	}
	if k.hollow {
		k.first = crossing(tips, length)
	} else {
		k.first = root(tips, length/2, middle.stiff()*length)
	}
	k.first = min(max(k.first, 0), length)
	k.last = k.first
	p := k.at(k.first)
	k.depth = (needs(&p, start) + needs(&p, end)) / 2
	k.from, k.to = 0, length
}
