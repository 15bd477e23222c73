package groove

import "math"

// blade is one line of a wheel's edge: the whole edge, or one mitre of a gang
// at its offset along the axle.
type blade struct {
	wheel  Wheel
	offset float64
	bound  float64 // of the whole wheel's faces, to each side of its middle plane
}

func (w Wheel) blades() []blade {
	if w.Edge != Gang {
		return []blade{{wheel: w, bound: w.Thick / 2}}
	}
	// Each mitre alone; where neighbours run into one another their footprints
	// overlap, and only the outer faces bound them.
	one := w
	one.Edge, one.Thick = Mitre, math.Inf(1)
	blades := make([]blade, w.Mitres)
	for i := range blades {
		blades[i] = blade{one, (float64(i) - float64(w.Mitres-1)/2) * w.Spacing, w.Thick / 2}
	}
	return blades
}

// middle returns the blade that runs on the wheel's middle plane: of a gang, as
// if one of its mitres did. A cut's depth and length are measured by it.
func (w Wheel) middle() blade {
	if w.Edge == Gang {
		w.Edge, w.Thick = Mitre, math.Inf(1)
	}
	return blade{wheel: w, bound: math.Inf(1)}
}

func (b blade) drop(beta float64) float64 {
	if math.Abs(beta) > b.bound {
		return math.Inf(1)
	}
	return b.wheel.Drop(beta - b.offset)
}

// face returns how far the blade reaches to each side of its line.
func (b blade) face() float64 { return b.wheel.shoulder() }

// hollow returns the second-order curvature of the edge at its line: 1/q for one
// rounded to a radius q, 0 for a flat one. A mitre has a point instead.
func (b blade) hollow() float64 {
	switch {
	case b.wheel.Edge == Round:
		return 1 / b.wheel.Convex
	case b.wheel.TipRadius > 0:
		return 1 / b.wheel.TipRadius
	}
	return 0
}

// pointed reports whether the blade's deepest line stays on its middle plane.
func (b blade) pointed() bool {
	return b.wheel.Edge == Mitre && b.wheel.Tip == 0 && b.wheel.TipRadius == 0
}

// breadth returns how far to each side of its line the blade may be deepest.
func (b blade) breadth() float64 {
	if b.wheel.Edge == Mitre {
		return max(b.wheel.Tip/2, b.wheel.TipRadius*math.Cos(b.wheel.Angle/2))
	}
	return b.face()
}

// halfWidth returns, to second order, half the width of the groove where the
// edge's line is h below a surface of the given curvature across the cut: the
// root b of h − κb²/2 = b/T for a mitre, of h − κb²/2 = q − √(q² − b²) for a
// round edge, and min(w/2, √(2h/κ)) for a flat one.
func (b blade) halfWidth(h, across float64) float64 {
	if h <= 0 {
		return 0
	}
	broad := min(b.breadth(), math.Sqrt(2*h/(across+b.hollow())))
	if b.wheel.Edge != Mitre || broad < b.breadth() {
		return broad
	}
	// On the flanks: those of a point as far above or below the tip as they meet.
	sin, cos := math.Sincos(b.wheel.Angle / 2)
	slope := cos / sin
	rest := h - across*b.wheel.Tip*b.wheel.Tip/8 + b.wheel.TipRadius*(1/sin-1)
	steep := slope + across*b.wheel.Tip/2
	return b.wheel.Tip/2 + 2*rest/(steep+math.Sqrt(steep*steep+2*across*rest))
}

// steepness returns, to second order, how fast the blade's bite falls off with
// the distance from its line, at a distance from it.
func (b blade) steepness(width, across float64) float64 {
	switch {
	case b.wheel.Edge == Mitre && width >= b.breadth():
		return 1/math.Tan(b.wheel.Angle/2) + across*width
	case b.hollow() > 0 && width*b.hollow() < 1:
		q := 1 / b.hollow()
		return across*width + width/math.Sqrt(q*q-width*width)
	}
	return across * width
}
