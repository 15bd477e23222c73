package picture

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// mesh is the wall that one blade leaves: rungs on ribs, and two triangles in
// each field between a rib and the next, a rung and the next. Neighbours share
// their corners, with their depths and their tones, so that they meet without a
// step.
type mesh struct {
	ribs   [][]rung
	falls  [][]geometry.Point // how the wall falls over each field, X to the right and Y up the surface
	panels []panel            // between a rib and the next
	crease bool               // whether the wall is bent sharply along its rungs, as a mitre's is
	near   lamp               // on the side that faces the eye
}

// vertex is a corner of a field: its rung, and its tone on the near side and on
// the far one.
type vertex struct {
	rung
	bright, faint float64
}

// facets returns the walls of a groove. Those of one cut bear its number.
func facets(cut int, g groove.Groove, wheel groove.Wheel, outside *geometry.Surface, fine detail) []facet {
	var all []facet
	for _, m := range meshes(g, wheel, outside, fine) {
		for i := range m.falls {
			for k := range m.falls[i] {
				c := m.field(i, k)
				f := facet{cut: cut, panel: m.panels[i]}
				all = f.appendTo(all, c[0], c[1], c[2])
				all = f.appendTo(all, c[0], c[2], c[3])
			}
		}
	}
	return all
}

// appendTo adds the facet between three corners, unless it has no area.
func (f facet) appendTo(all []facet, a, b, c vertex) []facet {
	at := [3]geometry.Point{a.at, b.at, c.at}
	f.outline = at[:]
	if f.outline.area() < minArea {
		return all
	}
	f.depth = through(at, [3]float64{a.depth, b.depth, c.depth})
	f.bright = through(at, [3]float64{a.bright, b.bright, c.bright})
	f.faint = through(at, [3]float64{a.faint, b.faint, c.faint})
	return append(all, f)
}

// meshes returns a mesh for every blade of the wheel.
func meshes(g groove.Groove, wheel groove.Wheel, outside *geometry.Surface, fine detail) []mesh {
	if rolledWide(g, wheel) {
		return reliefMeshes(g, wheel, outside, fine)
	}
	var all []mesh
	chosen, near := ribs(g.Samples, fine.stray), lampOver(outside)
	for _, i := range chosen {
		for blade, rungs := range section(g.Samples[i], wheel, outside, fine) {
			if blade == len(all) {
				all = append(all, mesh{crease: wheel.Edge == groove.Mitre || wheel.Edge == groove.Gang, near: near})
			}
			all[blade].ribs = append(all[blade].ribs, rungs)
		}
	}
	for b := range all {
		m := &all[b]
		for i := range m.ribs[1:] {
			m.lay(i, g.Samples[chosen[i]].Theta, g.Samples[chosen[i+1]].Theta, wheel.Edge == groove.Flat, outside)
		}
	}
	return all
}

// rolledWide reports whether a wide edge was rolled along a groove.
func rolledWide(g groove.Groove, wheel groove.Wheel) bool {
	return g.Line.Rolled() && (wheel.Edge == groove.Gang || wheel.Edge == groove.Flat)
}

// lay works out the fields between a rib and the next, which stand at two angles.
func (m *mesh) lay(i int, theta, next float64, panelled bool, outside *geometry.Surface) {
	falls := make([]geometry.Point, len(m.ribs[i])-1)
	right, up := outside.Compass(theta)
	if outside.Level() { // the light falls one way on all of it
		right, up = geometry.Point{X: 1}, geometry.Point{Y: 1}
	}
	for k := range falls {
		fall := m.fall(i, k)
		falls[k] = geometry.Point{X: r2.Dot(fall, right), Y: r2.Dot(fall, up)}
	}
	m.falls = append(m.falls, falls)
	m.panels = append(m.panels, panel{panelled, (theta + next) / 2})
}

// field returns the corners of a field, anticlockwise on the map: rungs run from
// left to right as one looks along the cut.
func (m mesh) field(i, k int) [4]vertex {
	var c [4]vertex
	for n, at := range [4]struct{ rib, rung int }{{i, k + 1}, {i + 1, k + 1}, {i + 1, k}, {i, k}} {
		fall := m.fallAt(at.rib, at.rung, k)
		c[n] = vertex{m.ribs[at.rib][at.rung], float64(m.near.on(fall)), float64(farLamp().on(fall))}
	}
	return c
}

// fall returns how the wall falls over a field, on the map: as it does along
// both diagonals. In a field as good as without an area it is zero.
func (m mesh) fall(i, k int) geometry.Point {
	now, next := m.ribs[i], m.ribs[i+1]
	a, b := r2.Sub(next[k].at, now[k+1].at), r2.Sub(now[k].at, next[k+1].at)
	da, db := next[k].sunk-now[k+1].sunk, now[k].sunk-next[k+1].sunk
	doubled := r2.Cross(a, b)
	if doubled < 2*minArea {
		return geometry.Point{}
	}
	return r2.Scale(1/doubled, geometry.Point{X: da*b.Y - db*a.Y, Y: db*a.X - da*b.X})
}

// fallAt returns how the wall falls at a corner, as seen from a field in the
// given row: the mean over the fields that meet there without a crease.
func (m mesh) fallAt(rib, rung, row int) geometry.Point {
	var sum geometry.Point
	n := 0.0
	for i := max(rib-1, 0); i <= min(rib, len(m.falls)-1); i++ {
		for k := max(rung-1, 0); k <= min(rung, len(m.falls[i])-1); k++ {
			if fall := m.falls[i][k]; (k == row || !m.crease) && fall != (geometry.Point{}) {
				sum = r2.Add(sum, fall)
				n++
			}
		}
	}
	return r2.Scale(1/max(n, 1), sum)
}
