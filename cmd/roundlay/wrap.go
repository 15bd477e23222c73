package main

import (
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"roundlay/cmd/desk/files"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/report"
	"roundlay/render/wrap"
)

// printWraps writes the paper of each blank: a wrap for outside or inside, or patches.
func printWraps(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a folder, or a file ending in .pdf, .svg or .png (this folder if not given)")
	printed := addPrintFlags(s.flags)
	test := s.flags.Bool("test-page", false, "one page to learn what the printer does, and no wrap")
	page := s.flags.Int("page", 0, "the `PAGE` to show in a .png (1 if not given) or a .svg (the whole in one picture if not given)")
	dpi := s.flags.Float64("dpi", files.UsualDPI, "dots to the inch of a .png: from 10 to what the paper allows, 1170 on letter")
	blank := s.flags.String("blank", "", "only the blank of this name")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	j, _, err := s.readJob(file)
	if err != nil {
		return err
	}
	chosen, err := blanks(j, *blank)
	if err != nil {
		return err
	}
	options, err := printed.options(j)
	if err != nil {
		return err
	}
	to := target{out: *out, page: *page, dpi: *dpi, paper: options.Options, several: len(chosen) > 1 && !*test}
	if err := to.read(s.flags); err != nil {
		return err
	}
	docs := wrapFiles(j, chosen, options.Side, to)
	if *test {
		docs = [][]document{testFiles(to)}
	}
	if err := mayWrite(*force, slices.Concat(docs...)...); err != nil {
		return err
	}
	lay := s.cured
	if *test {
		lay = s.lay
	}
	plans, err := lay(j, file, *blank)
	if err != nil {
		return err
	}
	if *test {
		w, err := wrap.NewTestPage(s.ctx, plans[0], options)
		if err != nil {
			return flagged(err)
		}
		if err := fill(docs[0], w, to); err != nil {
			return err
		}
		return s.write(*force, docs[0]...)
	}
	remarks, err := s.wraps(plans, options, docs, to)
	if err != nil {
		return err
	}
	if err := s.write(*force, slices.Concat(docs...)...); err != nil {
		return err
	}
	for _, words := range remarks {
		fmt.Fprintln(s.stderr, words)
	}
	return nil
}

// wrapFiles are the files of every blank, not made yet.
func wrapFiles(j *job.Job, chosen []*glass.Blank, side wrap.Side, to target) [][]document {
	docs := make([][]document, len(chosen))
	for i, b := range chosen {
		docs[i] = to.files(files.WrapFile(j, b, side), fmt.Sprintf("blank %q", b.Name))
	}
	return docs
}

// testFiles is the file of the page that tries a printer.
func testFiles(to target) []document {
	if to.only == "" {
		return []document{{path: filepath.Join(to.folder, files.TestPageFile+pdfEnding), as: "--test-page"}}
	}
	return to.files("", "--test-page")
}

// wraps makes the files of every blank, on all processors. It returns the remarks on
// them.
func (s *session) wraps(plans []*pattern.Plan, o wrap.Options, docs [][]document, to target) ([]string, error) {
	remarks := make([][]string, len(plans))
	progress := s.progress("wraps", len(plans))
	defer progress.done()
	var shares errgroup.Group
	shares.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range plans {
		shares.Go(func() error {
			w, err := wrap.New(s.ctx, p, o)
			if err == nil {
				err = fill(docs[i], w, to)
			}
			if err == nil {
				remarks[i] = append(remarksOn(p, w, o), to.others(len(w.Pages))...)
			}
			progress.step(p)
			return err
		})
	}
	err := shares.Wait()
	return slices.Concat(remarks...), flagged(err)
}

// remarksOn returns the remarks on the wrap of one blank.
func remarksOn(p *pattern.Plan, w *wrap.Wrap, o wrap.Options) []string {
	var said []string
	prefix := ""
	if len(p.Job.Blanks) > 1 {
		prefix = fmt.Sprintf("Blank %q: ", p.Blank.Name)
	}
	for _, words := range w.Remarks {
		said = append(said, prefix+words)
	}
	said = append(said, report.Remeasure(p)...)
	if p.Base != nil && o.Side == wrap.Base {
		p = p.Base
	} else if p.Base != nil {
		said = append(said, prefix+"Its base has a paper of its own: --side base.")
	}
	if n := len(p.Groups()); n > 0 {
		told := "the paper lists them"
		if !o.NoRings {
			told += ", and rings those that have a place"
		}
		said = append(said, fmt.Sprintf("Blank %q has findings (%d): %s; roundlay check lists them too.", p.Blank.Name, n, told))
	}
	return said
}

// fill makes the files of one paper.
func fill(docs []document, w *wrap.Wrap, to target) (err error) {
	for i, d := range docs {
		ending := strings.ToLower(filepath.Ext(d.path))
		if docs[i].data, err = files.Wrap(w, ending, files.Shown{Page: to.page, DPI: to.dpi}); err != nil {
			return flagged(err)
		}
	}
	return nil
}
