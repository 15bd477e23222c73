package files

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"roundlay/pattern"
	"roundlay/render/bench"
	"roundlay/render/page"
	"roundlay/render/picture"
	"roundlay/render/wrap"
)

// Shown is which part of a paper a picture shows: a page, from 1, or in an SVG 0 for the
// whole in one picture; and in a PNG, how many dots to the inch.
type Shown struct {
	Page int
	DPI  float64
}

// UsualDPI is how many dots to the inch a picture of a page has unless asked otherwise.
const UsualDPI = 150

// minDPI is the coarsest that a picture of a page may be.
const minDPI = 10

// FitsDPI refuses a number of dots to the inch that is none for pages of some paper.
func FitsDPI(dpi float64, o page.Options) error {
	if most := o.MaxDPI(); !(dpi >= minDPI && dpi <= most) {
		return wrongf("dpi", "read %g; accepted: dots to the inch, from %d to %.0f on this paper", dpi, minDPI, most)
	}
	return nil
}

// Wrap makes the file of a paper with an ending.
func Wrap(w *wrap.Wrap, ending string, show Shown) ([]byte, error) {
	if show.Page > len(w.Pages) {
		return nil, wrongf("page", "read %d; accepted: a page of the paper, from 1 to %d", show.Page, len(w.Pages))
	}
	svg := w.SVG
	if show.Page > 0 {
		svg = func(out io.Writer) error { return w.PageSVG(out, show.Page) }
	}
	png := func(out io.Writer) error { return w.PagePNG(out, show.Page, show.DPI) }
	return made(ending, w.PDF, svg, png)
}

// Picture makes the file of a glass's picture with an ending.
func Picture(ctx context.Context, p *pattern.Plan, o picture.Options, ending string) ([]byte, error) {
	return Pictures(ctx, []picture.Glass{{Plan: p}}, o, ending)
}

// Pictures makes the file of a picture of several glasses beside each other.
func Pictures(ctx context.Context, glasses []picture.Glass, o picture.Options, ending string) ([]byte, error) {
	drawn, err := picture.Beside(ctx, glasses, o)
	if err != nil {
		return nil, err
	}
	return made(ending, drawn.PDF, drawn.SVG, drawn.PNG)
}

// Sheet makes the bench sheet of plans. step is called after each.
func Sheet(ctx context.Context, plans []*pattern.Plan, o page.Options, step func(*pattern.Plan)) ([]byte, error) {
	drawn, err := bench.New(ctx, plans, o, step)
	if err != nil {
		return nil, Refused(err)
	}
	return made(PDF, drawn.PDF, nil, nil)
}

// made writes the file of an ending.
func made(ending string, pdf, svg, png func(io.Writer) error) ([]byte, error) {
	write := map[string]func(io.Writer) error{PDF: pdf, SVG: svg, PNG: png}[ending]
	if write == nil {
		return nil, fmt.Errorf("no file ends in %q", ending)
	}
	var data bytes.Buffer
	err := write(&data)
	return data.Bytes(), err
}
