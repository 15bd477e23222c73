package picture

import (
	"maps"
	"math"
	"slices"

	"roundlay/render/drawing"
)

// shades sorts polygons by their tones.
type shades struct {
	step, stray float64
	joined      map[int]*outlines
}

func newShades(step, stray float64) *shades { return &shades{step, stray, map[int]*outlines{}} }

func (s *shades) add(t tone, p polygon) {
	level := int(math.Round(float64(t) / s.step))
	o, there := s.joined[level]
	if !there {
		o = newOutlines(s.stray)
		s.joined[level] = o
	}
	o.add(p)
}

// areas returns one mark for each tone, the darkest first.
func (s *shades) areas() []drawing.Mark {
	var marks []drawing.Mark
	for _, level := range slices.Sorted(maps.Keys(s.joined)) {
		if lines := s.joined[level].lines(); len(lines) > 0 {
			marks = append(marks, drawing.Area{Outlines: lines, Ink: tone(float64(level) * s.step).ink()})
		}
	}
	return marks
}
