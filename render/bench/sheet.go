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
	var all []section
	if len(plans) > 1 {
		standings := pattern.Rank(plans)
		all = append(all, section{f.flow(f.set(standings)), "The set", "set"})
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
		all = append(all, section{pages, plans[i].Blank.Name, plans[i].Blank.Name})
	}
	all = append(all, section{f.flow(f.general(plans[0])), "For every blank", "bench"})
	s := &Sheet{Title: fmt.Sprintf("%s, bench sheet", j.Title), letters: letters}
	s.add(f, all)
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

// section is the pages of one subject. Their labels are counted by themselves.
type section struct {
	pages          []drawing.Drawing
	subject, label string
}

// add adds the pages of sections, numbered through all of them.
func (s *Sheet) add(f format, all []section) {
	total := 0
	for _, one := range all {
		total += len(one.pages)
	}
	for _, one := range all {
		for i, d := range one.pages {
			number := fmt.Sprintf("page %d of %d", len(s.Pages)+1, total)
			s.Pages = append(s.Pages, f.page(d, one.subject, s.Title, number, fmt.Sprintf("%s %d", one.label, i+1)))
		}
	}
}

// PDF writes the pages to print.
func (s *Sheet) PDF(to io.Writer) error { return printing.PDF(to, s.Title, s.Pages, s.letters) }
