package screen

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Small returns a small picture of a plan's glass from the side, as SVG: its outline and the
// cuts on its near side, the middle of repeat 1 in front. It is drawn in the colour of the
// words beside it.
func Small(p *pattern.Plan) string {
	const air, rough = 1.5, 0.15 // mm; a small picture shows less
	round := outline(p.Blank)
	for i := len(round) - 1; i >= 0; i-- { // and down again on the left
		round = append(round, geometry.Point{X: -round[i].X, Y: round[i].Y})
	}
	t := thinner{within: rough}
	edge := path(nil).line(t.thin(round), true)
	box := geometry.BoxOf(round...).Grow(air)
	var cuts path
	var front []geometry.Point
	for turns := range p.Periods() {
		by := float64(turns*p.Period) * p.PitchAngle()
		for _, c := range p.Cuts {
			for _, o := range c.Outlines {
				if front = nearSide(front[:0], p, o.Points, by); len(front) > 2 {
					cuts = cuts.line(t.thin(front), true)
				}
			}
		}
	}
	width, height := box.Size()
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="%.2f %.2f %.2f %.2f"><g transform="scale(1 -1)">`+
		`<path fill="none" stroke="currentColor" stroke-width="0.8" d="%s"/><path fill="currentColor" d="%s"/></g></svg>`,
		box.Min.X, -box.Max.Y, width, height, edge, cuts)
}

// nearSide adds an outline as it is seen from the side, turned round the glass by an angle;
// nothing if any of it is on the far side.
func nearSide(to []geometry.Point, p *pattern.Plan, points []geometry.Point, by float64) []geometry.Point {
	for _, q := range points {
		theta, along := p.Surface.ReverseAlong(q)
		sin, cos := math.Sincos(theta + by)
		if cos < 0 {
			return to[:0]
		}
		r, z := p.Surface.At(along)
		to = append(to, geometry.Point{X: r * sin, Y: z})
	}
	return to
}
