package printing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"

	"github.com/tdewolff/canvas/renderers/svg"

	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// SVG writes a page as a picture true to size, one group a layer. Words are
// outlines, labelled with what they say: of the programs that open SVG only
// browsers read a font from the file, and others would set the words in one of
// their own, a sixth longer.
func SVG(w io.Writer, title string, page Page, letters *lettering.Letters) error {
	if err := page.check(); err != nil {
		return err
	}
	var file bytes.Buffer
	options := svg.DefaultOptions // a literal of our own would lose its millimetres
	picture := svg.New(&file, page.Width, page.Height, &options)
	fmt.Fprintf(&file, "<title>%s</title>\n", escaped(title))
	words := outlines{file: &file, height: page.Height, letters: letters, names: map[glyph]string{}}
	if err := words.define(page.Drawing); err != nil {
		return err
	}
	for _, layer := range drawing.Layers() {
		fmt.Fprintf(&file, "<g id=\"%s\">\n", layer)
		for _, m := range page.Drawing.On(layer) {
			if text, ok := m.(drawing.Text); ok {
				words.write(text)
			} else {
				paint(picture, []drawing.Mark{m}, letters)
			}
			file.WriteByte('\n')
		}
		file.WriteString("</g>\n")
	}
	if err := picture.Close(); err != nil {
		return err
	}
	return write(w, file.Bytes())
}

func escaped(text string) []byte {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(text)) // a Buffer takes every write
	return b.Bytes()
}
