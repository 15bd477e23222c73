// Package groove computes what a cutting wheel does to glass: the groove that a Wheel leaves
// when it is pressed in, or drawn along a Line, on a round surface. The groove is the
// intersection of the two solids, wheel and glass.
//
// For a single cut call Cut, with a Line from NewLine. For many cuts on one glass, or to
// know the glass left under them, make a NewCutter and call its Cut. The Groove says how
// deep, long and wide the cut is, what it leaves, and what its wheel couldn't do: Short,
// Bridges and WheelFit.
package groove

import "math"

// Edge is the shape a wheel's rim is dressed to.
type Edge int

// The edges used in the trade.
const (
	Mitre Edge = iota // V-shaped
	Round             // convex
	Flat              // square across
	Gang              // several mitres side by side
)

// Edges lists the names of the edges as written in a job, in order.
func Edges() []string { return []string{"mitre", "round", "flat", "gang"} }

// String returns the edge's name in a job.
func (e Edge) String() string { return Edges()[e] }

// Wheel is one cutting wheel, in millimetres and radians. Its rim is a body of revolution
// about the axle.
type Wheel struct {
	Name   string
	Edge   Edge
	Radius float64 // at the rim's highest line
	Thick  float64 // from face to face; a flat edge is this wide

	Angle float64 // mitre and gang: the included angle of the V
	// The point of a V can be dressed to a flat, Tip wide, or to a round of radius
	// TipRadius. At most one of them is above zero.
	Tip, TipRadius float64
	Convex         float64 // round: the radius of the edge
	Mitres         int     // gang: how many
	Spacing        float64 // gang: from one mitre's line to the next

	Rate float64 // groove cut with it in a minute; 0 where it isn't known
	Wear Wear
}

// Drop returns how far the wheel's edge falls short of its full radius at an offset along
// the axle from its middle plane: +Inf past the faces.
func (w Wheel) Drop(offset float64) float64 {
	b := math.Abs(offset)
	if b > w.Thick/2 {
		return math.Inf(1)
	}
	switch w.Edge {
	case Flat:
		return 0
	case Round:
		if b >= w.Convex {
			return math.Inf(1)
		}
		return w.Convex - math.Sqrt(w.Convex*w.Convex-b*b)
	case Gang:
		// Fold the offset onto the nearest mitre.
		half := float64(w.Mitres-1) / 2
		n := math.Min(math.Round(b/w.Spacing+half), float64(w.Mitres-1))
		b = math.Abs(b - (n-half)*w.Spacing)
	}
	return w.vee(b)
}

// vee returns how far the V's edge falls short of its tip at an offset from its
// line.
func (w Wheel) vee(b float64) float64 {
	sin, cos := math.Sincos(w.Angle / 2)
	switch {
	case b <= w.Tip/2:
		return 0
	case b < w.TipRadius*cos:
		return w.TipRadius - math.Sqrt(w.TipRadius*w.TipRadius-b*b)
	}
	// The flanks of a rounded tip would meet this far beyond it.
	return (b-w.Tip/2)*cos/sin - w.TipRadius*(1/sin-1)
}

// MaxDepth returns the greatest depth at which the wheel cuts with its edge alone on a flat
// surface. Any deeper, its shoulders are buried.
func (w Wheel) MaxDepth() float64 {
	switch w.Edge {
	case Mitre:
		return w.vee(w.Thick / 2)
	case Gang:
		return w.vee((w.Thick - float64(w.Mitres-1)*w.Spacing) / 2)
	case Round:
		b := math.Min(w.Thick/2, w.Convex)
		return w.Convex - math.Sqrt(w.Convex*w.Convex-b*b)
	}
	return math.Inf(1) // a flat wheel's faces are parallel: depth buries nothing
}
