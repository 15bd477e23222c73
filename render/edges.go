package render

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

func edgePen() drawing.Pen { return drawing.Pen{Width: 0.3} }
func matchPen() drawing.Pen {
	return drawing.Pen{Width: 0.35, Dash: []float64{5, 1.5, 1, 1.5}}
}

// edges draws those edges of a strip along which the paper is cut.
func (s *sheet) edges(d *drawing.Drawing, st strip) {
	cut := func(points []geometry.Point) {
		d.Add(drawing.Paper, drawing.Stroke{Points: points, Pen: edgePen()})
	}
	if st.lowest {
		cut(st.level(st.from, st.to, st.low))
	}
	if st.highest {
		cut(st.level(st.from, st.to, st.high))
	}
	for _, edge := range []struct {
		theta float64
		own   bool
	}{{st.from, st.first}, {st.to, st.last}} {
		switch {
		case edge.own:
			cut(st.upright(edge.theta, st.low, st.high))
		case s.curved:
			for _, span := range s.openings(st) {
				cut(st.upright(edge.theta, span[0], span[1]))
			}
		}
	}
}

// openings returns between which heights a gore's edge stands apart from its
// neighbour's. Where they all but touch the paper is left whole and holds them
// together.
func (s *sheet) openings(st strip) [][2]float64 {
	n := int(math.Ceil((st.high - st.low) / spacing))
	height := func(i int) float64 { return st.low + (st.high-st.low)*float64(i)/float64(n) }
	var open [][2]float64
	start := -1
	for i := range n + 1 {
		apart := s.gore.Gap(s.cone, s.part()/2, height(i)) > hinge/2
		if apart && start < 0 {
			start = i
		}
		if start >= 0 && (!apart || i == n) {
			open = append(open, [2]float64{height(start), height(i)})
			start = -1
		}
	}
	return open
}

// tabSlope returns how far the tab is cut back at its corners.
func tabSlope(st strip) float64 { return min(4, (st.high-st.low)/4) }

// tabOf draws the strip by which the paper's right edge is taped under its left.
func (s *sheet) tabOf(d *drawing.Drawing, st strip) {
	slope := tabSlope(st)
	low, high := st.low, st.high
	points := []geometry.Point{st.at(st.to, low)}
	n := max(1, int(math.Ceil((high-low-2*slope)/spacing)))
	for i := range n + 1 {
		z := low + slope + (high-low-2*slope)*float64(i)/float64(n)
		points = append(points, st.beside(st.to, z, tabWidth))
	}
	points = append(points, st.at(st.to, high))
	d.Add(drawing.Paper, drawing.Stroke{Points: points, Pen: edgePen()})

	const words, size = "tape under the other end", 7
	if s.letters.Width(words, size, false) > high-low-2*slope {
		return
	}
	middle := (low + high) / 2
	theta := st.to + (tabWidth/2+0.8)/st.on.RadiusAt(middle)
	s.label(d, drawing.Text{
		At: st.at(theta, middle), Words: words, Size: size, Align: drawing.Centre, Turn: math.Pi/2 + st.tilt(theta, middle),
	})
}

// name writes on a paper which it is, where there are several.
func (s *sheet) name(d *drawing.Drawing, st strip) {
	const below = 2.8 // mm, from the paper's upper edge
	z := st.high - below
	if thin, any := s.plan.TooThin(); any && thin > z-4 && thin < st.high {
		z = thin - 3 // clear of the words on the hatching
	}
	s.word(d, st, z, fmt.Sprintf("%s %d", s.paperName(), st.paper), fmt.Sprint(st.paper))
}

// rimArrow draws an arrow to the rim beside a strip's right edge.
func (s *sheet) rimArrow(d *drawing.Drawing, st strip) {
	const inset, wordRoom = 5.0, 16.0
	z := st.high - 2
	width := (st.to - st.from) * st.on.RadiusAt(z)
	if width < 2*inset {
		return
	}
	aside := func(mm, down float64) geometry.Point { return st.beside(st.to, z-down, mm-inset) }
	d.Add(drawing.Marks,
		drawing.Stroke{Points: []geometry.Point{aside(0, 6.5), aside(0, 2)}, Pen: drawing.Pen{Width: 0.6}},
		drawing.Fill{Points: []geometry.Point{aside(-1.3, 3), aside(1.3, 3), aside(0, 0)}},
	)
	if width > wordRoom {
		s.label(d, drawing.Text{
			At: aside(-1.8, 5.5), Words: "rim", Size: 9, Bold: true, Align: drawing.Right, Turn: st.tilt(st.to, z),
		})
	}
}

// label sets words on a white ground, legible over lines and hatching.
func (s *sheet) label(d *drawing.Drawing, t drawing.Text) {
	const air = 0.4
	upright := t
	upright.At, upright.Turn = geometry.Point{}, 0
	ground := drawing.Rectangle(s.letters.Box(upright).Grow(air))
	for i, q := range ground {
		ground[i] = r2.Add(t.At, r2.Rotate(q, t.Turn, geometry.Point{}))
	}
	d.Add(drawing.Notes, drawing.Fill{Points: ground, Ink: drawing.White}, t)
}
