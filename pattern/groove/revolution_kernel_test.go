package groove_test

import (
	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// told is what the package says of a turning.
type told struct {
	groove.Groove
	depth  float64 // of the deepest bite
	left   float64 // glass
	bridge *bridge
}

// bridge is where a wheel too large for a hollow rests.
type bridge struct {
	theta, height float64
	depth, left   float64
}

// lathe returns the package's own view of the turning's glass.
func (s *turning) lathe() *groove.Lathe {
	surface := geometry.NewSurface(s.profile, s.chart.cone)
	var inside groove.Inside
	if s.lining != nil {
		inside = s.lining
	}
	return groove.NewLathe(&surface, inside)
}

// told asks the package.
func (s *turning) told(polish float64) told {
	g := s.lathe().Cut(s.drawing(), s.wheel, s.depth, polish)
	answer := told{Groove: g, depth: g.Depth, left: g.Remains.Least}
	if g.Bridges() {
		b := g.Bridge
		answer.bridge = &bridge{theta: b.Theta, height: b.Height, depth: b.Depth, left: b.Left}
	}
	return answer
}

// goesIn asks the package for the radius of the largest wheel that goes in.
func (s *turning) goesIn() float64 { return s.lathe().LargestWheel(s.drawing(), s.wheel, s.depth) }
