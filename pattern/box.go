package pattern

import (
	"roundlay/geometry"
	"roundlay/pattern/job"
)

// MotifBox is the size and place of a motif, in millimetres on the glass.
type MotifBox struct {
	Width, Height float64
	// Middle is the distance round the glass and along it; inside another motif, from
	// the middle of that motif.
	Middle geometry.Point
	// Repeat is the width of the repeat at the motif's height, Band the length of the
	// band along the glass.
	Repeat, Band float64
}

// MotifBox returns the box of a motif: one of the plan's, or a changed copy of one.
func (p *Plan) Box(m job.Motif) MotifBox {
	s := p.set(m)
	radius := p.Surface.RadiusAt(p.Surface.HeightAt(s.along))
	b := MotifBox{
		Width: s.width, Height: s.height, Middle: geometry.Point{X: radius * s.theta, Y: s.along},
		Repeat: radius * p.PitchAngle(), Band: p.Surface.AlongAt(p.Band.Top) - p.Surface.AlongAt(p.Band.Foot),
	}
	if m.Middle {
		b.Repeat, b.Band = 2*p.Band.Top, 2*p.Band.Top
	}
	if s.outer != nil {
		b.Middle = s.offset
	}
	return b
}
