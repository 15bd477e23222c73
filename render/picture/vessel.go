package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/render/drawing"
)

// vessel is the uncut glass in the picture. Its wall and its foot are painted in
// shells, each over the one outside it, from dark at the surface over the gleam
// inside the glass to dark at the hollow; the hollow in upright strips.
type vessel struct {
	blank           *glass.Blank
	stance          stance
	outside, inside body
	bed             bed
}

func newVessel(b *glass.Blank, s stance) vessel {
	v := vessel{blank: b, stance: s, outside: outside(b, s), inside: shell(b, s, 1)}
	v.bed = newBed(v.inside)
	return v
}

// wall returns the tone of the glass seen edge-on, at a share of the way in.
func wall(share float64) tone {
	return grade(share, knot{0, 0.38}, knot{0.05, 0.5}, knot{0.2, 0.72}, knot{0.38, 0.91},
		knot{0.5, 0.87}, knot{0.75, 0.7}, knot{1, 0.55})
}

// hollow returns the tone of the empty glass at a share of its width from the
// middle, -1 at the left and 1 at the right.
func hollow(share float64) tone {
	return tone(0.885 - 0.02*share - 0.16*math.Pow(share, 4))
}

// behind draws the parts of the glass that lie under the cuts on its far side.
func (v vessel) behind(d *drawing.Drawing) {
	v.shadow(d)
	d.Add(drawing.Paper, drawing.Fill{Points: v.outside.outline(), Ink: wall(0).ink()})
	const shells = 40
	for i := 1; i < shells; i++ {
		share := float64(i) / shells
		d.Add(drawing.Paper, paint(shell(v.blank, v.stance, share).front(-1, 1), wall(share)))
	}
	v.hollow(d)
	v.floor(d)
	v.opening(d)
}

// hollow paints the hollow in strips, enough that no step between tones shows. Each
// reaches under the next, so that there is no seam.
func (v vessel) hollow(d *drawing.Drawing) {
	edges := strips(hollow)
	for i := range len(edges) - 2 {
		middle := (edges[i] + edges[i+1]) / 2
		d.Add(drawing.Paper, paint(v.inside.front(edges[i], edges[i+2]), hollow(middle)))
	}
}

// strips returns the shares of a width at which a tone has changed by one step
// after another, from -1 to 1. The last stands twice.
func strips(at func(share float64) tone) []float64 {
	const (
		fine = 1000
		step = 0.005
	)
	edges := []float64{-1}
	for i := 1; i < fine; i++ {
		x := 2*float64(i)/fine - 1
		if math.Abs(float64(at(x)-at(edges[len(edges)-1]))) > step {
			edges = append(edges, x)
		}
	}
	return append(edges, 1, 1)
}

// floor draws the floor of the hollow, seen from above through the near wall.
func (v vessel) floor(d *drawing.Drawing) {
	if v.stance.down == 0 {
		return
	}
	foot := v.inside.foot()
	v.disc(d, foot, func(share float64) tone { return 0.95 - 0.05*tone(share*share) })
	d.Add(drawing.Paper, drawing.Stroke{
		Points: drawing.Thinned(v.inside.arc(foot, math.Pi/2, 3*math.Pi/2), stray), Pen: drawing.Pen{Width: 0.15, Ink: tone(0.66).ink()},
	})
}

// opening draws the inside of the rim, where only the far wall is before the eye.
func (v vessel) opening(d *drawing.Drawing) {
	if v.stance.down > 0 {
		v.disc(d, v.inside.rim(), func(share float64) tone { return hollow(share) + 0.055 })
	}
}

// disc paints a level circle of the inside in upright strips.
func (v vessel) disc(d *drawing.Drawing, z float64, at func(share float64) tone) {
	edges := strips(at)
	for i := range len(edges) - 2 {
		from, to := math.Asin(edges[i]), math.Asin(edges[i+2])
		ring := append(v.inside.arc(z, from, to), v.inside.arc(z, math.Pi-to, math.Pi-from)...)
		d.Add(drawing.Paper, paint(ring, at((edges[i]+edges[i+1])/2)))
	}
}

// stray is how far painted outlines may deviate from the glass, to save points. The eye
// sees only a gentle change of tone there.
const stray = 0.05 // mm

// paint fills an outline in a tone.
func paint(outline []geometry.Point, t tone) drawing.Fill {
	points := slices.Clone(drawing.Thinned(outline, stray))
	for i, p := range points {
		points[i] = geometry.Point{X: grained(p.X), Y: grained(p.Y)}
	}
	return drawing.Fill{Points: points, Ink: t.ink()}
}
