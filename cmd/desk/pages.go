package desk

import (
	"bytes"
	"context"
	"slices"

	"roundlay/render/report"
	"roundlay/render/screen"
	"roundlay/render/wrap"
)

// pages draws the paper of a blank, or with "what": "test-page" the page that tries a
// printer, page by page: to look at, and to print from the page itself.
func (d *Desk) pages(ctx context.Context, body []byte) (*Reply, error) {
	var ask downloadRequest
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, blank, err := ask.onBlank()
	if err != nil {
		return unlaidAnswer(err)
	}
	o, err := ask.options(j)
	if err != nil {
		return nil, err
	}
	var w *wrap.Wrap
	var remarks []string
	switch ask.What {
	case "", "wrap":
		drawn, p, err := d.paper(ctx, j, blank, o)
		if err != nil {
			return unlaidAnswer(err)
		}
		w, remarks = drawn, slices.Concat(drawn.Remarks, report.Remeasure(p))
	case "test-page":
		if w, err = d.testPage(ctx, j, blank, o); err != nil {
			return unlaidAnswer(err)
		}
		remarks = w.Remarks
	default:
		return nil, badRequest("what: read %q; accepted: wrap, test-page", ask.What)
	}
	remarks, ways := onThePage(remarks)
	out := pagesAnswer{Ways: ways, Width: screen.Number(o.Paper.Width), Height: screen.Number(o.Paper.Height), Title: w.Title, Remarks: remarks}
	for i, page := range w.Pages {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		var svg bytes.Buffer
		if err := w.PageSVG(&svg, i+1); err != nil {
			return nil, err
		}
		out.Pages = append(out.Pages, svg.String())
		out.Sizes = append(out.Sizes, [2]screen.Number{screen.Number(page.Width), screen.Number(page.Height)})
	}
	return answer(out)
}

// pagesAnswer is pages as SVG. Width and Height are the sheet's as it was asked for; a page
// may lie across it, and Sizes says how large each is in the file.
type pagesAnswer struct {
	Width   screen.Number      `json:"width"`
	Height  screen.Number      `json:"height"`
	Title   string             `json:"title"`
	Remarks []string           `json:"remarks"`
	Ways    []optionAnswer     `json:"ways"` // the options that the remarks name
	Pages   []string           `json:"pages"`
	Sizes   [][2]screen.Number `json:"sizes"`
}
