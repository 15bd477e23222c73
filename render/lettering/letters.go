// Package lettering measures and breaks words in the Go fonts. These come with the
// program, so widths are the same on every machine.
//
// Call [Load] first. It returns [Letters]: Lines breaks words into lines of a width,
// Shortened cuts them off, and Width and Box say how much room they take. Code that
// draws words uses Face and Start.
package lettering

import (
	"fmt"
	"image/color"
	"math"
	"strings"
	"sync"
	"unicode"

	"github.com/tdewolff/canvas"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/text/unicode/norm"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// MillimetresPerPoint is exact: 72 points to the inch.
const MillimetresPerPoint = geometry.MillimetresPerInch / 72

// Letters is the two weights words are set in. It may be used from several
// goroutines at once.
type Letters struct {
	family *canvas.FontFamily
	widths sync.Map // of setting to float64: the same few words are measured again and again
}

// setting is words as they are set.
type setting struct {
	words string
	size  float64
	bold  bool
}

// Load reads the fonts.
func Load() (*Letters, error) {
	family := canvas.NewFontFamily("Go")
	if err := family.LoadFont(goregular.TTF, 0, canvas.FontRegular); err != nil {
		return nil, fmt.Errorf("font: %w", err)
	}
	if err := family.LoadFont(gobold.TTF, 0, canvas.FontBold); err != nil {
		return nil, fmt.Errorf("font: %w", err)
	}
	return &Letters{family: family}, nil
}

// Face returns the face that words are set in at a size in points.
func (l *Letters) Face(size float64, bold bool, ink drawing.Ink) *canvas.FontFace {
	weight := canvas.FontRegular
	if bold {
		weight = canvas.FontBold
	}
	red, green, blue := ink.RGB()
	return l.family.Face(size, color.RGBA{red, green, blue, 255}, weight, canvas.FontNormal)
}

// Printable returns words as they can be set: accents joined to their letters,
// breaks and tabs as spaces, and a box for what the fonts do not have.
func (l *Letters) Printable(words string) string {
	font := l.Face(1, false, drawing.Black).Font // both weights have the same letters
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r) || unicode.IsSpace(r):
			return ' '
		case font.GlyphIndex(r) == 0:
			return '□'
		}
		return r
	}, norm.NFC.String(words))
}

// Width returns how long words are, in millimetres, at a size in points.
func (l *Letters) Width(words string, size float64, bold bool) float64 {
	key := setting{words, size, bold}
	if known, ok := l.widths.Load(key); ok {
		return known.(float64)
	}
	width := l.Face(size, bold, drawing.Black).TextWidth(l.Printable(words))
	l.widths.Store(key, width)
	return width
}

// Start returns the left end of a text's baseline.
func (l *Letters) Start(t drawing.Text) geometry.Point {
	before := [...]float64{drawing.Left: 0, drawing.Centre: 0.5, drawing.Right: 1}[t.Align] * l.Width(t.Words, t.Size, t.Bold)
	sin, cos := math.Sincos(t.Turn)
	return geometry.Point{X: t.At.X - before*cos, Y: t.At.Y - before*sin}
}

// Box returns the smallest box round a text from the top of its highest capital
// to the foot of its lowest tail, whichever way it is turned.
func (l *Letters) Box(t drawing.Text) geometry.Box {
	m, start := l.Face(t.Size, t.Bold, t.Ink).Metrics(), l.Start(t)
	sin, cos := math.Sincos(t.Turn)
	return geometry.Box{
		Min: geometry.Point{Y: -m.Descent}, Max: geometry.Point{X: l.Width(t.Words, t.Size, t.Bold), Y: m.Ascent},
	}.Moved(geometry.Motion{Cos: cos, Sin: sin, X: start.X, Y: start.Y})
}
