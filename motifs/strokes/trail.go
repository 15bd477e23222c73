package strokes

import "roundlay/geometry"

// trail is one subpath: curves that continue one another. In a closed one the last
// ends where the first begins.
type trail struct {
	curves []geometry.Bezier
	closed bool
}

func (t *trail) start() geometry.Point { return t.curves[0][0] }
func (t *trail) end() geometry.Point   { return t.curves[len(t.curves)-1][3] }

// pen draws trails, as a path's commands do.
type pen struct {
	trails  []trail
	open    bool // the last trail goes on
	here    geometry.Point
	began   geometry.Point // where the last trail began
	without int            // subpaths without length
	curves  int            // how many were drawn
}

// move lifts the pen and sets it down at a place.
func (p *pen) move(to geometry.Point) {
	p.lift()
	p.here, p.began = to, to
}

// lift ends the trail.
func (p *pen) lift() { p.open = false }

// line draws a straight curve.
func (p *pen) line(to geometry.Point) { p.curve(geometry.Line(p.here, to)) }

// curve draws a curve from where the pen stands. One without length is left out.
func (p *pen) curve(c geometry.Bezier) {
	if c[0] == c[3] && c[0] == c[1] && c[0] == c[2] {
		return
	}
	if !p.open {
		p.trails = append(p.trails, trail{})
		p.open = true
	}
	t := &p.trails[len(p.trails)-1]
	t.curves = append(t.curves, c)
	p.curves++
	p.here = c[3]
}

// shut draws a line back to where the trail began, and ends it there.
func (p *pen) shut() {
	if p.here != p.began {
		p.line(p.began)
	}
	if p.open {
		p.trails[len(p.trails)-1].closed = true
	} else {
		p.without++
	}
	p.lift()
	p.here = p.began
}
