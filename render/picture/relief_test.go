package picture

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

const rolledGang = `length = "mm"
blank = {station=[{height=0, across=80, wall=12}, {height=100, across=84, wall=9}]}
limits = {land=0.1}
wheel = [
  {name="gang", edge="gang", across=60, thick=12, angle=90, mitres=4, spacing=2.5},
  {name="flat", edge="flat", across=60, thick=8},
]
layout.repeats = 4
motif = [
  {kind="flute", wheel="gang", depth=1, panels=1, at=[-0.2, 0.5], width=0.2, height=0.7, rock=[0, 20]},
  {kind="flute", wheel="flat", depth=0.6, panels=1, at=[0.2, 0.5], width=0.2, height=0.7, rock=[0, 15]},
]
`

// The walls of a rolled gang and of a rolled flat cover their grooves' footprints, which the
// kernel has from another search, and are as deep as the cuts are told to be.
func TestRolledWallsFillTheirFootprints(t *testing.T) {
	p := planFor(t, rolledGang)
	for i := range p.Cuts {
		c := &p.Cuts[i]
		wheel := p.Job.Rack[c.Wheel]
		covered, deepest := 0.0, 0.0
		for _, m := range meshes(*c.Groove, wheel, &p.Surface, details()[0]) {
			for k := range m.ribs[1:] {
				a, b := m.ribs[k], m.ribs[k+1]
				wide := (r2.Norm(r2.Sub(a[0].at, a[len(a)-1].at)) + r2.Norm(r2.Sub(b[0].at, b[len(b)-1].at))) / 2
				middle := r2.Sub(between(b[0].at, b[len(b)-1].at, 0.5), between(a[0].at, a[len(a)-1].at, 0.5))
				covered += wide * math.Abs(middle.Y)
				for _, r := range a {
					deepest = max(deepest, r.depth)
				}
			}
		}
		footprint := 0.0
		for _, o := range c.Outlines {
			footprint += math.Abs(polygon(o.Points).area())
		}
		// The mitres of a gang run into one another when they are rolled: their walls overlap
		// there, and the footprint has that glass once. Both wheels'
		// walls were 0.999 of it when this was written.
		if covered < 0.99*footprint {
			t.Errorf("%s: walls over %.1f mm² of a footprint of %.1f", wheel.Name, covered, footprint)
		}
		// They were 4 % too shallow for the gang and 5 % for the flat. As deep as they are asked,
		// without what the roll adds, they would be less than half as deep.
		if math.Abs(deepest-c.Depth) > 0.1*c.Depth {
			t.Errorf("%s: walls %.2f mm deep, and the cut is told %.2f", wheel.Name, deepest, c.Depth)
		}
	}
}
