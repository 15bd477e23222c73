package bench

import (
	"context"
	"fmt"
	"io"
	"runtime"
	"slices"

	"golang.org/x/sync/errgroup"

	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// Sheet is the bench sheet of one or more blanks of a job, ready to be written.
type Sheet struct {
	Title string
	Pages []printing.Page

	letters *lettering.Letters
}

// New draws the sheet of plans that Lay made: for a set the order to take the blanks
// in, then each blank, then what holds for all. Unless drawn is nil, New calls it from
// several goroutines, with each blank when it is done. Of the options only the paper
// and its margin are used. The error may be the context's.
func New(ctx context.Context, plans []*pattern.Plan, o page.Options, drawn func(*pattern.Plan)) (*Sheet, error) {
	letters, err := lettering.Load()
	if err != nil {
		return nil, err
	}
	j := plans[0].Job
	f, err := newFormat(page.NewBenchFrame(letters, j.Length), o)
	if err != nil {
		return nil, err
	}
	s := &Sheet{Title: fmt.Sprintf("%s, bench sheet", j.Title), letters: letters}
	if len(plans) > 1 {
		standings := pattern.Rank(plans)
		s.add(f, f.flow(f.set(standings)), "The set", "set")
		plans = nil
		for _, standing := range standings {
			plans = append(plans, standing.Member.Plan)
		}
	}
	glasses, err := f.glasses(ctx, plans, drawn)
	if err != nil {
		return nil, err
	}
	for i, pages := range glasses {
		s.add(f, pages, plans[i].Blank.Name, plans[i].Blank.Name)
	}
	s.add(f, f.flow(f.general(plans[0])), "For every blank", "bench")
	return s, nil
}

// glasses draws the pages of each blank, on all processors.
func (f format) glasses(ctx context.Context, plans []*pattern.Plan, drawn func(*pattern.Plan)) ([][]drawing.Drawing, error) {
	all := make([][]drawing.Drawing, len(plans))
	var shares errgroup.Group
	shares.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range plans {
		shares.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			g := glass{f, p}
			blocks := slices.Concat(g.settings(), g.cuts(), g.base())
			if len(plans) == 1 { // a set's quote stands on its first page
				blocks = append(blocks, f.quote(plans)...)
			}
			all[i] = f.flow(blocks)
			if drawn != nil {
				drawn(p)
			}
			return nil
		})
	}
	return all, shares.Wait()
}

// add adds the pages of one subject.
func (s *Sheet) add(f format, pages []drawing.Drawing, subject, label string) {
	for i, d := range pages {
		number := fmt.Sprintf("page %d of %d", i+1, len(pages))
		s.Pages = append(s.Pages, f.page(d, subject, s.Title, number, fmt.Sprintf("%s %d", label, i+1)))
	}
}

// PDF writes the pages to print.
func (s *Sheet) PDF(to io.Writer) error { return printing.PDF(to, s.Title, s.Pages, s.letters) }
