package pattern

import (
	"roundlay/geometry"
	"roundlay/pattern/job"
)

// Box is the room a motif takes, in millimetres on the glass.
type Box struct {
	Width, Height float64
	// Middle is round the glass and along it; inside another motif, from the middle
	// of that.
	Middle geometry.Point
	// Repeat and Band are how long the repeat and the band are there.
	Repeat, Band float64
}

// Box returns the box of a motif: one of a draft's, or such a one changed.
func (p *Plan) Box(m job.Motif) Box {
	s := p.set(m)
	radius := p.Surface.RadiusAt(p.Surface.HeightAt(s.along))
	b := Box{
		Width: s.width, Height: s.height, Middle: geometry.Point{X: radius * s.theta, Y: s.along},
		Repeat: radius * p.PitchAngle(), Band: p.Surface.AlongAt(p.Band.Top) - p.Surface.AlongAt(p.Band.Foot),
	}
	if s.outer != nil {
		b.Middle = s.offset
	}
	return b
}
