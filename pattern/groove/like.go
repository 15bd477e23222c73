package groove

import "math"

// Range is all lengths between two, both included.
type Range struct{ Low, High float64 }

// Rounded returns the lengths of which a scale of a step shows the given one.
func Rounded(length, step float64) Range {
	return Range{max(length-step/2, shortest), length + step/2}
}

// with returns the least range that holds two.
func (r Range) with(o Range) Range { return Range{min(r.Low, o.Low), max(r.High, o.High)} }

// meets reports whether two ranges have a length in common.
func (r Range) meets(o Range) bool { return r.Low <= o.High && o.Low <= r.High }

// Likeness is what a wheel has to do with a mark whose length and width were read.
type Likeness struct {
	Fits bool // whether the wheel may have made it, within the readings
	// Widths are those of the wheel's own marks as long as the one that was read; both 0
	// where it makes none so long.
	Widths Range
	Depth  Range // of its marks that agree with both readings, where it fits
	// Bridges says that the wheel is too large for a hollow of the glass: see Made.
	Bridges bool
}

// Like compares the marks that a wheel makes at the site with one that was read.
func (s *Site) Like(wheel Wheel, length, width Range) Likeness {
	most := s.Longest(wheel)
	if length.Low > most {
		return Likeness{Bridges: most > 0 && s.pressed(wheel, most) <= 0}
	}
	length.High = min(length.High, most)
	short, _ := s.Mark(wheel, length.Low)
	long, whole := s.Mark(wheel, length.High)
	of := Likeness{Widths: Range{short.Width, long.Width}, Bridges: !whole}
	if !whole || !of.Widths.meets(width) {
		return of
	}
	if at, ok := s.LengthOfWidth(wheel, width.Low); ok {
		length.Low = max(length.Low, at)
	}
	if at, ok := s.LengthOfWidth(wheel, width.High); ok && long.Width > width.High {
		length.High = max(min(length.High, at), length.Low)
	}
	of.Fits, of.Depth = true, Range{s.pressed(wheel, length.Low), s.pressed(wheel, length.High)}
	return of
}

// Sizes are the sizes of a wheel that may have made a mark whose length and width were read.
type Sizes struct {
	Fits   bool  // whether any size may
	Radius Range // of the wheels that may
	Depth  Range // of the marks they would have made
	// Smallest and Largest say that the range ends there only because no smaller or no
	// larger wheel is looked at.
	Smallest, Largest bool
}

// LikeOfAny is Like for a wheel whose edge is known and whose size is not. It looks at radii
// within a range. Of marks of one length, those of a larger wheel are shallower and narrower,
// so that the readings' ends give the ends of what is asked.
func (s *Site) LikeOfAny(wheel Wheel, length, width, radii Range) Sizes {
	least, most := s.size(wheel, length.Low, width.High, radii), s.size(wheel, length.High, width.Low, radii)
	if least.radius > most.radius || !least.found && least.radius == radii.High || !most.found && most.radius == radii.Low {
		return Sizes{} // even the largest wheel's mark is too wide, or the smallest one's too narrow
	}
	of := Sizes{Radius: Range{least.radius, most.radius}, Smallest: !least.found, Largest: !most.found}
	of.Depth = Range{math.Inf(1), math.Inf(-1)}
	corners := []sizedMark{least, most, s.size(wheel, length.Low, width.Low, radii), s.size(wheel, length.High, width.High, radii)}
	for _, c := range corners {
		wheel.Radius = c.radius
		if c.exact {
			deep := s.pressed(wheel, c.length)
			of.Fits, of.Depth = true, of.Depth.with(Range{deep, deep})
		} else if like := s.Like(wheel, length, width); like.Fits {
			of.Fits, of.Depth = true, of.Depth.with(like.Depth)
		}
	}
	if !of.Fits {
		return Sizes{}
	}
	return of
}

// sizedMark is the size of wheel whose mark of a length has a width that is asked, or the
// nearest that is looked at.
type sizedMark struct {
	length, radius float64
	found          bool
	exact          bool // its mark has that width; elsewhere widths leap past it, or it finds no room
}

// size returns the size of wheel whose mark of a length has a width.
func (s *Site) size(wheel Wheel, length, width float64, radii Range) sizedMark {
	// Looked for by its root: small wheels lie closer together, and unlike a power of e
	// it is the same to the last digit on every processor.
	wider := func(root float64) float64 {
		wheel.Radius = root * root
		if !s.holds(wheel, length) {
			return math.Inf(1) // it would have to go too deep
		}
		mark, _ := s.Mark(wheel, length)
		return mark.Width - width
	}
	from, to := math.Sqrt(radii.Low), math.Sqrt(radii.High)
	switch {
	case wider(from) <= 0:
		return sizedMark{length: length, radius: radii.Low}
	case wider(to) > 0:
		return sizedMark{length: length, radius: radii.High}
	}
	const hair = 1e-4 // mm
	at := bisected(wider, from, to, 1)
	off := wider(at)
	return sizedMark{length, wheel.Radius, true, math.Abs(off) < hair}
}
