package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// outlines joins polygons that lie side by side: where two share an edge it
// goes, and what is left is the outline of both.
type outlines struct {
	stray float64 // how far they may deviate from what was added, to save points
	edges []edge
	at    map[edge]int // where each edge that is left stands in the list
}

// spot is a place on the picture in hundredths of a millimetre.
type spot struct{ x, y int32 }

// edge runs from one spot to another, with the polygon on its left.
type edge struct{ from, to spot }

func newOutlines(stray float64) *outlines { return &outlines{stray: stray, at: map[edge]int{}} }

// grain is what places on the picture are rounded to, which keeps files short.
const grain = 0.01 // mm

func grained(x float64) float64 { return math.Round(x/grain) * grain }

func spotAt(p geometry.Point) spot {
	return spot{int32(math.Round(p.X / grain)), int32(math.Round(p.Y / grain))}
}

func (s spot) point() geometry.Point {
	return geometry.Point{X: float64(s.x) * grain, Y: float64(s.y) * grain}
}

// add adds a polygon, its corners anticlockwise.
func (o *outlines) add(p polygon) {
	for i, q := range p {
		e := edge{spotAt(q), spotAt(p[(i+1)%len(p)])}
		if e.from == e.to {
			continue
		}
		back := edge{e.to, e.from}
		if i, there := o.at[back]; there {
			o.edges[i] = edge{}
			delete(o.at, back)
			continue
		}
		o.at[e] = len(o.edges)
		o.edges = append(o.edges, e)
	}
}

// lines returns the outlines of what was added, without the points they can do
// without. Their order is that of the adding.
func (o *outlines) lines() [][]geometry.Point {
	onward := map[spot][]spot{}
	for _, e := range o.edges {
		if e != (edge{}) {
			onward[e.from] = append(onward[e.from], e.to)
		}
	}
	var lines [][]geometry.Point
	keep := func(ring []spot) {
		if line := o.thinned(ring); line != nil {
			lines = append(lines, line)
		}
	}
	for _, e := range o.edges {
		for e != (edge{}) && len(onward[e.from]) > 0 {
			walk(e.from, onward, keep)
		}
	}
	return lines
}

// walk follows edges onward from a spot until there are none, using them up. It
// keeps each ring it closes on the way.
func walk(from spot, onward map[spot][]spot, keep func([]spot)) {
	path := []spot{from}
	on := map[spot]int{from: 0} // where each spot stands in the path
	for at := from; len(onward[at]) > 0; {
		before := at
		if len(path) > 1 {
			before = path[len(path)-2]
		}
		next := sharpest(before, at, onward[at])
		to := onward[at][next]
		onward[at] = slices.Delete(onward[at], next, next+1)
		at = to
		start, passed := on[at]
		if !passed {
			on[at] = len(path)
			path = append(path, at)
			continue
		}
		keep(slices.Clone(path[start:]))
		for _, p := range path[start+1:] {
			delete(on, p)
		}
		path = path[:start+1]
	}
}

// sharpest returns which way on turns back most. This closes the hairs that are left
// where the corners of one polygon lie on another's edge.
func sharpest(before, at spot, onward []spot) int {
	best, least := 0, math.Inf(1)
	for i, to := range onward {
		ax, ay := float64(at.x-before.x), float64(at.y-before.y)
		bx, by := float64(to.x-at.x), float64(to.y-at.y)
		if c := (ax*bx + ay*by) / math.Hypot(bx, by); c < least {
			best, least = i, c
		}
	}
	return best
}

// thinned returns a ring as an outline, or nil if it is no more than a hair.
func (o *outlines) thinned(ring []spot) []geometry.Point {
	line := make([]geometry.Point, len(ring), len(ring)+1)
	doubled, round := 0.0, 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		line[i] = p.point()
		doubled += line[i].X*q.point().Y - line[i].Y*q.point().X
		round += math.Hypot(q.point().X-line[i].X, q.point().Y-line[i].Y)
	}
	const hair = 0.01 // mm wide
	if math.Abs(doubled) < hair*round {
		return nil
	}
	line = drawing.Thinned(append(line, line[0]), o.stray)
	if len(line) < 4 {
		return nil
	}
	return line[:len(line)-1]
}
