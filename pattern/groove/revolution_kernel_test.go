package groove_test

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// told is what the package says of a turning.
type told struct {
	groove.Groove
	left                  float64 // glass
	leftTheta, leftHeight float64
	bridged               bool
}

// told asks the package.
func (s *turning) told(polish float64) told {
	from, to := s.ends()
	line := groove.NewLine([]geometry.Point{from, to})
	g := groove.Cut(s.chart.cone, line, s.wheel, s.depth, polish)
	return told{Groove: g, left: math.NaN()}
}
