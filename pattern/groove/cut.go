package groove

import (
	"math"

	"roundlay/geometry"
)

// Inside is the inner surface of the glass.
type Inside interface {
	// Distance returns the glass between a place in the glass, by radius and height, and
	// the inside: 0 or less where the place is not in the glass.
	Distance(radius, height float64) float64
	// Kinks returns the heights of the outside at which the wall changes suddenly, in
	// rising order: on a disc, the radii.
	Kinks() []float64
}

// Cutter cuts grooves in one glass, one at a time. It reuses its buffers from groove to
// groove, so each goroutine needs a Cutter of its own.
type Cutter struct {
	surface *geometry.Surface
	inside  Inside
	// The most by which the chart lengthens anything, as a factor, and the least curvature
	// of the profile.
	stretch, hollowest float64
	foot, rim          float64 // the heights between which there is glass
	wide               float64 // for a glass with a hollow: a radius larger than any of its own
	stations           []station
	poses              []pose
	sections           footprint
	strokes            [2]stroke // of the groove that is cut: drawn along, and pressed in
	// Memory that the grooves keep.
	samples  arena[Sample]
	points   arena[geometry.Point]
	outlines arena[geometry.Outline]
}

// NewCutter returns a cutter for a glass. inside may be nil: then it isn't known what glass
// the grooves leave.
func NewCutter(outside *geometry.Surface, inside Inside) *Cutter {
	l := &Cutter{
		surface: outside, inside: inside,
		stretch: outside.Stretch(0, outside.Length()), hollowest: outside.Hollowest(0, outside.Length()),
	}
	_, l.foot = outside.At(0)
	_, l.rim = outside.At(outside.Length())
	if outside.Level() {
		l.rim = math.Inf(1) // all of the glass is above it
	}
	if l.hollowest < 0 {
		for along := 0.0; along < outside.Length()+span; along += span {
			radius, _ := outside.At(along)
			l.wide = max(l.wide, radius+span) // it widens by no more than span to the next place
		}
	}
	return l
}

// Cut returns the groove that a wheel leaves along a line on the glass at a depth. The
// groove is as long as the line, tails included. Where the line is too short for the depth,
// the wheel is pressed in once, on the straight line between the line's ends, as deep as its
// length allows. Polish widens the footprint on every side. A line that is cut by hand swells
// and is rolled as its Hand says; a single touch keeps its own shape.
//
// Each step finds where the wheel's surface meets the glass's. Its first guess is a
// second-order rule. With the wheel's radius R, depth d and the surface's curvatures κ along
// and across the cut, the contact half-length is a ≈ √(2d / (1/R + κ_along)), the depth
// along the tails h(s) = d − s²/2 · (1/R + κ_along), and the half width blade.halfWidth.
func (l *Cutter) Cut(line Line, wheel Wheel, depth, polish float64) Groove {
	l.poses = l.poses[:0]
	asked := line
	if line.hand != nil {
		depth *= line.hand.greatest
	}
	line = l.laid(line)
	k, touch := l.set(line, wheel, depth)
	k.bridge()
	g := Groove{Touch: touch, Length: k.to - k.from, Depth: k.plunge(), Asked: depth, Plunge: k.plunge()}
	g.Line = asked
	g.RunsOn = (line.on[0] || line.on[1]) && !line.closed
	k.trace(&g, polish)
	g.WheelFit = k.wheelFit(line, g)
	return g
}

// set finds where a wheel is set down and lifted on a laid line, how deep it goes, and
// whether it is a touch or drawn along.
//
// The stroke is valid until the next call.
func (l *Cutter) set(line Line, wheel Wheel, depth float64) (k *stroke, touch bool) {
	k, pressed := &l.strokes[0], &l.strokes[1]
	*k = l.stroke(line, wheel, depth)
	if line.closed { // it has no two ends to press a wheel in between
		k.draw()
		k.swells = line.hand.swells()
		return k, false
	}
	*pressed = *k
	pressed.line = l.chord(line)
	pressed.press()
	// A whole straight line is too short to draw along exactly where one touch of its
	// length is less deep than asked.
	if line.hand.swells() {
		touch = !k.drawSwelled()
	} else {
		touch = line.whole() && pressed.depth < depth
		touch = touch || !k.draw()
	}
	if touch {
		k = pressed
	}
	if k.depth <= 0 {
		k.sink()
	}
	k.depth = min(k.depth, k.asked) // on a bend or over a hollow the mark may come out too short
	return k, touch
}

// stroke returns the stroke of a wheel along a laid line, before it is known where the
// wheel is set down.
func (l *Cutter) stroke(line Line, wheel Wheel, depth float64) stroke {
	k := stroke{Cutter: l, line: line, wheel: wheel, middle: wheel.middle(), depth: depth, asked: depth, about: Remains{Min: math.Inf(1)}}
	k.dip = k.dips()
	k.hollow = !l.surface.Flat() && 1/wheel.Radius+l.hollowest <= 0
	k.broad = !l.surface.Flat() && l.hollowest < 0 && (line.hand.rocks() || k.gape() > 0)
	return k
}

// Cut is Cutter.Cut for a single cut on a glass whose inside isn't known.
func Cut(outside *geometry.Surface, line Line, wheel Wheel, depth, polish float64) Groove {
	return NewCutter(outside, nil).Cut(line, wheel, depth, polish)
}

// arena hands out short slices of longer ones. When one is used up it makes the next, twice
// as long up to a limit.
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

// stroke is a wheel's way along a line: it is set down at first, drawn to last, and lifted.
type stroke struct {
	*Cutter
	line        Line // as it lies on the glass
	wheel       Wheel
	middle      blade
	depth       float64 // at its greatest
	swells      bool    // the depth changes along the stroke
	asked       float64
	first, last float64
	// from and to are where the groove begins and ends: with the line, unless a wheel that
	// bridges a hollow bites beyond it.
	from, to float64
	dip      float64 // how far the edge of a wheel that is rolled comes to lie below its deepest place
	hollow   bool    // somewhere the glass is as hollow as the wheel is round, or more
	broad    bool    // somewhere it is so hollow across that the wheel's edge may touch it before its line
	bridges  bool
	stands   []pose // if it bridges: the wheel all along the stroke
	wheels   []pose // by hand: the same, closer together
	// Found by looking at the whole wheel, where the glass is hollow enough: elsewhere is
	// the deepest bite outside the mark, about the least glass left anywhere, deepest the
	// greatest depth anywhere.
	elsewhere Bridge
	about     Remains
	deepest   float64
	// spots are, for each column of the wheel's edge, the places where it leaves least and
	// where it is deepest, of those looked at.
	spots []edgeSpot
	// latest is the last wheel set down on the line, if one is kept: see upright.
	latest pose
	kept   bool
}

// at sets the wheel down at a distance along the line.
func (k *stroke) at(s float64) pose {
	p := k.upright(s)
	if k.line.hand != nil {
		k.gesture(&p)
	}
	return p
}

// draw finds where to set the wheel down and lift it so that its tails end where the line
// does. It reports whether the line is long enough for that.
func (k *stroke) draw() bool {
	length := k.line.Length()
	// The tail runs straight from where the wheel stands to the end of the line.
	tail := func(end, side float64) float64 {
		stand := k.upright(end)
		guess, fall := stand.tail()
		bites := func(s float64) float64 {
			p := k.upright(end + side*s)
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

// press finds the depth and the place at which one touch of the wheel makes a mark as long
// as the line: there it meets both ends at the same depth.
func (k *stroke) press() {
	k.depth = 0
	length := k.line.Length()
	middle := k.upright(length / 2)
	start, end := spotOf(k.surface, k.line.start().at), spotOf(k.surface, k.line.end().at)
	needs := func(p *pose, q spot) float64 { deep, _, _ := p.bite(&k.middle, q); return -deep }
	tips := func(s float64) float64 {
		p := k.upright(s)
		return needs(&p, end) - needs(&p, start)
	}
	if k.hollow {
		k.first = crossing(tips, length)
	} else {
		k.first = root(tips, length/2, middle.stiff()*length)
	}
	k.first = min(max(k.first, 0), length)
	k.last = k.first
	p := k.upright(k.first)
	k.depth = (needs(&p, start) + needs(&p, end)) / 2
	k.from, k.to = 0, length
}
