package groove

import "roundlay/geometry"

// Groove is what one cut leaves in the glass. Its places lie on the chart of the
// outside.
type Groove struct {
	Wheel    int  // the rack's
	Touch    bool // pressed in and lifted, not drawn along
	Length   float64
	Depth    float64 // at the deepest
	Asked    float64 // what the job asked for; more than Depth where the mark is too short for it
	Width    float64 // at the widest
	Volume   float64 // of glass ground away, mm³
	Remains  Remains // of the glass under it
	WheelFit WheelFit
	Bridge   Bridge
	Samples  []Sample
	// Tips are what the footprint has beyond the line's own ends, from there on
	// outwards: of a broad wheel set askew to the glass's axis, all of it to one
	// side. Depth is 0 there, and Along below 0 or above Length.
	Tips [2][]Sample
	Line Line // as it was asked for
	// Ends are those of the line as it was asked for. On a bend the mark's own
	// ends lie a little beside them: a wheel's tails are straight.
	Ends [2]geometry.Point
	// RunsOn says that one of them meets another cut, and the wheel is not lifted
	// there.
	RunsOn bool
	// Outlines are the footprint: one outline, or one a mitre under a gang wheel.
	Outlines []geometry.Outline
}

// Sample is one place along a groove's centre line.
type Sample struct {
	At            geometry.Point
	Theta, Height float64
	Along         float64 // from the groove's start
	Depth         float64
	// Left and Right are the distances from the centre line to the footprint's
	// edges, as one looks along the cut; the edges are the places themselves.
	Left, Right         float64
	LeftEdge, RightEdge geometry.Point
}

// HalfWidth returns half the footprint's width at the sample.
func (s Sample) HalfWidth() float64 { return (s.Left + s.Right) / 2 }
