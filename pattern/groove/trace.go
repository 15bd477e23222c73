package groove

import (
	"math"

	"roundlay/geometry"
)

// trace measures the groove along the whole stroke and draws its footprint.
func (k *stroke) trace(g *Groove, polish float64) {
	k.measure()
	line := k.stations
	g.Samples = k.samples.take(len(line))
	for i := range line {
		k.sample(&g.Samples[i], &line[i])
	}
	if k.surface.Level() {
		unwind(g.Samples)
	}
	left := newRemains(k)
	g.Outlines = k.outlines.take(k.wheel.blades())[:0]
	for i := range k.wheel.blades() {
		b := k.wheel.blade(i)
		f := k.footprint(&b, line)
		if len(f) < 2 {
			continue // an outer mitre of a gang may not reach the glass
		}
		g.Volume += k.volume(&b, f)
		if k.inside != nil || !k.surface.Flat() || k.byHand() {
			left.footprint(&b, f)
		}
		g.Outlines = append(g.Outlines, k.outline(f, polish))
		if k.wheel.blades() == 1 {
			g.tips = k.tips(f, polish)
		}
		at := 0
		for j := range f {
			for at < len(line) && line[at].along < f[j].along {
				at++
			}
			if at < len(line) && line[at].along == f[j].along && !f[j].empty() {
				f[j].grow(&g.Samples[at], polish)
			}
		}
	}
	for i := range g.Samples {
		s := &g.Samples[i]
		g.Width = max(g.Width, s.Left+s.Right)
	}
	g.Bridge = k.spanning(g)
	g.Remains = left.refine()
	if k.about.Min < g.Remains.Min {
		g.Remains = k.about
	}
	g.Depth = max(g.Depth, left.deepest, k.deepest)
	if b := g.Bridge; b != nil {
		g.Depth = max(g.Depth, b.Depth)
		if b.Left < g.Remains.Min {
			g.Remains = Remains{b.Left, b.Theta, b.Height}
		}
	}
}

// tips returns the parts of a footprint beyond the ends of the line, nil for none.
func (k *stroke) tips(f footprint, polish float64) *[2][]Sample {
	var tips [2][]Sample
	first, last := k.stations[0].along, k.stations[len(k.stations)-1].along
	add := func(end int, x *section) {
		if x.empty() {
			return
		}
		on := x.across(0)
		at := x.chart(0)
		s := Sample{At: at, Theta: on.theta, Height: x.own.counted(on), Along: x.along - k.from}
		s.Left, s.Right = x.left+polish, polish-x.right
		s.LeftEdge, s.RightEdge = x.chart(s.Left), x.chart(-s.Right)
		tips[end] = append(tips[end], s)
	}
	for i := len(f) - 1; i >= 0; i-- {
		if f[i].along < first {
			add(0, &f[i])
		}
	}
	for i := range f {
		if f[i].along > last {
			add(1, &f[i])
		}
	}
	if tips[0] == nil && tips[1] == nil {
		return nil
	}
	return &tips
}

// station is a place where the groove is measured: on the line, or on a straight tail, where
// the wheel is set down or lifted.
type station struct {
	along float64 // the stroke
	own   *pose   // the wheel at its nearest; if it bridges a hollow, where it bites deepest here
	// The station in that wheel's coordinates and, on a curved glass, the heading to the
	// left from there, along which places beside the station are.
	ahead, aside float64
	way, rate    heading // rate is the way's at its start
}

// newStation returns the station at a distance ahead of a wheel and to its left.
func newStation(along float64, own *pose, ahead, aside float64) station {
	s := station{along: along, own: own, ahead: ahead, aside: aside}
	if !own.flat {
		s.way = own.straight(ahead).left()
		s.rate = s.way.rate(own.surface)
	}
	return s
}

// across returns the place on the glass at a distance to the left of the station.
func (s *station) across(left float64) spot {
	if s.own.flat {
		return s.own.spot(s.ahead, s.aside+left)
	}
	return s.way.straightOn(s.rate, s.own.surface, s.aside+left).spot(s.own.surface)
}

// chart returns that place on the chart.
func (s *station) chart(left float64) geometry.Point {
	if s.own.flat {
		return s.own.chart(s.ahead, s.aside+left)
	}
	at := s.across(left)
	return s.own.surface.ForwardAlong(at.theta, charted(s.own.surface, at.along))
}

// under returns the station at a distance along the stroke. It reuses the pose of the last
// neighbour if that is the right one.
func (k *stroke) under(s float64, neighbours []station) station {
	nearest := min(max(s, k.first), k.last)
	if k.bridges {
		return k.spanned(s)
	}
	if k.swells {
		return k.swelled(s, neighbours)
	}
	if n := len(neighbours); n > 0 && neighbours[n-1].own.stands == nearest {
		return newStation(s, neighbours[n-1].own, s-nearest, 0)
	}
	k.poses = append(k.poses, k.at(nearest))
	return newStation(s, &k.poses[len(k.poses)-1], s-nearest, 0)
}

// sample measures the depth at a station; the edges are added blade by blade.
func (k *stroke) sample(at *Sample, s *station) {
	place, on := s.chart(0), s.across(0)
	depth, _, _ := s.own.depthAt(&k.middle, on)
	if k.byHand() && !k.line.Straight() {
		depth = max(depth, k.deepestAt(on, s.along))
	}
	*at = Sample{
		At: place, Theta: on.theta, Height: s.own.counted(on), Along: s.along - k.from, Depth: depth,
		LeftEdge: place, RightEdge: place,
	}
}

// stray is the most that the straight edges of an outline may deviate from the footprint's
// true curve, in millimetres.
const stray = 0.003

// measure finds the stations along the stroke where the groove is measured: at most 1 mm
// apart, and in the tails close enough for straight edges between them to stay within stray
// of a plain footprint.
func (k *stroke) measure() {
	if k.byHand() {
		k.setDown(&k.middle)
	}
	const hair = 0.001 // mm: the tips themselves have no width to measure
	tip := min(hair, (k.to-k.from)/1000)
	from, to := k.from+tip, k.to-tip
	before, beyond, body := 0, 0, 0
	if !k.line.on[0] {
		before = k.parts(k.first - from)
	}
	if !k.line.on[1] {
		beyond = k.parts(to - k.last)
	}
	if k.last > k.first {
		body = int(math.Ceil(max(k.last-k.first, k.turns())))
	}
	all := k.stations[:0]
	add := func(s float64) { all = append(all, k.under(s, all)) }
	for i := before; i > 0; i-- {
		add(k.first - k.tail(i, before)*(k.first-from))
	}
	add(k.first)
	for i := 1; i <= body; i++ {
		add(k.first + (k.last-k.first)*float64(i)/float64(body))
	}
	for i := 1; i <= beyond; i++ {
		add(k.last + k.tail(i, beyond)*(to-k.last))
	}
	k.stations = all
}

// parts returns the number of parts that a tail of a given length is divided into.
func (k *stroke) parts(length float64) int {
	// A mitre's edge is a parabola of height wide: n even chords deviate by wide/(4n²).
	// Other edges are arcs of an ellipse, blunt at the tip: as many chords, spaced evenly in
	// angle, do as well.
	wide, _ := k.middle.halfWidth(k.depth, 0, 0, k.middle.face)
	if !k.middle.sharp() {
		length *= math.Pi / 2 // the first part of an arc is longer than its share
	}
	return int(math.Ceil(max(math.Sqrt(wide/(4*stray)), length, 1)))
}

// tail returns the share of a tail's length at which the i-th of its parts ends.
func (k *stroke) tail(i, parts int) float64 {
	share := float64(i) / float64(parts)
	if k.middle.sharp() {
		return share
	}
	return math.Sin(share * math.Pi / 2)
}

// turns returns the number of straight parts with which a curved line stays within stray.
func (k *stroke) turns() float64 {
	if k.line.Straight() {
		return 1
	}
	bend := 0.0
	for s := k.first; s < k.last; s++ {
		bend = max(bend, math.Abs(k.bend(s)))
	}
	return (k.last - k.first) * math.Sqrt(bend/(8*stray))
}
