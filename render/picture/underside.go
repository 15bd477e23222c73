package picture

import (
	"context"
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/report"
)

// underside is the base of a glass as it is seen from straight below. Its flat map is the
// picture: the middle of the base is at the origin.
type underside struct {
	plan *pattern.Plan // of the base, turned as it is looked at and with all cuts in one period
}

// newUnderside draws the base of a glass. The error says that it has none, or is the
// context's.
func newUnderside(ctx context.Context, g Glass, o Options, letters *lettering.Letters) (layout, error) {
	p := g.Plan
	if p.Base == nil {
		return layout{}, fmt.Errorf("blank %q: the job has no base to look at", p.Blank.Name)
	}
	all := *p.Base
	all.Cuts, all.Period = p.Base.All(), p.Base.Repeats
	for i, c := range all.Cuts {
		turned := c.Turned(&all.Surface, -o.Turn)
		all.Cuts[i].Groove = &turned
	}
	v := view{turn: o.Turn}
	u := underside{&all}
	u.glass(&v.drawing)
	u.cuts(&v.drawing)
	if o.Findings {
		u.findings(&v.drawing, p.Base, o.Turn)
	}
	r := u.widest()
	v.box = geometry.Box{Min: geometry.Point{X: -r, Y: -r}, Max: geometry.Point{X: r, Y: r}}
	return layout{plan: p.Base, file: g.File, options: o, letters: letters, views: []view{v}}, ctx.Err()
}

// widest returns the radius of the glass as it is seen from below.
func (u underside) widest() float64 {
	widest, blank := 0.0, u.plan.Blank
	for _, z := range levels(0, blank.Height()) {
		widest = max(widest, blank.Profile().Radius(z))
	}
	return widest
}

// glass draws what lies under the cuts: the side beyond the foot, the rounding of the foot,
// the flat base, and the punty mark's hollow.
func (u underside) glass(d *drawing.Drawing) {
	blank := u.plan.Blank
	round := func(radius float64, t tone) {
		d.Add(drawing.Paper, paint(drawing.Circle(geometry.Point{}, radius), t))
	}
	line := func(radius, width float64, t tone) {
		const fine = 0.01 // mm
		points := drawing.Thinned(drawing.Circle(geometry.Point{}, radius), fine)
		d.Add(drawing.Marks, drawing.Stroke{Points: points, Closed: true, Pen: drawing.Pen{Width: width, Ink: t.ink()}})
	}
	const rings = 24
	widest, foot, base := u.widest(), blank.Profile().Radius(0), blank.BaseRadius()
	for i := range rings { // the side, darker to its edge
		share := float64(i) / rings
		round(widest+(foot-widest)*share, tone(0.62+0.2*share))
	}
	for i := range rings { // the foot's rounding, lighter where it turns to the eye
		share := float64(i) / rings
		round(foot+(base-foot)*share, tone(0.5+0.38*share))
	}
	round(base, 0.91)
	if hollow := blank.Hollow.Across / 2; hollow > 0 {
		for i := range rings {
			share := float64(i) / rings
			round(hollow*(1-share), tone(0.8+0.14*math.Sqrt(share)))
		}
		line(hollow, 0.12, 0.62)
	}
	line(widest, 0.25, 0.2)
	line(foot, 0.15, 0.4)
	if base < foot {
		line(base, 0.15, 0.55)
	}
}

// baseStep is how far apart the tones of a base's cuts are: finer than on the side, since along
// the lamp a ray goes through many of them.
const baseStep = nearStep / 3

// cuts draws the cuts: a dark line round all of them, and their walls as the light falls on
// them.
func (u underside) cuts(d *drawing.Drawing) {
	whole, shades := newOutlines(edgeStray), newShades(baseStep, shadeStray)
	for _, f := range visible(u.plan, detailOf(u.plan, 1)) {
		whole.add(f.outline)
		bands(f.outline, baseStep, f.bright.on, shades.add)
	}
	ground := whole.lines()
	if len(ground) == 0 {
		return
	}
	for _, line := range ground {
		d.Add(drawing.Cuts, drawing.Stroke{Points: line, Closed: true, Pen: drawing.Pen{Width: 0.2, Ink: tone(0.2).ink()}})
	}
	d.Add(drawing.Cuts, drawing.Area{Outlines: ground, Ink: nearLamp().level.ink()})
	d.Add(drawing.Cuts, shades.areas()...)
}

// findings rings each finding of the base, in every repeat it recurs in.
func (u underside) findings(d *drawing.Drawing, base *pattern.Plan, turn float64) {
	var all []tagged
	told, _ := report.Listed(base)
	for i, g := range told {
		var ringed []geometry.Point
		for _, f := range g.Findings {
			for turns := range base.Periods() {
				at := base.Surface.Forward(f.Theta+float64(turns*base.Period)*base.PitchAngle()-turn, f.Height)
				if !crowded(ringed, at) {
					ringed = append(ringed, at)
					all = append(all, tagged{at, g.Letter, math.Pi/4 + float64(i)*math.Pi/2})
				}
			}
		}
	}
	drawTagged(d, all)
}
