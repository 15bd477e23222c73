package wrap

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// matchLine is a line at which two pieces meet, with the crosses they are laid
// together by.
type matchLine struct {
	points  []geometry.Point
	crosses []geometry.Point
	tilts   []float64 // of the crosses
	words   string    // which pieces it joins
	ownLeft bool      // whether the piece lies to the left of it, as the line runs
}

const crossArm = 2.0

// matchLines returns the lines at which a piece meets its neighbours. Both
// pieces have the same: the places depend on the line alone.
func (s *facePaper) matchLines(p piece) []matchLine {
	const uprightInset, levelInset = 6.0, 12.0
	var lines []matchLine
	frame := s.frame(p)
	upright := func(theta float64, left int) {
		inset := min(uprightInset, (p.high-p.low)/4)
		m := matchLine{points: frame.upright(theta, p.low, p.high), words: s.meet(left, left+1), ownLeft: theta == p.to}
		for _, z := range []float64{p.low + inset, p.high - inset} {
			m.crosses, m.tilts = append(m.crosses, frame.at(theta, z)), append(m.tilts, frame.tilt(theta, z))
		}
		lines = append(lines, m)
	}
	level := func(z float64, above, below int) {
		strips := s.strips(p)
		m := matchLine{words: meet(above, below), ownLeft: z == p.low}
		for _, st := range strips {
			m.points = append(m.points, st.level(st.from, st.to, z)...)
		}
		first, last := strips[0], strips[len(strips)-1]
		inset := min(levelInset/first.on.RadiusAt(z), (first.to-first.from)/4)
		for _, c := range []struct {
			on    strip
			theta float64
		}{{first, first.from + inset}, {last, last.to - inset}} {
			m.crosses, m.tilts = append(m.crosses, c.on.at(c.theta, z)), append(m.tilts, c.on.tilt(c.theta, z))
		}
		lines = append(lines, m)
	}
	if !p.first {
		upright(p.from, p.number-1)
	}
	if !p.last {
		upright(p.to, p.number)
	}
	if !p.lowest {
		level(p.low, p.number, p.number+p.columns)
	}
	if !p.highest {
		level(p.high, p.number-p.columns, p.number)
	}
	return lines
}

// meet names two pieces as they come to lie, left and right.
func (s *facePaper) meet(left, right int) string {
	if s.mirror {
		left, right = right, left
	}
	return meet(left, right)
}

// meet is words and no sign between two numbers, which would read as a fraction.
func meet(one, other int) string { return fmt.Sprintf("piece %d meets piece %d", one, other) }

// matches draws the lines at which a piece meets its neighbours.
func (s *facePaper) matches(d *drawing.Drawing, p piece) {
	pen := drawing.Pen{Width: 0.25}
	for _, m := range s.matchLines(p) {
		d.Add(drawing.Marks, drawing.Stroke{Points: m.points, Pen: matchPen()})
		for i, at := range m.crosses {
			sin, cos := math.Sincos(m.tilts[i])
			across, up := geometry.Point{X: crossArm * cos, Y: crossArm * sin}, geometry.Point{X: -crossArm * sin, Y: crossArm * cos}
			d.Add(drawing.Marks,
				drawing.Stroke{Points: []geometry.Point{r2.Sub(at, across), r2.Add(at, across)}, Pen: pen},
				drawing.Stroke{Points: []geometry.Point{r2.Sub(at, up), r2.Add(at, up)}, Pen: pen},
			)
		}
	}
}
