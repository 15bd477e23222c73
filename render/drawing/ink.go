package drawing

import "slices"

// Ink is what a mark is drawn in: a grey, from Black to White, or a colour. It
// is opaque. A number from 0 to 255 is a grey; a colour has its red, green and
// blue above those eight bits, and keeps in them the grey that a printer
// without colours makes of it.
type Ink uint32

// The ends of the range of greys.
const (
	Black Ink = 0
	White Ink = 255
)

// Colour returns the ink of a colour.
func Colour(red, green, blue uint8) Ink {
	r, g, b := Ink(red), Ink(green), Ink(blue)
	// ISO 32000-1, 10.3.3: 0.30 R + 0.59 G + 0.11 B.
	return r<<24 | g<<16 | b<<8 | (30*r+59*g+11*b+50)/100
}

// Grey returns the grey of an ink, from 0 for black to 255 for white.
func (i Ink) Grey() uint8 { return uint8(i) }

// Coloured reports whether an ink is a colour.
func (i Ink) Coloured() bool { return i>>8 != 0 }

// RGB returns the red, green and blue of an ink.
func (i Ink) RGB() (red, green, blue uint8) {
	if !i.Coloured() {
		return i.Grey(), i.Grey(), i.Grey()
	}
	return uint8(i >> 24), uint8(i >> 16), uint8(i >> 8)
}

// Coloured reports whether any mark of a drawing is in colour.
func (d Drawing) Coloured() bool {
	for _, marks := range d.layers {
		if slices.ContainsFunc(marks, func(m Mark) bool { return m.ink().Coloured() }) {
			return true
		}
	}
	return false
}

func (s Stroke) ink() Ink { return s.Pen.Ink }
func (f Fill) ink() Ink   { return f.Ink }
func (a Area) ink() Ink   { return a.Ink }
func (t Text) ink() Ink   { return t.Ink }
