package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// WheelFit is what a cut asks of its wheel beyond what the wheel can do cleanly.
type WheelFit struct {
	// Buried is how far the wheel's shoulders, where its edge meets its faces, are below
	// the surface; 0 or less where only the edge cuts.
	Buried float64
	// Sweep is the most that the ends of the contact deviate from a bent centre line:
	// k a²/2 for a curvature k and a contact half-length a. Share is that as a share of
	// the groove's half width there.
	Sweep, Share float64
	// Bend and Contact are k and a at that place, At its distance along the groove.
	Bend, Contact, At float64
}

// WheelFor returns the radius of the largest wheel whose contact would deviate from the line
// by no more than a share of the groove's half width, at the same depth and width.
func (g Groove) WheelFor(wheel Wheel, share float64) float64 {
	contact2 := g.WheelFit.Contact * g.WheelFit.Contact
	along := 2*g.Depth/contact2 - 1/wheel.Radius
	return 1 / (2*g.Depth/(contact2*share/g.WheelFit.Share) - along)
}

// CurveFor returns the radius of the tightest bend for which this wheel's contact would
// deviate by no more than a share of the groove's half width.
func (g Groove) CurveFor(share float64) float64 { return g.WheelFit.Share / share / g.WheelFit.Bend }

// wheelFit measures the wheel's fit along the line asked for. That line may differ from the
// stroke's: a touch leaves a straight mark, and can't follow a bend at all.
func (k *stroke) wheelFit(asked Line, g Groove) WheelFit {
	var s WheelFit
	s.Buried = k.buried()
	if asked.Straight() {
		return s
	}
	half := g.Width / 2
	if g.Touch {
		half = g.Width // nothing is swept: the mark is only straight where the line isn't
	}
	line := *k
	line.line, line.kept = asked, false
	for at := 0.0; at <= asked.Length(); at += 0.5 {
		q, ahead := asked.At(at)
		p := place(k.surface, k.wheel.Radius, k.depth, q, ahead)
		if k.swells {
			share, _ := asked.hand.at(at / asked.Length())
			p.depth *= share
		}
		tail, _ := p.tail()
		contact := min(tail, asked.Length()/2)
		bend := math.Abs(line.bend(at))
		if sweep := bend * contact * contact / 2; sweep > s.Sweep {
			s.Sweep, s.Bend, s.Contact, s.At = sweep, bend, contact, at
			if half > 0 { // else it cuts nothing
				s.Share = sweep / half
			}
		}
	}
	return s
}

// buried returns how far the wheel's shoulders are below the surface in the middle of its
// stroke: 0 for a flat wheel, whose faces are parallel.
func (k *stroke) buried() float64 {
	if k.wheel.Edge == Flat {
		return 0
	}
	if k.byHand() {
		return k.buriedAsDrawn()
	}
	p := k.at((k.first + k.last) / 2)
	worst := math.Inf(-1)
	rim := blade{face: math.Inf(1)}
	for _, side := range []float64{-1, 1} {
		// In space this place is hardly farther from the middle plane than on the map.
		below, _, _ := p.bite(&rim, p.spot(0, side*k.middle.face))
		worst = max(worst, below-k.wheel.MaxDepth())
	}
	return worst
}

// buriedAsDrawn is buried for a stroke by hand: at the deepest of all its places and rolls. A
// roll to one side sinks the shoulder on that side.
func (k *stroke) buriedAsDrawn() float64 {
	worst := math.Inf(-1)
	for _, p := range k.standings() {
		for _, r := range p.roll.some(3) {
			for _, side := range [...]float64{-1, 1} {
				shoulder := r.outOf(r3.Vec{Y: side * k.middle.face, Z: k.wheel.MaxDepth() - p.depth}, p.depth)
				glass := p.seen(p.space(p.spot(0, shoulder.Y)))
				worst = max(worst, glass.Z-shoulder.Z)
			}
		}
	}
	return worst
}
