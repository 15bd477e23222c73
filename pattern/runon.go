package pattern

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// runOn finds where a motif's lines continue, in the same direction, in its next copy to
// the right or left. Such lines are one cut round the glass: the wheel isn't lifted there.
func (p *Plan) runOn(m job.Motif, lines []groove.Line) {
	spacing := p.PitchAngle()
	if m.On != job.Each {
		spacing *= 2
	}
	// Only ends of copies that lie among the motif's own ends can meet one.
	own := geometry.EmptyBox()
	for _, l := range lines {
		at, _ := l.Ends()
		own = own.Add(at[0]).Add(at[1])
	}
	own = own.Grow(touching)
	found := meetings{}
	for _, turn := range []float64{spacing, -spacing} {
		moved := p.Surface.Turned(turn)
		swing := geometry.Motion{Cos: moved.Cos, Sin: moved.Sin}
		for _, l := range lines {
			at, out := l.Ends()
			for k := range at {
				if to := moved.Apply(at[k]); own.Contains(to) {
					found.add(lineEnd{to, swing.Apply(out[k])})
				}
			}
		}
	}
	if len(found) == 0 {
		return
	}
	for i, l := range lines {
		at, out := l.Ends()
		lines[i] = l.RunningOn(found.meets(lineEnd{at[0], out[0]}), found.meets(lineEnd{at[1], out[1]}))
	}
}

// lineEnd is an end of a line and the direction that leads out of it.
type lineEnd struct{ at, out geometry.Point }

// meetings holds the ends of lines by the square of the map they lie in.
type meetings map[[2]int][]lineEnd

// side is the side of a square. It is larger than touching, so two ends that touch lie in
// the same square or in neighbouring ones.
const side = 1.0

func square(p geometry.Point) [2]int {
	return [2]int{int(math.Floor(p.X / side)), int(math.Floor(p.Y / side))}
}

func (m meetings) add(e lineEnd) { m[square(e.at)] = append(m[square(e.at)], e) }

// meets reports whether a line continues at an end: the end of another touches it, and they
// point straight into one another.
func (m meetings) meets(e lineEnd) bool {
	const straight = -0.99 // cosine between the two directions out
	home := square(e.at)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, f := range m[[2]int{home[0] + dx, home[1] + dy}] {
				if r2.Norm(r2.Sub(e.at, f.at)) < touching && r2.Dot(e.out, f.out) < straight {
					return true
				}
			}
		}
	}
	return false
}
