package wrap

import (
	"math"

	"roundlay/geometry"
)

// Sizes of what is drawn on paper, in millimetres.
const (
	tabWidth = 8.0
	tabShows = 6.5 // of the tab: what the other end shows goes on under it, to meet it by
	overlap  = 6.0 // what a piece shows of its neighbour beyond a match line
	hinge    = 0.1 // gores closer to each other than this are left uncut
)

// piece is one part of a sheet that is printed in one: all of it, or some of its
// repeats or gores. Its angles and heights are those of its own paper; beyond
// them it shows a little of its neighbours.
type piece struct {
	paper           int     // which of the sheet's papers it is of, from 1
	number          int     // which piece of that, from 1
	from, to        float64 // angles
	low, high       float64 // heights
	first, last     bool    // whether its left and its right edge are the paper's own
	lowest, highest bool    // likewise its lower and its upper edge
	// How many rows and columns its paper was cut into.
	rows, columns int
}

// middle returns the angle halfway between the piece's edges.
func (p piece) middle() float64 { return (p.from + p.to) / 2 }

// flat lays places of the glass on paper.
type flat interface {
	Forward(theta, z float64) geometry.Point
	RadiusAt(z float64) float64
}

// strip is a part of a piece that lies flat by itself: all of it on a cone, else
// one gore. The line up its middle, or up the middle of its piece, is upright.
type strip struct {
	piece
	on     flat
	centre float64         // the angle that on counts from
	place  geometry.Motion // from its own flat map to that of the piece
	leads  bool            // whether it is the first of its piece
}

// at returns the place on paper of a point of the glass.
func (s strip) at(theta, z float64) geometry.Point {
	return s.place.Apply(s.on.Forward(theta-s.centre, z))
}

// onEdge reports whether a line up the glass at an angle would lie on the left or
// the right edge of the strip, or too near to see the difference.
func (s strip) onEdge(theta float64) bool {
	const near = 0.5 // mm
	return min(math.Abs(theta-s.from), math.Abs(theta-s.to))*s.widest() < near
}

// beside returns the place on paper that is some millimetres round from a point.
func (s strip) beside(theta, z, mm float64) geometry.Point {
	return s.at(theta+mm/s.on.RadiusAt(z), z)
}

// tilt returns how far words set level at a place lean.
func (s strip) tilt(theta, z float64) float64 {
	const near = 1e-4
	a, b := s.at(theta-near, z), s.at(theta+near, z)
	return math.Atan2(b.Y-a.Y, b.X-a.X)
}

// spacing is the distance between the points of lines that bend on paper, small
// enough to stay within drawing.Flatness of the true line on any glass.
const spacing = 0.5

// level returns the line round the glass at a height, between two angles.
func (s strip) level(from, to, z float64) []geometry.Point {
	n := max(1, int(math.Ceil(math.Abs(to-from)*s.on.RadiusAt(z)/spacing)))
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.at(from+(to-from)*float64(i)/float64(n), z)
	}
	return points
}

// upright returns the line up the glass at an angle, between two heights.
func (s strip) upright(theta, low, high float64) []geometry.Point {
	n := max(1, int(math.Ceil((high-low)/spacing)))
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.at(theta, low+(high-low)*float64(i)/float64(n))
	}
	return points
}

// region returns the outline of the part between two angles and two heights. A
// gore's edges bend, and the region follows them.
func (s strip) region(from, to, low, high float64) []geometry.Point {
	outline := s.level(from, to, low)
	outline = append(outline, s.upright(to, low, high)...)
	outline = append(outline, reversed(s.level(from, to, high))...)
	return append(outline, reversed(s.upright(from, low, high))...)
}

// widest returns the greatest radius of the strip's paper.
func (s strip) widest() float64 { return max(s.on.RadiusAt(s.low), s.on.RadiusAt(s.high)) }

// shown is the part of the glass that a strip shows: its own, and a little of
// what lies beyond the edges that are not the paper's own.
func (s strip) shown(beyondLeft, beyondRight float64) (from, to, low, high float64) {
	from, to = s.from-beyondLeft/s.widest(), s.to+beyondRight/s.widest()
	low, high = s.low, s.high
	if !s.lowest {
		low -= overlap
	}
	if !s.highest {
		high += overlap
	}
	return from, to, low, high
}
