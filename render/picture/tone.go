package picture

import (
	"math"

	"roundlay/render/drawing"
)

// tone is how light something is: 0 is the darkest there is, 1 is white.
type tone float64

// ink returns the colour of a tone, on a scale that goes from a deep sea green
// over its greys to white and on which each step is lighter to the eye, and to a
// printer without colours, than the one before.
func (t tone) ink() drawing.Ink {
	scale := [...]struct {
		tone             tone
		red, green, blue float64
	}{
		{0, 22, 44, 52},
		{0.35, 78, 108, 114},
		{0.65, 150, 176, 178},
		{0.85, 208, 223, 221},
		{1, 255, 255, 255},
	}
	t = min(max(t, 0), 1)
	i := 1
	for t > scale[i].tone {
		i++
	}
	a, b := scale[i-1], scale[i]
	share := float64((t - a.tone) / (b.tone - a.tone))
	mix := func(x, y float64) uint8 { return uint8(math.Round(x + share*(y-x))) }
	return drawing.Colour(mix(a.red, b.red), mix(a.green, b.green), mix(a.blue, b.blue))
}

// knot is one point of a grading: the tone at a place.
type knot struct {
	at   float64
	tone tone
}

// grade returns the tone at a place between knots whose places rise.
func grade(at float64, knots ...knot) tone {
	for i, b := range knots[1:] {
		if a := knots[i]; at <= b.at {
			return a.tone + tone((at-a.at)/(b.at-a.at))*(b.tone-a.tone)
		}
	}
	return knots[len(knots)-1].tone
}

// backdrop returns the colour of what the glass stands before, a light warm
// grey, and of that colour with some of its light taken away.
func backdrop(light float64) drawing.Ink {
	share := func(full float64) uint8 { return uint8(math.Round(full * light)) }
	return drawing.Colour(share(231), share(227), share(219))
}

// warning is the colour of what is found wrong: none other is warm and dark.
func warning() drawing.Ink { return drawing.Colour(168, 62, 34) }
