package groove_test

import "roundlay/pattern/groove"

// told is what the package says of a turning.
type told struct {
	groove.Groove
	left   float64 // glass
	bridge *bridge
}

// bridge is where a wheel too large for a hollow rests.
type bridge struct {
	theta, height float64
	depth, left   float64
	radius        float64 // of the largest wheel that goes in
}

// told asks the package.
func (s *turning) told(polish float64) told {
	g := groove.Cut(s.chart.cone, s.drawing(), s.wheel, s.depth, polish)
	return told{Groove: g, left: 0}
}
