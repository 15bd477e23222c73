package wrap

import (
	"context"
	"fmt"
	"io"

	"roundlay/pattern"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// Wrap is a plan's paper, ready to be written: in pages to print, and in one
// picture to look at.
type Wrap struct {
	Title string
	Pages []printing.Page
	Whole printing.Page
	// Remarks is for the person who prints it: what the paper can't show, how it is
	// divided, what was corrected.
	Remarks []string

	letters *lettering.Letters
}

// New draws the paper for a plan's blank. The error says why that is impossible, or
// is the context's.
func New(ctx context.Context, p *pattern.Plan, o Options) (*Wrap, error) {
	if o.Side == Base {
		return newRound(ctx, p, o)
	}
	a, err := newComposer(p, o)
	if err != nil {
		return nil, err
	}
	a.Corrects = true
	if err := a.roomForBars(); err != nil {
		return nil, err
	}
	w := &Wrap{Title: a.title(), letters: a.Letters, Remarks: a.remarks()}
	pages, ok := a.layout()
	if !ok {
		return nil, o.Refuse(fmt.Sprintf(" (%.0f × %.0f mm, margin %.0f mm), on which the %s does not go, not even in %d pieces",
			o.Paper.Width, o.Paper.Height, o.Margin, a.what(), maxPieces), "a larger sheet")
	}
	if words := a.nearMiss(ctx, pages); words != "" {
		w.Remarks = append(w.Remarks, words)
	}
	if w.Pages, err = a.pages(ctx, pages); err != nil {
		return nil, err
	}
	w.Whole, err = a.picture(ctx)
	return w, err
}

// roomForBars refuses paper too small for the check bars.
func (a composer) roomForBars() error {
	for _, f := range []page.Format{a.options.Portrait(), a.options.Landscape()} {
		if err := a.options.RoomForBars(f, a.Unit); err != nil {
			return err
		}
	}
	return nil
}

// PDF writes the pages to print.
func (w *Wrap) PDF(to io.Writer) error { return printing.PDF(to, w.Title, w.Pages, w.letters) }

// SVG writes the whole wrap in one picture.
func (w *Wrap) SVG(to io.Writer) error { return printing.SVG(to, w.Title, w.Whole, w.letters) }

// PageSVG writes one page, from 1.
func (w *Wrap) PageSVG(to io.Writer, number int) error {
	return printing.SVG(to, w.Title, w.Pages[number-1], w.letters)
}

// PagePNG writes one page, from 1, at a number of dots to the inch.
func (w *Wrap) PagePNG(to io.Writer, number int, dpi float64) error {
	return printing.PNG(to, w.Pages[number-1], dpi, w.letters)
}
