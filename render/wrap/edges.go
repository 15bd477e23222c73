package wrap

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

func edgePen() drawing.Pen { return drawing.Pen{Width: 0.3} }
func matchPen() drawing.Pen {
	return drawing.Pen{Width: 0.35, Dash: []float64{5, 1.5, 1, 1.5}}
}

// edges draws those edges of a strip along which the paper is cut.
func (s *facePaper) edges(d *drawing.Drawing, st strip) {
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
func (s *facePaper) openings(st strip) [][2]float64 {
	n := int(math.Ceil((st.high - st.low) / spacing))
	height := func(i int) float64 { return st.low + (st.high-st.low)*float64(i)/float64(n) }
	var open [][2]float64
	start := -1
	for i := range n + 1 {
		apart := s.gore.Gap(s.cone, height(i)) > hinge/2
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
func (s *facePaper) tabOf(d *drawing.Drawing, st strip) {
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
}
