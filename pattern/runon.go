package pattern

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// meeting finds where a motif's lines continue, in the same direction, in its next copy to
// the right or left. Such lines are one cut round the glass: the wheel isn't lifted there.
type meeting struct {
	plan  *Plan
	of    drawing
	lines []groove.Line
	hands []groove.Hand    // of the lines
	own   geometry.Box     // of the lines' ends
	found map[int]meetings // ends of the copy so many repeats to the right, that lie in that box
}

func newMeeting(p *Plan, of drawing, lines []groove.Line, hands []groove.Hand) *meeting {
	own := geometry.EmptyBox()
	for _, l := range lines {
		at, _ := l.Ends()
		own = own.Add(at[0]).Add(at[1])
	}
	return &meeting{p, of, lines, hands, own.Grow(touching), map[int]meetings{}}
}

// tools returns what cuts a line at its start and at its end. Few lines need it, as few come
// near a copy.
func (m *meeting) tools(i int) [2]tool {
	part := m.of.cuts[i].Part
	var hand groove.Hand
	if m.hands != nil {
		hand = m.hands[i]
	}
	return toolsOf(m.of.motif.WheelOf(part), m.of.motif.DepthOf(part), hand)
}

// onwards returns for each line whether it runs on from its start and from its end, where
// the next copies stand so many repeats to the left and to the right.
func (m *meeting) onwards(left, right int) [][2]bool {
	all := make([][2]bool, len(m.lines))
	for _, beside := range []meetings{m.copy(right), m.copy(-left)} {
		if len(beside) == 0 {
			continue
		}
		for i, l := range m.lines {
			at, out := l.Ends()
			tools := m.tools(i)
			for k := range at {
				all[i][k] = all[i][k] || beside.meets(lineEnd{at[k], out[k], tools[k]})
			}
		}
	}
	return all
}

// shut returns for each line that closes on itself, as a ring does, that it runs on at both
// of its ends.
func (m *meeting) shut() [][2]bool {
	all := make([][2]bool, len(m.lines))
	for i, l := range m.lines {
		at, _ := l.Ends()
		if r2.Norm(r2.Sub(at[0], at[1])) < touching {
			all[i] = [2]bool{true, true}
		}
	}
	return all
}

// copy returns the ends of a copy some repeats to the right that may meet the motif's own:
// those that lie among them.
func (m *meeting) copy(repeats int) meetings {
	if found, ok := m.found[repeats]; ok {
		return found
	}
	found := meetings{}
	moved := m.plan.Surface.Turned(float64(repeats) * m.plan.PitchAngle())
	swing := geometry.Motion{Cos: moved.Cos, Sin: moved.Sin}
	for i, l := range m.lines {
		at, out := l.Ends()
		for k := range at {
			if to := moved.Apply(at[k]); m.own.Contains(to) {
				found.add(lineEnd{to, swing.Apply(out[k]), m.tools(i)[k]})
			}
		}
	}
	m.found[repeats] = found
	return found
}

// running returns lines that run on from their starts and their ends.
func running(lines []groove.Line, onwards [][2]bool) []groove.Line {
	if !slices.ContainsFunc(onwards, func(on [2]bool) bool { return on != [2]bool{} }) {
		return lines
	}
	all := make([]groove.Line, len(lines))
	for i, l := range lines {
		all[i] = l
		if onwards[i] != [2]bool{} {
			all[i] = l.RunningOn(onwards[i][0], onwards[i][1])
		}
	}
	return all
}

// lineEnd is an end of a line and the direction that leads out of it.
type lineEnd struct {
	at, out geometry.Point
	tool
}

// tool is what cuts a line at its end: a wheel of the rack, set to a depth, and how the glass
// is rolled, to the left and to the right of the line's direction. Where it changes the wheel
// is lifted.
type tool struct {
	wheel int
	depth float64
	rock  [2]float64
	back  bool // the direction leads in at the end, not out of it
}

// toolsOf returns what cuts a line at its start and at its end.
func toolsOf(wheel int, depth float64, h groove.Hand) [2]tool {
	tools := [2]tool{{wheel, depth, h.Rock, true}, {wheel, depth, h.Rock, false}}
	if n := len(h.Swell); n > 0 {
		for k, share := range [2]float64{h.Swell[0], h.Swell[n-1]} {
			tools[k].depth *= share
			for side := range tools[k].rock {
				tools[k].rock[side] *= share / h.Greatest()
			}
		}
	}
	return tools
}

// goesOn reports whether a line that ends so can continue in one that ends like another.
func (t tool) goesOn(o tool) bool {
	rock := o.rock
	if t.back == o.back { // one runs against the other
		rock[0], rock[1] = rock[1], rock[0]
	}
	return t.wheel == o.wheel && t.depth == o.depth && t.rock == rock
}

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
				if e.tool.goesOn(f.tool) && r2.Norm(r2.Sub(e.at, f.at)) < touching && r2.Dot(e.out, f.out) < straight {
					return true
				}
			}
		}
	}
	return false
}
