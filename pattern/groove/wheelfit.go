package groove

import (
	"math"
)

// WheelFit is what a cut asks of its wheel beyond what the wheel can do cleanly.
type WheelFit struct {
	// Buried is how far the wheel's shoulders, where its edge ends at its faces,
	// go below the surface; 0 or less where only the edge cuts.
	Buried float64
	// Sweep is how far the ends of the contact stand off a bent centre line, at
	// its tightest, k a²/2 for a curvature k and a contact half-length a; Share
	// is that as a share of the groove's half width there.
	Sweep, Share float64
	// Bend and Contact are the k and the a of that place, At how far along it is.
	Bend, Contact, At float64
}

// WheelFor returns the radius of the largest wheel whose contact would stand off
// the line by no more than a share, and CurveFor the radius of the tightest bend
// that would do under this wheel. Depth and width stay as they are.
func (g Groove) WheelFor(wheel Wheel, share float64) float64 {
	contact2 := g.WheelFit.Contact * g.WheelFit.Contact
	along := 2*g.Depth/contact2 - 1/wheel.Radius
	return 1 / (2*g.Depth/(contact2*share/g.WheelFit.Share) - along)
}

// CurveFor is described with WheelFor.
func (g Groove) CurveFor(share float64) float64 { return g.WheelFit.Share / share / g.WheelFit.Bend }

// wheelFit measures the stroke against its wheel. asked is the line as it was
// asked for: a touch leaves a straight mark, and cannot follow a bend at all.
func (k *stroke) wheelFit(asked Line, g Groove) WheelFit {
	var s WheelFit
	s.Buried = k.buried()
	if asked.Straight() {
		return s
	}
	half := g.Width / 2
	if g.Touch {
		half = g.Width // nothing is swept: the mark only runs straight where the line does not
	}
	line := *k
	line.line = asked
	for at := 0.0; at <= asked.Length(); at += 0.5 {
		q, ahead := asked.At(at)
		p := place(k.surface, k.wheel.Radius, k.depth, q, ahead)
		tail, _ := p.tail()
		contact := min(tail, asked.Length()/2)
		bend := math.Abs(line.bend(at))
		if sweep := bend * contact * contact / 2; sweep > s.Sweep {
			s.Sweep, s.Bend, s.Contact, s.At = sweep, bend, contact, at
			if half > 0 { // or it cuts nothing
				s.Share = sweep / half
			}
		}
	}
	return s
}

// buried returns how far the wheel's shoulders are below the surface where it
// stands in the middle of its stroke. A flat wheel has none: its faces are
// parallel, and depth buries nothing.
func (k *stroke) buried() float64 {
	if k.wheel.Edge == Flat {
		return 0
	}
	p := k.at((k.first + k.last) / 2)
	worst := math.Inf(-1)
	rim := blade{face: math.Inf(1)}
	for _, side := range []float64{-1, 1} {
		// A place on the surface hardly farther off the middle plane than on the map.
		below, _, _ := p.bite(&rim, p.spot(0, side*k.middle.face))
		worst = max(worst, below-k.wheel.MaxDepth())
	}
	return worst
}
