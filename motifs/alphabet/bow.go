package alphabet

import (
	"fmt"
	"math"

	"roundlay/geometry"
)

// MinBow is the smallest radius of an arc that a line is set along, in cap heights.
// Letters on a smaller one lean so much that they no longer read as a word.
const MinBow = 3.0

// Bow returns a line that was set along the level as it is along an arc: bowed up in
// the middle for a radius above 0, down for one below. Letters keep their shapes. Each
// is turned to stand square on the arc, which the letters' feet stand on; x = 0 is then
// the line's middle, where the arc touches the level. Where a line bows up its feet draw
// together, and where it bows down its tops, so distances are kept there and grow on the
// other side.
func (l Line) Bow(radius float64) (Line, error) {
	if math.IsNaN(radius) || math.IsInf(radius, 0) || math.Abs(radius) < MinBow {
		return Line{}, fmt.Errorf("read an arc of %g cap heights; accepted: a radius of %g or more, or of %g or less to bow down", radius, MinBow, -MinBow)
	}
	inner := radius // where distances are kept
	if radius < 0 {
		inner = radius + 1
	}
	const around = 0.9 // of a full turn: the ends keep apart
	if l.Advance > around*2*math.Pi*math.Abs(inner) {
		return Line{}, fmt.Errorf("read an arc of %g cap heights for a line %.1f long; accepted: one that the line does not close", radius, l.Advance)
	}
	bowed := Line{Advance: l.Advance, cells: l.cells, Strokes: make([]Stroke, len(l.Strokes))}
	for _, c := range l.cells {
		middle := (c.from + c.to) / 2
		sin, cos := math.Sincos((middle - l.Advance/2) / inner)
		for i := c.first; i < c.end; i++ {
			s := l.Strokes[i]
			for k, p := range s.Path {
				x, y := p.X-middle, p.Y+radius
				s.Path[k] = geometry.Point{X: cos*x + sin*y, Y: cos*y - sin*x - radius}
			}
			bowed.Strokes[i] = s
		}
	}
	return bowed, nil
}
