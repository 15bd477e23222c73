package page

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// Ring is how findings are ringed on a page: a circle round the place, and a line
// that leads to its letter where that is not beside it.
type Ring struct {
	Radius float64     // in millimetres
	Pen    drawing.Pen // of the circle
	Lead   drawing.Pen // of the line
	Edge   float64     // how wide a white edge both have on either side, to stand out from what is dark
}

// Round returns the ring round a place.
func (r Ring) Round(centre geometry.Point) []drawing.Mark {
	const stray = 0.01
	circle := drawing.Thinned(drawing.Circle(centre, r.Radius), stray)
	return r.edged(drawing.Stroke{Points: circle, Closed: true, Pen: r.Pen})
}

// On returns the part of the ring round a place that lies on paper with all of its
// pen's width.
func (r Ring) On(paper geometry.Outline, centre geometry.Point) []drawing.Mark {
	circle := drawing.Circle(centre, r.Radius)
	on := func(q geometry.Point) bool {
		return paper.Contains(q) && paper.Contains(r2.Add(q, r2.Scale(r.Pen.Width/2/r.Radius, r2.Sub(q, centre))))
	}
	out := slices.IndexFunc(circle, func(q geometry.Point) bool { return !on(q) })
	if out < 0 {
		return r.edged(drawing.Stroke{Points: circle, Closed: true, Pen: r.Pen})
	}
	var arcs []drawing.Mark
	var arc []geometry.Point
	for i := range circle {
		q := circle[(out+1+i)%len(circle)]
		if on(q) {
			arc = append(arc, q)
			continue
		}
		if len(arc) > 1 {
			arcs = append(arcs, r.edged(drawing.Stroke{Points: arc, Pen: r.Pen})...)
		}
		arc = nil
	}
	return arcs
}

// LeadTo returns the line from the ring round a place to where its letter stands.
func (r Ring) LeadTo(centre, letter geometry.Point) []drawing.Mark {
	way := r2.Unit(r2.Sub(letter, centre))
	return r.edged(drawing.Stroke{Points: []geometry.Point{r2.Add(centre, r2.Scale(r.Radius, way)), letter}, Pen: r.Lead})
}

// edged returns a line with its white edge below it.
func (r Ring) edged(line drawing.Stroke) []drawing.Mark {
	if r.Edge == 0 {
		return []drawing.Mark{line}
	}
	edge := line
	edge.Pen.Width += 2 * r.Edge
	edge.Pen.Ink = drawing.White
	return []drawing.Mark{edge, line}
}
