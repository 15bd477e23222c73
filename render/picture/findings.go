package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/report"
)

// rings marks a plan's findings on the near side of the glass.
type rings struct {
	plan   *pattern.Plan
	stance stance
}

// Sizes of a ring and of the letter beside it, in millimetres except the last.
const (
	ringRadius = 2.3
	tagRadius  = 1.7
	tagSize    = 7.5 // points
)

// draw rings each finding, in every repeat it recurs in, with its group's letter.
func (r rings) draw(d *drawing.Drawing) {
	p := r.plan
	var all []tagged
	told, _ := report.Listed(p)
	for i, g := range told {
		var ringed []geometry.Point
		for _, f := range g.Findings {
			for turns := range p.Periods() {
				at, near := r.place(f.Theta+float64(turns*p.Period)*p.PitchAngle(), f.Height)
				if !near || crowded(ringed, at) {
					continue
				}
				ringed = append(ringed, at)
				all = append(all, tagged{at, g.Letter, math.Pi/4 + float64(i)*math.Pi/2})
			}
		}
	}
	drawTagged(d, all)
}

// drawTagged draws rings with their letters. All tags lie over all rings.
func drawTagged(d *drawing.Drawing, all []tagged) {
	for _, t := range all {
		d.Add(drawing.Findings, ring().Round(t.at)...)
	}
	var tags []geometry.Point
	for _, t := range all {
		at := t.place(tags, all)
		tags = append(tags, at)
		tag(d, t.at, at, t.letter)
	}
}

// tagged is a ring that is to get its tag, on some side if there is room.
type tagged struct {
	at     geometry.Point
	letter string
	side   float64
}

// place returns where the ring's tag lies: as near as possible, clear of the tags that
// are there and, if that can be, of the other rings.
func (t tagged) place(tags []geometry.Point, all []tagged) geometry.Point {
	const ways, air = 12, 0.4
	distances := []float64{ringRadius + 0.6, ringRadius + 2.5, ringRadius + 5, ringRadius + 8}
	free := func(at geometry.Point, rings bool) bool {
		for _, q := range tags {
			if r2.Norm(r2.Sub(q, at)) < 2*tagRadius+air {
				return false
			}
		}
		for _, other := range all {
			if rings && other.at != t.at && r2.Norm(r2.Sub(other.at, at)) < ringRadius+tagRadius+air {
				return false
			}
		}
		return true
	}
	for _, rings := range []bool{true, false} {
		for _, distance := range distances {
			for i := range ways {
				// Alternately to both sides of the preferred one.
				sin, cos := math.Sincos(t.side + float64((i+1)/2)*float64(1-2*(i%2))*2*math.Pi/ways)
				if at := r2.Add(t.at, r2.Scale(distance, geometry.Point{X: cos, Y: sin})); free(at, rings) {
					return at
				}
			}
		}
	}
	sin, cos := math.Sincos(t.side)
	return r2.Add(t.at, r2.Scale(distances[0], geometry.Point{X: cos, Y: sin}))
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

// ring is edged with white to stand out from dark walls and light.
func ring() page.Ring {
	pen := drawing.Pen{Width: 0.45, Ink: warning()}
	return page.Ring{Radius: ringRadius, Pen: pen, Lead: pen, Edge: 0.225}
}

// tag draws a ring's letter, at the end of a line where it lies some way off.
func tag(d *drawing.Drawing, centre, at geometry.Point, letter string) {
	const capHeight = 0.25 // of the letter's size, in millimetres to the point
	if off := r2.Sub(at, centre); r2.Norm(off) > ringRadius+tagRadius {
		d.Add(drawing.Findings, ring().LeadTo(centre, at)...)
	}
	d.Add(drawing.Findings,
		drawing.Fill{Points: drawing.Circle(at, tagRadius+0.2), Ink: drawing.White},
		drawing.Fill{Points: drawing.Circle(at, tagRadius), Ink: warning()},
		drawing.Text{
			At: r2.Sub(at, geometry.Point{Y: tagSize * capHeight / 2}), Words: letter, Size: tagSize / math.Sqrt(float64(len(letter))),
			Bold: true, Align: drawing.Centre, Ink: drawing.White,
		})
}
