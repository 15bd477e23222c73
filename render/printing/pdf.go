package printing

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"unicode/utf16"

	"github.com/tdewolff/canvas/renderers/pdf"

	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// PDF writes pages as one document, each page in its own size, with real words
// in fonts cut down to the letters used. It asks to be printed without scaling.
func PDF(w io.Writer, title string, pages []Page, letters *lettering.Letters) error {
	if len(pages) == 0 {
		return errors.New("a PDF file needs at least one page")
	}
	var file bytes.Buffer
	// Streams are left plain here for reproducible to find its way.
	doc := pdf.New(&file, pages[0].Width, pages[0].Height, &pdf.Options{SubsetFonts: true})
	doc.SetInfo("", "", "", "", "roundlay")
	for i, page := range pages {
		if err := page.check(); err != nil {
			return fmt.Errorf("page %d: %w", i+1, err)
		}
		if i > 0 {
			doc.NewPage(page.Width, page.Height)
		}
		for _, layer := range drawing.Layers() {
			if err := paint(doc, page.Drawing.On(layer), letters); err != nil {
				return fmt.Errorf("page %d: %w", i+1, err)
			}
		}
	}
	if err := doc.Close(); err != nil {
		return err
	}
	settled, err := reproducible(file.Bytes(), catalog(pages), title)
	if err != nil {
		return err
	}
	return write(w, settled)
}

// catalog returns what a document's catalog says besides canvas's own entries:
// that it is to be printed as it is (ISO 32000-1, 12.2), and what its pages are
// called (12.4.2).
func catalog(pages []Page) []byte {
	entry := []byte("/Lang(en)/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>/PageLabels<</Nums[")
	for i, page := range pages {
		if page.Label == "" {
			entry = fmt.Appendf(entry, "%d<</S/D/St %d>>", i, i+1)
		} else {
			entry = fmt.Appendf(entry, "%d<</P%s>>", i, pdfText(page.Label))
		}
	}
	return append(entry, "]>>"...)
}

// pdfText returns a text string: UTF-16 in hexadecimal, which holds any letter.
func pdfText(text string) []byte {
	out := []byte("<FEFF")
	for _, unit := range utf16.Encode([]rune(text)) {
		out = fmt.Appendf(out, "%04X", unit)
	}
	return append(out, '>')
}
