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
// letter is defined once, in units of which em make its size, and used wherever
// it stands, which makes the file a tenth as long.
type outlines struct {
	file    *bytes.Buffer
	height  float64 // of the page: y grows downwards in the file
	letters *lettering.Letters
	names   map[glyph]string // of the letters defined; none for a blank
}

// em is how many units a letter's size has: one is 0.005 mm in words of 15 points.
const em = 1000

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
	scale := em / float64(face.Font.Head.UnitsPerEm)
	if err := face.Font.GlyphPath(outline, face.Font.GlyphIndex(g.letter), 0, 0, 0, scale, font.NoHinting); err != nil {
		return fmt.Errorf("the letter %q: %w", g.letter, err)
	}
	if outline.Empty() {
		o.names[g] = ""
		return nil
	}
	o.names[g] = name(len(o.names))
	fmt.Fprintf(o.file, "<path id=%q d=\"", o.names[g])
	o.data(outline)
	o.file.WriteString("\"/>\n")
	return nil
}

// data writes an outline to the whole unit, y downwards. TrueType letters have
// straight and quadratic sides, no others; those of a round follow on each other
// in a way that rounding puts off by two units at most.
func (o *outlines) data(outline *canvas.Path) {
	const unit = 1000 // thousandths, in which steps count
	steps := steps{file: o.file}
	at := func(p canvas.Point) (x, y int) { return unit * int(math.Round(p.X)), -unit * int(math.Round(p.Y)) }
	for side := outline.Scanner(); side.Scan(); {
		x, y := at(side.End())
		switch side.Cmd() {
		case canvas.MoveToCmd:
			steps.move(x, y)
		case canvas.LineToCmd:
			steps.line(x, y)
		case canvas.QuadToCmd:
			overX, overY := at(side.CP1())
			steps.quad(overX, overY, x, y, 2*unit)
		case canvas.CloseCmd:
			steps.end()
		}
	}
}

// name returns the shortest name that is still free for the nth letter.
func name(n int) string {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
	if n < len(letters) {
		return letters[n : n+1]
	}
	return name(n/len(letters)-1) + letters[n%len(letters):n%len(letters)+1]
}

// write writes one text.
func (o *outlines) write(t drawing.Text) {
	face, start := o.letters.Face(t.Size, t.Bold, t.Ink), o.letters.Start(t)
	fmt.Fprintf(o.file, `<g role="img" aria-label="%s"`, escaped(t.Words))
	if t.Ink != drawing.Black {
		fmt.Fprintf(o.file, ` fill="%s"`, hex(t.Ink))
	}
	fmt.Fprintf(o.file, ` transform="translate(%s %s)`, decimal(start.X), decimal(o.height-start.Y))
	if t.Turn != 0 {
		fmt.Fprintf(o.file, "rotate(%s)", decimal(-t.Turn*180/math.Pi))
	}
	fmt.Fprintf(o.file, `scale(%.6g)">`, face.Size/em)
	along, unit := 0, em/float64(face.Font.Head.UnitsPerEm)
	for _, letter := range o.letters.Printable(t.Words) {
		if name := o.names[glyph{letter, t.Bold}]; name != "" {
			o.file.WriteString(`<use xlink:href="#` + name + `"`)
			if along > 0 {
				fmt.Fprintf(o.file, ` x="%.0f"`, unit*float64(along))
			}
			o.file.WriteString("/>")
		}
		along += int(face.Font.GlyphAdvance(face.Font.GlyphIndex(letter)))
	}
	o.file.WriteString("</g>")
}
