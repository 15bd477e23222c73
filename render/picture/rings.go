package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// rings marks a plan's findings on the near side of the glass.
type rings struct {
	plan   *pattern.Plan
	stance stance
}

// Sizes of a ring and of the letter beside it, in millimetres but for the last.
const (
	ringRadius = 2.3
	tagRadius  = 1.7
	tagSize    = 7.5 // points
)

// draw rings each finding, in every repeat it recurs in, with its group's letter.
func (r rings) draw(d *drawing.Drawing) {
	p := r.plan
	for i, g := range p.Groups() {
		var ringed []geometry.Point
		for _, f := range g.Findings {
			for turns := range p.Turns() {
				at, near := r.place(f.Theta+float64(turns*p.Period)*p.Pitch(), f.Height)
				if !near || crowded(ringed, at) {
					continue
				}
				ringed = append(ringed, at)
				ring(d, at, g.Letter, math.Pi/4+float64(i)*math.Pi/2)
			}
		}
	}
}

// place returns where a place on the glass comes to lie, and whether it is on the
// near side.
func (r rings) place(theta, z float64) (at geometry.Point, near bool) {
	profile := r.plan.Blank.Profile()
	angle := r.stance.faces(theta, false)
	near = math.Abs(angle) <= r.stance.side(profile.Slope(z))
	return r.stance.at(angle, profile.Radius(z), z, false), near
}

// crowded reports whether a ring at a place would lie on another of its group.
func crowded(ringed []geometry.Point, at geometry.Point) bool {
	for _, q := range ringed {
		if r2.Norm(r2.Sub(q, at)) < 2*ringRadius {
			return true
		}
	}
	return false
}

// ring draws one ring, edged with white to stand out from dark walls and light,
// with its letter on one side. Groups have theirs on different sides, so that all
// are read where one place has several findings.
func ring(d *drawing.Drawing, at geometry.Point, letter string, side float64) {
	circle := drawing.Thinned(drawing.Circle(at, ringRadius), 0.01)
	sin, cos := math.Sincos(side)
	tag := r2.Add(at, r2.Scale(ringRadius+0.6, geometry.Point{X: cos, Y: sin}))
	const capHeight = 0.25 // of the letter's size, in millimetres to the point
	d.Add(drawing.Findings,
		drawing.Stroke{Points: circle, Closed: true, Pen: drawing.Pen{Width: 0.9, Ink: drawing.White}},
		drawing.Stroke{Points: circle, Closed: true, Pen: drawing.Pen{Width: 0.45, Ink: warning()}},
		drawing.Fill{Points: drawing.Circle(tag, tagRadius+0.2), Ink: drawing.White},
		drawing.Fill{Points: drawing.Circle(tag, tagRadius), Ink: warning()},
		drawing.Text{
			At: r2.Sub(tag, geometry.Point{Y: tagSize * capHeight / 2}), Words: letter, Size: tagSize / math.Sqrt(float64(len(letter))),
			Bold: true, Align: drawing.Centre, Ink: drawing.White,
		})
}
