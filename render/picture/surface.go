package picture

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// before draws what lies over the far cuts and under the near ones: the light of
// a window on the near side, the rim, and the outline.
func (v vessel) before(d *drawing.Drawing) {
	low, high := v.inside.foot(), v.outside.rim()
	tall := high - low
	v.gleam(d, -0.79, -0.725, low+0.14*tall, high-0.07*tall, 0.96)
	v.gleam(d, -0.69, -0.675, low+0.2*tall, high-0.1*tall, 0.95)
	v.gleam(d, 0.84, 0.86, low+0.18*tall, high-0.08*tall, 0.91)
	d.Add(drawing.Marks, drawing.Stroke{Points: v.outside.outline(), Closed: true, Pen: drawing.Pen{Width: 0.25, Ink: tone(0.2).ink()}})
	v.lip(d)
}

// gleam draws one light between two shares of the width and two heights, with
// round ends.
func (v vessel) gleam(d *drawing.Drawing, from, to, low, high float64, t tone) {
	const parts = 10
	middle, half := (from+to)/2, (to-from)/2
	// On a low glass there is no room for its ends to be round.
	end := min(half*v.outside.radius((low+high)/2), (high-low)/2)
	var left, right []geometry.Point
	add := func(z, share float64) {
		left = append(left, v.outside.at(v.outside.edge(middle-half*share, z), z))
		right = append(right, v.outside.at(v.outside.edge(middle+half*share, z), z))
	}
	for i := range parts {
		sin, cos := math.Sincos(float64(i) / parts * math.Pi / 2)
		add(low+end*(1-cos), sin)
	}
	for _, z := range levels(low+end, high-end) {
		add(z, 1)
	}
	for i := range parts {
		sin, cos := math.Sincos(float64(i+1) / parts * math.Pi / 2)
		add(high-end*(1-sin), cos)
	}
	slices.Reverse(left)
	d.Add(drawing.Marks, paint(append(right, left...), t))
}

// lip draws the rim's level top, light where it faces the window and its far end.
func (v vessel) lip(d *drawing.Drawing) {
	if v.stance.down == 0 {
		return
	}
	const parts = 60
	z := v.outside.rim()
	for k := range parts {
		from := 2 * math.Pi * float64(k) / parts
		to := from + 2*math.Pi*1.5/parts // under the next
		in := v.inside.arc(z, from, to)
		slices.Reverse(in)
		t := 0.86 + 0.13*math.Cos(2*from-1.3)
		d.Add(drawing.Marks, paint(append(v.outside.arc(z, from, to), in...), tone(t)))
	}
	for _, ring := range []struct {
		body  body
		width float64
		tone  tone
	}{{v.inside, 0.15, 0.42}, {v.outside, 0.2, 0.22}} {
		line := drawing.Thinned(ring.body.arc(z, 0, 2*math.Pi), 2*drawing.Flatness)
		d.Add(drawing.Marks, drawing.Stroke{
			Points: line[:len(line)-1], Closed: true, Pen: drawing.Pen{Width: ring.width, Ink: ring.tone.ink()},
		})
	}
}
