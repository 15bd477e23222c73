package strokes

import (
	"math"

	"roundlay/geometry"
)

// arc is an elliptical arc as path data gives it: by its ends, its radii, the turn
// of its axes in degrees, and which of the four arcs between the ends it is.
type arc struct {
	from, to     geometry.Point
	rx, ry, turn float64
	large, sweep bool
}

// ellipse is an ellipse by its centre, and an arc of it between two angles of its
// parameter.
type ellipse struct {
	centre   geometry.Point
	rx, ry   float64
	sin, cos float64 // of the turn of its axes
	from, by float64 // where the arc begins, and how far it goes: below zero against the sense of y down
}

// at returns the place at an angle and, by its derivative, the direction there.
func (e *ellipse) at(angle float64) (place, onward geometry.Point) {
	sin, cos := math.Sincos(angle)
	x, y := e.rx*cos, e.ry*sin
	dx, dy := -e.rx*sin, e.ry*cos
	place = geometry.Point{X: e.centre.X + e.cos*x - e.sin*y, Y: e.centre.Y + e.sin*x + e.cos*y}
	return place, geometry.Point{X: e.cos*dx - e.sin*dy, Y: e.sin*dx + e.cos*dy}
}

// arcPiece is the most of an ellipse that one cubic stands for. It then deviates by
// 4e-7 of the radius: 0.00004 mm on a glass 200 mm across.
const arcPiece = math.Pi / 6

// curves returns the arc as cubics, whose handles are 4/3 tan(piece/4) radii long.
func (e *ellipse) curves() []geometry.Bezier {
	n := max(1, int(math.Ceil(math.Abs(e.by)/arcPiece-1e-9)))
	piece := e.by / float64(n)
	k := 4.0 / 3 * math.Tan(piece/4)
	all := make([]geometry.Bezier, n)
	p, onward := e.at(e.from)
	for i := range all {
		q, next := e.at(e.from + piece*float64(i+1))
		all[i] = geometry.Bezier{
			p, {X: p.X + k*onward.X, Y: p.Y + k*onward.Y},
			{X: q.X - k*next.X, Y: q.Y - k*next.Y}, q,
		}
		p, onward = q, next
	}
	return all
}

// curves returns the arc as cubics that begin and end exactly at its ends. An arc
// with a radius of zero is a line, and one without length nothing (SVG 2, 9.5.1).
func (a arc) curves() []geometry.Bezier {
	chord := math.Hypot(a.to.X-a.from.X, a.to.Y-a.from.Y)
	if chord == 0 {
		return nil
	}
	// A radius far below the chord is drawn larger by a factor that no longer has an
	// exact square: the arc is the line to a millionth of a millionth.
	if math.Min(math.Abs(a.rx), math.Abs(a.ry)) < 1e-12*chord {
		return []geometry.Bezier{geometry.Line(a.from, a.to)}
	}
	e := a.ellipse()
	all := e.curves()
	all[0][0], all[len(all)-1][3] = a.from, a.to
	return all
}

// ellipse returns the arc by its centre: SVG 2, appendix B.2.4, whose names are kept.
func (a arc) ellipse() ellipse {
	rx, ry := math.Abs(a.rx), math.Abs(a.ry)
	sin, cos := math.Sincos(geometry.Degrees(math.Mod(a.turn, 360)).Radians())
	// Step 1: x1′, y1′.
	hx, hy := (a.from.X-a.to.X)/2, (a.from.Y-a.to.Y)/2
	x1, y1 := cos*hx+sin*hy, cos*hy-sin*hx
	// B.2.5: radii too small to reach both ends grow until they do.
	lambda := (x1/rx)*(x1/rx) + (y1/ry)*(y1/ry)
	if lambda > 1 {
		rx, ry = rx*math.Sqrt(lambda), ry*math.Sqrt(lambda)
	}
	// Step 2: cx′, cy′. In units of the radii the centre lies across the half chord
	// (u, v), so far off that it is one radius from the ends.
	u, v := x1/rx, y1/ry
	off := math.Sqrt(math.Max(0, 1/(u*u+v*v)-1))
	if lambda >= 1 {
		off = 0
	}
	if a.large == a.sweep {
		off = -off
	}
	cu, cv := off*v, -off*u
	e := ellipse{rx: rx, ry: ry, sin: sin, cos: cos}
	// Step 3: the centre.
	e.centre = geometry.Point{
		X: cos*cu*rx - sin*cv*ry + (a.from.X+a.to.X)/2,
		Y: sin*cu*rx + cos*cv*ry + (a.from.Y+a.to.Y)/2,
	}
	// Step 4: the angles of the two ends.
	e.from = math.Atan2(v-cv, u-cu)
	e.by = math.Mod(math.Atan2(-v-cv, -u-cu)-e.from, 2*math.Pi)
	if a.sweep && e.by < 0 {
		e.by += 2 * math.Pi
	} else if !a.sweep && e.by > 0 {
		e.by -= 2 * math.Pi
	}
	return e
}
