package groove

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Line is the centre line of a cut on the chart, measured along its length.
type Line struct {
	points   []point
	straight bool    // on the glass, whatever it is on the chart
	on       [2]bool // whether the wheel comes from beyond the start, and continues past the end
	closed   bool    // it ends where it begins, and is cut all round
	hand     *gesture
}

// point is a point of a line, with its distance along the line and the unit direction there.
type point struct {
	at, ahead geometry.Point
	along     float64
}

// NewLine returns the line through the given places of the chart, at least two and all
// different. Two places make a line that is straight on the glass. A curved line needs
// places close together compared to the radius of its bends.
func NewLine(through []geometry.Point) Line {
	l := make([]point, len(through))
	last := len(l) - 1
	for i, at := range through {
		l[i] = point{at: at, ahead: r2.Unit(r2.Sub(through[min(i+1, last)], through[max(i-1, 0)]))}
		if i > 0 {
			l[i].along = l[i-1].along + r2.Norm(r2.Sub(at, through[i-1]))
		}
	}
	if last > 1 {
		// A chord at an end has turned only half of the way: add the other half.
		l[0].ahead = r2.Unit(r2.Sub(r2.Scale(2, l[0].ahead), l[1].ahead))
		l[last].ahead = r2.Unit(r2.Sub(r2.Scale(2, l[last].ahead), l[last-1].ahead))
	}
	return Line{points: l, straight: last == 1}
}

// start and end return the line's first and last point.
func (l Line) start() *point { return &l.points[0] }
func (l Line) end() *point   { return &l.points[len(l.points)-1] }

// Length returns the length of the line.
func (l Line) Length() float64 { return l.end().along }

// Straight reports whether the line has no bend.
func (l Line) Straight() bool { return l.straight }

// whole reports whether the line is straight and isn't part of a longer cut.
func (l Line) whole() bool { return l.Straight() && l.on == [2]bool{} }

// Closed reports whether the line ends where it begins, and is cut all round.
func (l Line) Closed() bool { return l.closed }

// At returns the point at a distance along the line and the unit direction there. Beyond
// its ends the line continues straight; a closed one goes round again.
func (l Line) At(s float64) (at, ahead geometry.Point) {
	if length := l.Length(); l.closed && (s < 0 || s > length) {
		s -= length * math.Floor(s/length)
	}
	switch start, end := l.start(), l.end(); {
	case len(l.points) == 2 || s <= 0:
		return r2.Add(start.at, r2.Scale(s, start.ahead)), start.ahead
	case s >= end.along:
		return r2.Add(end.at, r2.Scale(s-end.along, end.ahead)), end.ahead
	}
	i := sort.Search(len(l.points), func(i int) bool { return l.points[i].along >= s })
	a, b := &l.points[i-1], &l.points[i]
	t := (s - a.along) / (b.along - a.along)
	at = r2.Add(a.at, r2.Scale(t, r2.Sub(b.at, a.at)))
	return at, r2.Unit(r2.Add(r2.Scale(1-t, a.ahead), r2.Scale(t, b.ahead)))
}

// Bend returns the curvature of the line at a distance along it, positive where
// it turns to the left.
func (l Line) Bend(s float64) float64 {
	if l.Straight() {
		return 0
	}
	const h = 0.5 // mm
	from, to := max(s-h, 0), min(s+h, l.Length())
	_, a := l.At(from)
	_, b := l.At(to)
	return math.Asin(min(max(r2.Cross(a, b), -1), 1)) / (to - from)
}

// RunningOn returns the line as part of a longer cut: the wheel comes from beyond its start,
// continues past its end, or both. It leaves no tail there.
func (l Line) RunningOn(start, end bool) Line {
	l.on = [2]bool{start, end}
	return l
}

// Closing returns a line that ends where it begins as one that is cut all round: the wheel
// isn't lifted there, and leaves no tail.
func (l Line) Closing() Line {
	ahead := r2.Unit(r2.Add(l.start().ahead, l.end().ahead))
	l.points = append([]point(nil), l.points...)
	l.start().ahead, l.end().ahead = ahead, ahead
	l.on, l.closed = [2]bool{true, true}, true
	return l
}

// Ends returns the line's ends, and the unit directions out of them.
func (l Line) Ends() (at, out [2]geometry.Point) {
	start, end := l.start(), l.end()
	return [2]geometry.Point{start.at, end.at}, [2]geometry.Point{r2.Scale(-1, start.ahead), end.ahead}
}

// moved returns the line moved by a motion of the chart.
func (l Line) moved(m geometry.Motion) Line {
	points := make([]point, len(l.points))
	swing := geometry.Motion{Cos: m.Cos, Sin: m.Sin}
	for i, p := range l.points {
		points[i] = point{m.Apply(p.at), swing.Apply(p.ahead), p.along}
	}
	l.points = points
	return l
}
