package picture

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// lamp is the light on the walls of grooves. It falls along the surface, so that
// of a groove's two flanks one is light and the other dark wherever on the glass
// it stands.
type lamp struct {
	from              geometry.Point // a unit vector along the surface: X to the right, Y up
	dark, level, full tone           // facing away from it, level, and facing it
	soft              float64        // how far a wall turns, as a sine, before it is clearly light or dark
}

// nearLamp shines from the upper left on the side that faces the eye, and farLamp on
// the other, which is seen from behind: there the left is the surface's right. Far
// walls change the tone of the glass before them only a little.
func nearLamp() lamp { return lamp{geometry.Point{X: -0.42, Y: 0.907}, 0.13, 0.74, 1, 0} }
func farLamp() lamp  { return lamp{geometry.Point{X: 0.42, Y: 0.907}, -0.1, -0.02, 0.08, 0} }

// baseLamp is nearLamp for a base. There it falls one way on all of the glass, and rays lie
// along it whose walls turn from light to dark on their way: softly, or they look blocky.
func baseLamp() lamp {
	l := nearLamp()
	l.soft = 0.15
	return l
}

// lampOver is the lamp on the side of a surface that faces the eye: a wall, or a base.
func lampOver(outside *geometry.Surface) lamp {
	if outside.Level() {
		return baseLamp()
	}
	return nearLamp()
}

// shine returns what is added to the tone of a panel that faces to the right by an
// angle from the middle of the near side, or of the far one: those to the left on
// the picture shine, those to the right are in their own shade.
func (l lamp) shine(p panel, angle float64) tone {
	if !p.is {
		return 0
	}
	side := math.Copysign(1, l.from.X)
	return tone(side*math.Sin(angle)) * (l.full - l.level)
}

// on returns the tone of a wall that falls by the given slope to the right and up
// along the surface: a wall faces where it falls to.
func (l lamp) on(slope geometry.Point) tone {
	steep := r2.Norm(slope)
	if steep == 0 {
		return l.level
	}
	facing := r2.Dot(slope, l.from) / steep
	// The root keeps the flanks of a cut apart that runs nearly along the light.
	turned := math.Abs(facing)
	share := tone(math.Min(1.6*steep/math.Sqrt(1+steep*steep), 1) * math.Sqrt(turned))
	if l.soft > 0 {
		share *= tone(math.Sqrt(turned * (1 + l.soft) / (turned + l.soft)))
	}
	if facing > 0 {
		return l.level + share*(l.full-l.level)
	}
	return l.level + share*(l.dark-l.level)
}
