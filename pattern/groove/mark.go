package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// Site is a place on a glass, and a direction there, at which single marks are made: a wheel
// is pressed in once and lifted, so that the mark's middle is at the place. Like a Cutter it
// is for one goroutine at a time.
type Site struct {
	cutter *Cutter
	own    pose // what stands there only shows places ahead and behind
}

// NewSite returns the site at a height of a glass, for marks that lean from upright to the
// right: by 0 for upright ones, by a right angle for level ones. inside may be nil, as for
// NewCutter.
func NewSite(outside *geometry.Surface, inside Inside, height, lean float64) *Site {
	along := outside.AlongAt(height)
	radius, _ := outside.At(along)
	right, up := outside.Compass(0)
	sin, cos := math.Sincos(lean)
	ahead := r2.Unit(r2.Add(r2.Scale(sin*outside.ChartRadius(along)/radius, right), r2.Scale(cos, up)))
	return &Site{
		cutter: NewCutter(outside, inside),
		own:    place(outside, 1, 0, outside.ForwardAlong(0, along), ahead),
	}
}

// NewStraightSite is NewSite on a straight glass of a radius that is so high that no mark
// comes near its ends. Its inside isn't known.
func NewStraightSite(radius, lean float64) (*Site, error) {
	const high = 4000 // mm
	profile, err := geometry.NewProfile([]geometry.Circle{{Radius: radius}, {Radius: radius, Height: high}})
	if err != nil {
		return nil, err
	}
	chart, _ := profile.FitCone(0, high)
	outside := geometry.NewSurface(profile, chart)
	return NewSite(&outside, nil, high/2, lean), nil
}

// ends returns the places half a length before and behind the site, along the glass.
func (s *Site) ends(length float64) [2]station {
	return [2]station{newStation(0, &s.own, -length/2, 0), newStation(0, &s.own, length/2, 0)}
}

// Calipered returns what calipers read of a length along the glass: the straight way between
// its ends.
func (s *Site) Calipered(length float64) float64 {
	ends := s.ends(length)
	return r3.Norm(r3.Sub(s.own.space(ends[0].across(0)), s.own.space(ends[1].across(0))))
}

// line returns the centre line of a mark of a length.
func (s *Site) line(length float64) Line {
	ends := s.ends(length)
	return NewLine([]geometry.Point{ends[0].chart(0), ends[1].chart(0)})
}

// pressed returns how deep a wheel is set down for a mark of a length: 0 or less where it is
// too large for a hollow there.
func (s *Site) pressed(wheel Wheel, length float64) float64 {
	l := s.cutter
	k := l.stroke(l.chord(l.laid(s.line(length))), wheel, 0)
	k.press()
	return k.depth
}

// Mark returns the mark of a length that a wheel makes, as deep as that length lets it. The
// length is at most Longest. ok is false where the wheel is too large for a hollow of the
// glass: it then rests on two places, and no length says how deep it is set.
func (s *Site) Mark(wheel Wheel, length float64) (mark Groove, ok bool) {
	depth := s.pressed(wheel, length)
	if !(depth > 0) {
		return Groove{}, false
	}
	const hair = 1e-9 // share of the depth: with a little more asked, it is one touch
	mark = s.cutter.Cut(s.line(length), wheel, depth*(1+hair), 0)
	mark.Asked = mark.Depth
	return mark, !mark.Bridges()
}

// shortest is the length, in millimetres, of the shortest mark that is looked for: finer than
// any scale shows.
const shortest = 0.01

// holds reports whether a mark of a length finds room: its ends are on the glass, and its
// depth is less than half the radius of the wheel and of the glass. A deeper one would be
// sawn, not cut.
func (s *Site) holds(wheel Wheel, length float64) bool {
	const hair = 1e-6 // mm
	for _, end := range s.ends(length) {
		if at := end.across(0); at.height < s.cutter.foot-hair || at.height > s.cutter.rim+hair || math.Abs(at.theta) > math.Pi/2 {
			return false
		}
	}
	return length < 2*wheel.Radius && s.pressed(wheel, length) < min(wheel.Radius, s.own.radius)/2
}

// Longest returns the length of the longest mark for which there is room; 0 where there is
// none for any.
func (s *Site) Longest(wheel Wheel) float64 {
	if !s.holds(wheel, shortest) {
		return 0
	}
	room := func(length float64) float64 {
		if s.holds(wheel, length) {
			return 1
		}
		return -1
	}
	from, to := shortest, 1.0
	for room(to) > 0 {
		from, to = to, 1.5*to
	}
	const hair = 1e-9 // what bisection leaves, as a share
	return bisected(room, from, to, 1) * (1 - hair)
}

// LengthOfDepth returns the length of the mark that is as deep as that; ok is false where the
// longest isn't, or where a wheel too large for a hollow sets no depth by its length.
func (s *Site) LengthOfDepth(wheel Wheel, depth float64) (length float64, ok bool) {
	return s.length(wheel, func(length float64) float64 { return depth - s.pressed(wheel, length) })
}

// LengthOfWidth returns the length of the shortest mark that is as wide as that; ok is false
// where none is.
func (s *Site) LengthOfWidth(wheel Wheel, width float64) (length float64, ok bool) {
	const hair = 1e-7 // mm: a flat edge and a buried wheel make marks of one width, to rounding
	return s.length(wheel, func(length float64) float64 {
		mark, _ := s.Mark(wheel, length)
		return width - hair - mark.Width
	})
}

// length returns the length at which what is still wanted comes to nothing.
func (s *Site) length(wheel Wheel, wanted func(length float64) float64) (length float64, ok bool) {
	most := s.Longest(wheel)
	if most <= shortest || wanted(shortest) <= 0 || wanted(most) > 0 {
		return 0, false
	}
	return bisected(wanted, shortest, most, 1), true
}

// Asked is what a mark is to have. One of them is above zero.
type Asked struct{ Length, Depth, Width float64 }

// Made is the mark of a wheel that has what was asked, or why there is none.
type Made struct {
	Mark Groove // if there is one
	None bool   // no mark of the wheel has it: Longest is the longest, empty if there is none
	// Bridges says that the wheel is too large for a hollow of the glass: it rests on two
	// places, and bites deeper than its mark would say.
	Bridges bool
	Longest Groove
}

// Make returns the mark of a wheel that has what is asked.
func (s *Site) Make(wheel Wheel, asked Asked) Made {
	most := s.Longest(wheel)
	length, ok := asked.Length, asked.Length <= most
	switch {
	case most < 2*shortest:
		return Made{None: true}
	case asked.Depth > 0:
		length, ok = s.LengthOfDepth(wheel, asked.Depth)
	case asked.Width > 0:
		length, ok = s.LengthOfWidth(wheel, asked.Width)
	}
	if !ok {
		longest, whole := s.Mark(wheel, most)
		return Made{None: true, Bridges: !whole, Longest: longest}
	}
	mark, whole := s.Mark(wheel, length)
	return Made{Mark: mark, Bridges: !whole}
}
