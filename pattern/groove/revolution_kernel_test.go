package groove_test

import (
	"context"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// reported is what the package says of a turning.
type reported struct {
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

// cutter returns the package's own view of the turning's glass. Turnings on one glass
// share it.
func (s *turning) cutter() *groove.Cutter {
	if s.shared == nil || s.shared.lining != s.lining || s.shared.chart != s.chart {
		surface := geometry.NewSurface(s.profile, s.chart.cone)
		var inside groove.Inside
		if s.lining != nil {
			inside = s.lining
		}
		s.shared = &view{groove.NewCutter(&surface, inside), s.chart, s.lining}
	}
	return s.shared.cutter
}

// view is what the package knows of a glass, and what it follows from.
type view struct {
	cutter *groove.Cutter
	chart  *chart
	lining *lining
}

// reported asks the package.
func (s *turning) reported(polish float64) reported {
	g := s.cutter().Cut(s.drawing(), s.wheel, s.depth, polish)
	answer := reported{Groove: g, depth: g.Depth, left: g.Remains.Min}
	if g.Bridges() {
		b := g.Bridge
		answer.bridge = &bridge{theta: b.Theta, height: b.Height, depth: b.Depth, left: b.Left}
	}
	return answer
}

// goesIn asks the package for the radius of the largest wheel that goes in.
func (s *turning) goesIn() float64 {
	radius, _ := s.cutter().LargestWheel(context.Background(), s.drawing(), s.wheel, s.depth)
	return radius
}
