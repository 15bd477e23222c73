package glass

import (
	"math"

	"gonum.org/v1/gonum/interp"

	"roundlay/geometry"
)

// square is the curve that lies one wall under the outside, measured square to it
// as calipers do. A point of it is found by the height on the outside that it lies
// opposite to. Beyond the first and the last station the outside runs on straight
// and the wall keeps its thickness.
type square struct {
	outside *geometry.Profile
	wall    interp.PiecewiseLinear
	factor  float64 // on the wall as measured
}

// spot is a place in the half-plane of radius and height.
type spot struct{ radius, height float64 }

// under returns the place opposite the outside at height z: the wall goes in by
// its cosine and, where the glass widens upwards, up by its sine.
func (s *square) under(z float64) spot {
	slope, wall := s.outside.Slope(z), s.factor*s.wall.Predict(z)
	cos := 1 / math.Sqrt(1+slope*slope)
	return spot{s.outside.Radius(z) - wall*cos, z + wall*slope*cos}
}

// span is a straight piece in place of the curve between two heights of the
// outside. bulge is the volume between the curve and the piece when both are turned
// about the axis, with the sign that turned gives it.
type span struct {
	from, to float64
	ends     [2]spot
	bulge    float64
}

// chordError is how far a straight piece may deviate from the curve, in mm, at its
// quarters, where it is checked. Between them the deviation stays below Stray.
const chordError = 0.0008

// Between two stations a curve that bends is halved at least fewestHalvings times,
// because its quarters could by chance all lie where it crosses its chord. It is
// halved at most maxHalvings times. Where the curve turns back on itself it slows
// down and a quarter covers less than minQuarter of the piece. Then the curve may
// deviate further between the quarters than at them, and it is halved again.
const (
	fewestHalvings = 3
	maxHalvings    = 12
	minQuarter     = 0.1
	straight       = 1e-9 // mm: a deviation that is only rounding
)

// spans adds straight pieces for the curve between two heights of the outside that
// have no station between them. On a straight outside that is a single piece.
func (s *square) spans(all []span, from, to float64) []span {
	middle := (from + to) / 2
	return s.halved(all, from, to, [3]spot{s.under(from), s.under(middle), s.under(to)}, maxHalvings)
}

func (s *square) halved(all []span, from, to float64, at [3]spot, halvings int) []span {
	first, middle, second := from+(to-from)/4, from+(to-from)/2, from+(to-from)*3/4
	low, high := s.under(first), s.under(second)
	worst, even, last := 0.0, true, 0.0
	for _, p := range [3]spot{low, at[1], high} {
		off, share := p.off(at[0], at[2])
		worst, even, last = max(worst, off), even && share-last > minQuarter, share
	}
	even = even && 1-last > minQuarter
	near := worst < chordError && even && halvings <= maxHalvings-fewestHalvings
	if worst < straight || near || halvings == 0 {
		bulge := turned(at[0], low) + turned(low, at[1]) + turned(at[1], high) + turned(high, at[2]) - turned(at[0], at[2])
		return append(all, span{from, to, [2]spot{at[0], at[2]}, bulge})
	}
	all = s.halved(all, from, middle, [3]spot{at[0], low, at[1]}, halvings-1)
	return s.halved(all, middle, to, [3]spot{at[1], high, at[2]}, halvings-1)
}

// off returns how far a place lies from the straight piece between two others, and
// where on the piece it is nearest, as a share.
func (p spot) off(a, b spot) (off, share float64) {
	along := spot{b.radius - a.radius, b.height - a.height}
	r, h := p.radius-a.radius, p.height-a.height
	if square := along.radius*along.radius + along.height*along.height; square > 0 {
		share = min(max((r*along.radius+h*along.height)/square, 0), 1)
	}
	return math.Hypot(r-share*along.radius, h-share*along.height), share
}

// turned returns the volume between the axis and a straight piece turned about it:
// that of a frustum, below zero where the piece goes down.
func turned(a, b spot) float64 {
	return math.Pi / 3 * (b.height - a.height) * (a.radius*a.radius + a.radius*b.radius + b.radius*b.radius)
}

// clipped returns the part of a piece that lies between two heights and on this side
// of the axis. It is false where there is none.
func (s span) clipped(low, high float64) (span, bool) {
	a, b := s.ends[0], s.ends[1]
	from, to := 0.0, 1.0
	for _, side := range [3][2]float64{
		{a.height - low, b.height - low}, {high - a.height, high - b.height}, {a.radius, b.radius},
	} {
		switch start, end := side[0], side[1]; {
		case start < 0 && end < 0:
			return span{}, false
		case start < 0:
			from = max(from, start/(start-end))
		case end < 0:
			to = min(to, start/(start-end))
		}
	}
	if from >= to {
		return span{}, false
	}
	if from == 0 && to == 1 {
		return s, true
	}
	cut := func(share float64) spot {
		p := spot{max(a.radius+share*(b.radius-a.radius), 0), a.height + share*(b.height-a.height)}
		const rounding = 1e-9 // mm
		switch {
		case p.height < low+rounding:
			p.height = low
		case p.height > high-rounding:
			p.height = high
		}
		return p
	}
	out := span{s.from, s.to, s.ends, s.bulge * (to - from)}
	if from > 0 {
		out.ends[0], out.from = cut(from), s.from+from*(s.to-s.from)
	}
	if to < 1 {
		out.ends[1], out.to = cut(to), s.from+to*(s.to-s.from)
	}
	return out, true
}
