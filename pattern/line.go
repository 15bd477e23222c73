package pattern

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// line returns the centre line of a motif's cut on the chart. A straight cut
// runs straight on the glass too, and only its ends follow the taper; but a
// level one stays level all the way.
func (s *setting) line(c *motifs.Cut) groove.Line {
	if !s.bends(c) {
		return groove.NewLine([]geometry.Point{s.place(s.local(c.Path[0])), s.place(s.local(c.Path[3]))})
	}
	points := []geometry.Point{s.place(s.local(c.Path[0]))}
	for i := range c.Curves() {
		points = s.trace(points, c.Curve(i), leastParts(c.Curves()))
	}
	line := groove.NewLine(points)
	if c.Closed {
		return line.Closing()
	}
	return line
}

// leastParts returns in how many parts each curve of a line is taken at least: few where
// there are many curves, as each then turns little.
func leastParts(curves int) int {
	const least, most = 64, 8 // in all, and of one curve
	return min(max(least/curves, 1), most)
}

// trace adds the points of a curve but its first, which is there already. Points that
// are next to none apart have no direction between them, and are left out.
func (s *setting) trace(points []geometry.Point, curve *geometry.Bezier, least int) []geometry.Point {
	const (
		fine  = 0.25 // mm between the points of a curve
		most  = 4000
		apart = 1e-9 // mm
	)
	n := min(max(int(s.curveLength(curve)/fine), least), most)
	for i := range n {
		at := s.place(s.local(curve.At(float64(i+1) / float64(n))))
		if r2.Norm(r2.Sub(at, points[len(points)-1])) > apart {
			points = append(points, at)
		}
	}
	return points
}

// bends reports whether a cut's line is bent on the chart.
func (s *setting) bends(c *motifs.Cut) bool {
	level := math.Abs(s.local(c.Path[0]).Y-s.local(c.Path[3]).Y) < 1e-9
	return len(c.More) > 0 || !c.Path.Straight() || level && s.motif.Shape == job.Taper && !s.surface.Upright()
}

// length returns how long a cut's line is in its box, or a little more.
func (s *setting) length(c *motifs.Cut) float64 {
	sum := 0.0
	for i := range c.Curves() {
		sum += s.curveLength(c.Curve(i))
	}
	return sum
}

// curveLength returns the length of a curve's control polygon: the curve is no longer.
func (s *setting) curveLength(curve *geometry.Bezier) float64 {
	length := 0.0
	for k := range 3 {
		length += r2.Norm(r2.Sub(s.local(curve[k+1]), s.local(curve[k])))
	}
	return length
}
