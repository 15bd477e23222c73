package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// cuts draws a plan's cuts on the picture of the glass.
type cuts struct {
	plan   *pattern.Plan
	walls  walls
	vessel vessel
}

// How far outlines on the picture may deviate, to save points: those of the cuts,
// those between two tones on a cut, and those on the far side, which nobody sees
// sharply.
const (
	edgeStray  = 0.012 // mm
	shadeStray = 0.018
	farStray   = 0.03
)

// near draws the cuts on the side that faces the eye: a dark line round all of
// them, and their walls as the light falls on them.
func (c cuts) near(d *drawing.Drawing) {
	whole := newOutlines(edgeStray)
	c.each(c.walls.whole, false, func(_ tone, p polygon) { whole.add(p) })
	ground := whole.lines()
	if len(ground) == 0 {
		return
	}
	for _, line := range ground {
		d.Add(drawing.Cuts, drawing.Stroke{Points: line, Closed: true, Pen: drawing.Pen{Width: 0.2, Ink: tone(0.2).ink()}})
	}
	// Under the walls, so that nothing pale shines through where two of them meet.
	d.Add(drawing.Cuts, drawing.Area{Outlines: ground, Ink: nearLamp().level.ink()})
	shades := newShades(nearStep, shadeStray)
	c.each(c.walls.near, false, shades.add)
	d.Add(drawing.Cuts, shades.areas()...)
}

// far draws the cuts on the other side as they show through the glass: a little
// lighter or darker than the glass is where they are seen.
func (c cuts) far(d *drawing.Drawing) {
	shades := newShades(farStep, farStray)
	c.each(c.walls.far, true, func(t tone, p polygon) {
		for _, part := range c.vessel.bed.parted(p) {
			seen := c.vessel.behindAt(part.middle())
			bands(part, farStep, func(q geometry.Point) float64 { return float64(t + seen(q)) }, shades.add)
		}
	})
	d.Add(drawing.Footprints, shades.areas()...)
}

// each calls draw with the picture of every patch round the glass that lies on
// one side, or the part of it that does.
func (c cuts) each(patches []patch, far bool, draw func(tone, polygon)) {
	profile, s, lamp := c.plan.Blank.Profile(), c.vessel.stance, nearLamp()
	if far {
		lamp = farLamp()
	}
	for turns := range c.plan.Periods() {
		carried := float64(turns*c.plan.Period) * c.plan.PitchAngle()
		for _, w := range patches {
			// Angles are counted from the middle of the side, and run on across it.
			first := w.places[0].theta
			shift := s.faces(first+carried, far) - first
			side := s.side(profile.Slope(w.places[0].z))
			if far {
				side = math.Pi - side
			}
			inside := true
			for _, q := range w.places {
				inside = inside && math.Abs(q.theta+shift) <= side
			}
			places := w.places
			if !inside {
				places = cropped(w.places, side, shift, profile.Radius)
			}
			if len(places) < 3 {
				continue
			}
			p := make(polygon, len(places))
			for i, q := range places {
				p[i] = s.at(q.theta+shift, q.radius, q.z, far)
			}
			if far {
				slices.Reverse(p)
			}
			draw(w.tone+lamp.shine(w.panel, w.panel.theta+shift), p)
		}
	}
}

// cropped returns the part of a patch within an angle of the middle of a side.
func cropped(places []place, side, shift float64, radius func(float64) float64) []place {
	flat := make(polygon, len(places))
	for i, q := range places {
		flat[i] = geometry.Point{X: q.theta, Y: q.z}
	}
	flat, _ = flat.split(func(q geometry.Point) float64 { return side - q.X - shift })
	flat, _ = flat.split(func(q geometry.Point) float64 { return side + q.X + shift })
	if flat == nil {
		return nil
	}
	places = make([]place, len(flat))
	for i, q := range flat {
		places[i] = place{q.X, q.Y, radius(q.Y)}
	}
	return places
}
