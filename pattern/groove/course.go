package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// fine is how far apart, at most, the points of a line lie that is laid on a
// curved glass, in millimetres.
const fine = 0.5

// laid returns a line of the chart as it lies on the glass, measured there. A
// straight one is the shortest way between its ends; where it is part of a longer
// cut it keeps the chart's direction, so that it meets the rest without a kink.
func (l *Lathe) laid(line Line) Line {
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
	return Line{points: l.measured(points), on: line.on}
}

// measured returns points of the chart with the distances between them as they
// are on the glass.
func (l *Lathe) measured(points []point) []point {
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

// chord returns the straight line on the glass between the ends of a line that
// is laid on it, running on beyond neither.
func (l *Lathe) chord(line Line) Line {
	if line.Straight() {
		return line.RunningOn(false, false)
	}
	ends := NewLine([]geometry.Point{line.start().at, line.end().at})
	if l.surface.Flat() {
		return ends
	}
	if straight, ok := l.straight(ends); ok {
		return straight
	}
	return line.RunningOn(false, false)
}

// heading is a place on the glass and the way a line goes from there: the angle ψ
// from the profile, to the right.
type heading struct{ theta, along, psi float64 }

// straight returns the shortest way on the glass between the ends of a line of
// the chart, found by setting out from the one and correcting the aim. It is not
// ok where the ends lie so far round each other that the aim does not settle.
func (l *Lathe) straight(line Line) (way Line, ok bool) {
	start := place(l.surface, 1, 0, line.start().at, line.start().ahead)
	end := spotOf(l.surface, line.end().at)
	chart := Line{points: l.measured([]point{*line.start(), *line.end()})}
	length, psi := chart.Length(), math.Atan2(start.sine, start.cosine)
	const near = 1e-7 // mm
	for range 30 {
		n := int(math.Ceil(length/fine)) + 1
		path := l.geodesic(heading{start.theta, start.along, psi}, length, n)
		last := path[n]
		right, up := (end.theta-last.theta)*end.radius, end.along-last.along
		sin, cos := math.Sincos(last.psi)
		on, aside := right*sin+up*cos, right*cos-up*sin
		if math.Abs(on) < near && math.Abs(aside) < near {
			return l.charted(path, length), true
		}
		length += on
		psi += aside / length
		if !(length > near) || length > 4*chart.Length()+1 {
			break
		}
	}
	return Line{}, false
}

// geodesic returns n+1 places, evenly apart, of the line that runs straight on
// from a heading. By Clairaut's relation r·sin ψ does not change along it: it is
// the equation θ′ = sin ψ/r, s′ = cos ψ, ψ′ = −sin α sin ψ/r, stepped by the rule of
// Runge and Kutta.
func (l *Lathe) geodesic(from heading, length float64, n int) []heading {
	rate := func(h heading) heading {
		radius, _ := l.surface.At(h.along)
		lean, _, _ := l.surface.Lean(h.along)
		sin, cos := math.Sincos(h.psi)
		return heading{sin / radius, cos, -lean * sin / radius}
	}
	on := func(h, by heading, step float64) heading {
		return heading{h.theta + step*by.theta, h.along + step*by.along, h.psi + step*by.psi}
	}
	path := make([]heading, n+1)
	path[0] = from
	step := length / float64(n)
	for i := range n {
		h := path[i]
		a := rate(h)
		b := rate(on(h, a, step/2))
		c := rate(on(h, b, step/2))
		d := rate(on(h, c, step))
		path[i+1] = on(on(on(on(h, a, step/6), b, step/3), c, step/3), d, step/6)
	}
	return path
}

// charted returns a straight way as a line of the chart.
func (l *Lathe) charted(path []heading, length float64) Line {
	line := Line{points: make([]point, len(path)), straight: true}
	for i, h := range path {
		radius, _ := l.surface.At(h.along)
		right, up := l.surface.Compass(h.theta)
		sin, cos := math.Sincos(h.psi)
		line.points[i] = point{
			at:    l.surface.Place(h.theta, h.along),
			ahead: r2.Unit(r2.Add(r2.Scale(sin*l.surface.ChartRadius(h.along)/radius, right), r2.Scale(cos, up))),
			along: length * float64(i) / float64(len(path)-1),
		}
	}
	return line
}

// bend returns how the stroke's line curves on the glass at a distance along it,
// positive where it turns to the left: how its angle from the profile changes,
// less what a straight line's does.
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
