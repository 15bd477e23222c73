package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// fine is the largest distance, in millimetres, between the points of a line on a curved
// glass.
const fine = 0.5

// laid returns a line of the chart with its lengths as on the glass. A straight line becomes
// the shortest way between its ends. If it is part of a longer cut it keeps the chart's
// direction instead, so that it meets the rest without a kink.
func (l *Cutter) laid(line Line) Line {
	if l.surface.Flat() {
		return line
	}
	if line.whole() {
		if straight, ok := l.straight(line); ok {
			return straight
		}
	}
	points := line.points
	if len(points) == 2 {
		n := int(math.Ceil(line.Length()/fine)) + 1
		points = make([]point, n+1)
		for i := range points {
			at, ahead := line.At(line.Length() * float64(i) / float64(n))
			points[i] = point{at: at, ahead: ahead}
		}
	}
	return Line{points: l.measured(points), on: line.on, closed: line.closed, hand: line.hand}
}

// measured returns points of the chart with their distances along the line as on the glass.
func (l *Cutter) measured(points []point) []point {
	out := make([]point, len(points))
	last := l.surface.Space(points[0].at)
	for i, p := range points {
		at := l.surface.Space(p.at)
		out[i] = p
		out[i].along = 0
		if i > 0 {
			out[i].along = out[i-1].along + r3.Norm(r3.Sub(at, last))
		}
		last = at
	}
	return out
}

// chord returns the straight line on the glass between the ends of a laid line. It doesn't
// run on at either end.
func (l *Cutter) chord(line Line) Line {
	if line.Straight() {
		return line.RunningOn(false, false)
	}
	ends := NewLine([]geometry.Point{line.start().at, line.end().at})
	ends.hand = line.hand
	if l.surface.Flat() {
		return ends
	}
	if straight, ok := l.straight(ends); ok {
		return straight
	}
	return line.RunningOn(false, false)
}

// straight returns the shortest way on the glass between the ends of a line of the chart.
// It shoots from one end at the other and corrects its aim by the effect of a small change.
// ok is false where this doesn't converge, as the ends are too far apart round the glass.
func (l *Cutter) straight(line Line) (way Line, ok bool) {
	const (
		near   = 1e-7 // mm
		little = 1e-4
	)
	start := place(l.surface, 1, 0, line.start().at, line.start().ahead)
	end := spotOf(l.surface, line.end().at)
	chart := Line{points: l.measured([]point{*line.start(), *line.end()})}
	aim, length := start.heading(), chart.Length()
	for range 30 {
		last := aim.straight(l.surface, length)
		on, aside := last.miss(end)
		if math.Abs(on) < near && math.Abs(aside) < near {
			way = l.charted(aim, length)
			way.hand = line.hand
			return way, true
		}
		other := aim
		other.psi += little
		_, then := other.straight(l.surface, length).miss(end)
		gain := (aside - then) / little // how far the aim moves the end aside
		if math.Abs(gain) < 0.05*length {
			gain = math.Copysign(0.05*length, gain)
		}
		length += on
		aim.psi += min(max(aside/gain, -0.5), 0.5)
		if !(length > near) || length > 4*chart.Length()+1 {
			break
		}
	}
	return Line{}, false
}

// miss returns how far ahead of a heading a place is, and how far to its right.
func (h heading) miss(at spot) (on, aside float64) {
	right, up := (at.theta-h.theta)*at.radius, at.along-h.along
	sin, cos := math.Sincos(h.psi)
	return right*sin + up*cos, right*cos - up*sin
}

// charted returns a straight way as a line of the chart.
func (l *Cutter) charted(from heading, length float64) Line {
	n := int(math.Ceil(length/fine)) + 1
	line := Line{points: make([]point, n+1), straight: true}
	h := from
	for i := range line.points {
		if i > 0 {
			h = h.straight(l.surface, length/float64(n))
		}
		radius, _ := l.surface.At(h.along)
		right, up := l.surface.Compass(h.theta)
		sin, cos := math.Sincos(h.psi)
		line.points[i] = point{
			at:    l.surface.ForwardAlong(h.theta, h.along),
			ahead: r2.Unit(r2.Add(r2.Scale(sin*l.surface.ChartRadius(h.along)/radius, right), r2.Scale(cos, up))),
			along: length * float64(i) / float64(n),
		}
	}
	return line
}

// bend returns the curvature of the stroke's line on the glass at a distance along it,
// positive where it turns left: the change of its angle from the profile, less the change
// of a straight line's.
func (k *stroke) bend(s float64) float64 {
	if k.line.Straight() || k.surface.Flat() {
		return k.line.Bend(s)
	}
	const h = 0.5 // mm
	from, to := max(s-h, 0), min(s+h, k.line.Length())
	a, b, p := k.at(from), k.at(to), k.at((from+to)/2)
	turn := math.Asin(min(max(b.sine*a.cosine-b.cosine*a.sine, -1), 1)) / (to - from)
	return -(turn + p.sine*p.sin/p.radius)
}
