package alphabet

import (
	"math"

	"roundlay/geometry"
)

// MinBow is the smallest radius of an arc that a line is set along, in cap heights.
// Letters on a smaller one lean so much that they no longer read as a word.
const MinBow = 3.0

// MaxArc is the widest arc that a line is set along, in radians: its ends keep apart.
const MaxArc = 300 * math.Pi / 180

// WidestArc returns the widest arc that the line can be set along, in radians.
func (l Line) WidestArc() float64 { return min(MaxArc, l.Advance/MinBow) }

// Along returns a line that was set along the level as it is along an arc, which spans an
// angle in radians: it bows up in the middle for one above 0, and down for one below. A
// wider angle than WidestArc is taken as that. Letters keep their shapes. Each is turned to
// stand square on the arc, on which the letters' feet are; x = 0 is then the line's middle,
// where the arc touches the level. Where a line bows up its feet draw together, and where
// it bows down its tops, so distances are kept there and grow on the other side.
func (l Line) Along(angle float64) Line {
	widest := l.WidestArc()
	angle = min(max(angle, -widest), widest)
	if angle == 0 {
		return l
	}
	kept := l.Advance / angle // the radius of the circle on which distances are kept
	radius := kept            // of the one that the feet are on
	if kept < 0 {
		radius = kept - 1
	}
	bowed := Line{Advance: l.Advance, cells: l.cells, Strokes: make([]Stroke, len(l.Strokes))}
	for _, c := range l.cells {
		middle := (c.from + c.to) / 2
		sin, cos := math.Sincos((middle - l.Advance/2) / kept)
		for i := c.first; i < c.end; i++ {
			s := l.Strokes[i]
			for k, p := range s.Path {
				x, y := p.X-middle, p.Y+radius
				s.Path[k] = geometry.Point{X: cos*x + sin*y, Y: cos*y - sin*x - radius}
			}
			bowed.Strokes[i] = s
		}
	}
	return bowed
}
