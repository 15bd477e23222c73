package printing

import (
	"bytes"
	"fmt"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"

	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// outlines writes words into an SVG file as the outlines of their letters. Each
// letter is defined once, in its font's units, and used wherever it stands,
// which makes the file a tenth as long.
type outlines struct {
	file    *bytes.Buffer
	height  float64 // of the page: y grows downwards in the file
	letters *lettering.Letters
	names   map[glyph]string // of the letters defined; none for a blank
}

// glyph is one letter in one weight.
type glyph struct {
	letter rune
	bold   bool
}

// define defines every letter of a drawing.
func (o *outlines) define(d drawing.Drawing) error {
	o.file.WriteString("<defs>\n")
	for _, layer := range drawing.Layers() {
		for _, m := range d.On(layer) {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			for _, letter := range o.letters.Printable(text.Words) {
				if err := o.defineGlyph(glyph{letter, text.Bold}); err != nil {
					return err
				}
			}
		}
	}
	o.file.WriteString("</defs>\n")
	return nil
}

func (o *outlines) defineGlyph(g glyph) error {
	if _, done := o.names[g]; done {
		return nil
	}
	face := o.letters.Face(1, g.bold, drawing.Black)
	outline := &canvas.Path{}
	if err := face.Font.GlyphPath(outline, face.Font.GlyphIndex(g.letter), 0, 0, 0, 1, font.NoHinting); err != nil {
		return fmt.Errorf("the letter %q: %w", g.letter, err)
	}
	if outline.Empty() {
		o.names[g] = ""
		return nil
	}
	weight := 'r'
	if g.bold {
		weight = 'b'
	}
	o.names[g] = fmt.Sprintf("%c%x", weight, g.letter)
	fmt.Fprintf(o.file, "<path id=\"%s\" d=\"%s\"/>\n", o.names[g], outline.ToSVG())
	return nil
}

// write writes one text.
func (o *outlines) write(t drawing.Text) {
	face, start := o.letters.Face(t.Size, t.Bold, t.Ink), o.letters.Start(t)
	fmt.Fprintf(o.file, `<g role="img" aria-label="%s"`, escaped(t.Words))
	if t.Ink != drawing.Black {
		fmt.Fprintf(o.file, ` fill="#%02[1]x%02[1]x%02[1]x"`, uint8(t.Ink))
	}
	fmt.Fprintf(o.file, ` transform="translate(%.6g %.6g)`, micrometre(start.X), micrometre(o.height-start.Y))
	if t.Turn != 0 {
		fmt.Fprintf(o.file, "rotate(%.7g)", -t.Turn*180/math.Pi)
	}
	fmt.Fprintf(o.file, "scale(%.7[1]g -%.7[1]g)\">", face.MmPerEm)
	along := 0
	for _, letter := range o.letters.Printable(t.Words) {
		if name := o.names[glyph{letter, t.Bold}]; name != "" {
			fmt.Fprintf(o.file, `<use xlink:href="#%s" x="%d"/>`, name, along)
		}
		along += int(face.Font.GlyphAdvance(face.Font.GlyphIndex(letter)))
	}
	o.file.WriteString("</g>")
}
