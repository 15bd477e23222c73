package pattern

import (
	"math"

	"roundlay/pattern/groove"
)

// Wearing is what the wear of a wheel does to the marks of a plan: when one of them comes
// out shorter by a tolerance, and the wheel is to be measured again.
type Wearing struct {
	Wheel    int     // number in the rack, from 0
	PerPiece float64 // the diameter that cutting one piece takes off it
	// Groove is what can be cut before that, and Pieces how many whole pieces like this that
	// is. Both are of a wheel that is as large as the job says.
	Groove float64
	Pieces int
	Across float64 // the wheel's diameter then
	// Cut is the period's cut that changes first. Pressed to its depth, its mark is Shorter
	// than with the new wheel. It is nil where the wheel is half worn away before any is.
	Cut     *Cut
	Shorter float64
	// Deeper is how much deeper it is when it is made to its full length; 0 for a drawn cut.
	Deeper float64
}

// leastWorn is the share of its diameter to which a wheel's wear is followed. No shop uses
// one that long.
const leastWorn = 0.5

// Wearing returns what wear does on a wheel; ok is false where it isn't known how fast it
// wears. Lines without ends don't come out shorter, and where the wheel bridges a hollow the
// length of a mark sets no depth: both are left out.
func (p *Plan) Wearing(pass Pass, tolerance float64) (w Wearing, ok bool) {
	wheel, length := p.Job.Rack[pass.Wheel], p.grooveOf(pass.Wheel)
	if !wheel.Wear.Known() || length == 0 {
		return w, false
	}
	w = Wearing{Wheel: pass.Wheel, PerPiece: wheel.Wear.After(length)}
	cuts := p.ended(pass)
	least := leastWorn * wheel.Radius
	radius := least
	// The cut that changes most at one radius needn't be the first to change so much.
	for {
		first, change := p.mostShortened(cuts, wheel, radius)
		if change <= tolerance {
			break
		}
		w.Cut = first
		radius = p.wornUntil(first, wheel, groove.Range{Low: radius, High: wheel.Radius}, tolerance)
	}
	w.Across = 2 * radius
	w.Groove = wheel.Wear.Takes(2 * (wheel.Radius - radius))
	const hair = 1e-9
	w.Pieces = int(math.Floor(w.Groove/length + hair))
	if w.Cut != nil {
		w.Shorter = p.shortened(w.Cut, wheel, radius)
		w.Deeper = p.deepened(w.Cut, wheel, radius)
	}
	return w, true
}

// grooveOf returns how much groove is cut with a wheel on all faces of the plan's piece.
func (p *Plan) grooveOf(wheel int) float64 {
	whole := p
	if p.side != nil {
		whole = p.side
	}
	return p.grooveOn(whole.Faces())[wheel]
}

// ended returns the cuts of a pass at whose ends the wheel is set down or lifted.
func (p *Plan) ended(pass Pass) []*Cut {
	var cuts []*Cut
	for _, chain := range pass.Chains {
		first, last := &p.Cuts[p.inPeriod(chain.Cuts[0])], &p.Cuts[p.inPeriod(chain.Cuts[len(chain.Cuts)-1])]
		if chain.Closed || first.Line.Closed() {
			continue
		}
		cuts = append(cuts, first)
		if last != first {
			cuts = append(cuts, last)
		}
	}
	return cuts
}

// mostShortened returns the one of some cuts whose mark gets shortest with the wheel worn to a
// radius, and by how much.
func (p *Plan) mostShortened(cuts []*Cut, wheel groove.Wheel, radius float64) (most *Cut, change float64) {
	for _, c := range cuts {
		if !c.Bridges() {
			if by := p.shortened(c, wheel, radius); by > change {
				most, change = c, by
			}
		}
	}
	return most, change
}

// shortened returns how much shorter the mark of a worn wheel is at a cut's depth. The
// lengths are where the wheel's surface meets the glass's.
func (p *Plan) shortened(c *Cut, wheel groove.Wheel, radius float64) float64 {
	return c.LengthFor(&p.Surface, wheel, c.Depth) - c.LengthFor(&p.Surface, wheel.Worn(radius), c.Depth)
}

// wornUntil returns the largest radius of a range at which a cut's mark is shorter by the
// tolerance, found by bisection.
func (p *Plan) wornUntil(c *Cut, wheel groove.Wheel, radii groove.Range, tolerance float64) float64 {
	const fine = 1e-7 // mm
	for radii.High-radii.Low > fine {
		middle := (radii.Low + radii.High) / 2
		if p.shortened(c, wheel, middle) > tolerance {
			radii.Low = middle
		} else {
			radii.High = middle
		}
	}
	return radii.High
}

// deepened returns how much deeper a touch gets with a worn wheel, made to its full length.
func (p *Plan) deepened(c *Cut, wheel groove.Wheel, radius float64) float64 {
	if !c.Touch {
		return 0
	}
	const deep = 4 // times what it was: more than half the wheel can add
	return groove.Cut(&p.Surface, c.Line, wheel.Worn(radius), deep*c.Depth, 0).Depth - c.Depth
}
