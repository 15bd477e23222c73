package groove

import "roundlay/geometry"

// Groove is what one cut leaves in the glass. Its places are on the chart of the outside.
type Groove struct {
	Touch bool // pressed in and lifted, not drawn along
	// RunsOn says that the cut continues in another at one of its ends, and the wheel is
	// not lifted there.
	RunsOn   bool
	Length   float64
	Depth    float64 // at the deepest
	Asked    float64 // the depth asked for, at its greatest; more than Depth where the mark is too short for it
	Plunge   float64 // how deep the wheel is set down, at the deepest; a rolled one may bite deeper beside its line
	Width    float64 // at the widest
	Volume   float64 // of glass ground away, mm³
	Remains  Remains // of the glass under it
	WheelFit WheelFit
	Bridge   *Bridge // nil for a wheel that rests on one place
	Samples  []Sample
	Line     Line // as asked for
	// Outlines are the footprint: one outline or, for a gang wheel, one for each mitre.
	Outlines []geometry.Outline

	tips *[2][]Sample // nil for none
}

// Tips returns the parts of the footprint beyond the line's ends, from there outwards. A broad
// wheel askew to the glass's axis leaves them to one side of the line. Depth is 0 there, and
// Along is below 0 or above Length.
func (g *Groove) Tips() [2][]Sample {
	if g.tips == nil {
		return [2][]Sample{}
	}
	return *g.tips
}

// Ends returns the ends of the line as asked for. On a bend the mark's own ends are a little
// beside them, as a wheel's tails are straight.
func (g *Groove) Ends() [2]geometry.Point {
	return [2]geometry.Point{g.Line.start().at, g.Line.end().at}
}

// Sample is one place along a groove's centre line.
type Sample struct {
	At            geometry.Point
	Theta, Height float64
	Along         float64 // from the groove's start
	Depth         float64
	// Left and Right are the distances from the centre line to the footprint's edges,
	// looking along the cut. LeftEdge and RightEdge are those places.
	Left, Right         float64
	LeftEdge, RightEdge geometry.Point
}

// HalfWidth returns half the footprint's width at the sample.
func (s Sample) HalfWidth() float64 { return (s.Left + s.Right) / 2 }
