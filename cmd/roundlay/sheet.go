package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"

	"roundlay/pattern"
	"roundlay/render"
	"roundlay/render/bench"
)

// sheet writes the sheet that goes to the wheel, and learns from a timed piece
// how fast this shop cuts.
func sheet(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a file ending in .pdf, or a folder (this folder if not given)")
	paper := addPaperFlags(s.flags)
	took := s.flags.String("took", "", "learn the shop's rate from how long a piece took at the wheel, a `TIME` such as 95, \"1 h 35 min\" or 1:35; of several blanks say with --blank which. Makes a sheet only with --out")
	write := s.flags.String("write", "", "with --took: save the job with the rate learnt, in this `FILE`")
	blank := s.flags.String("blank", "", "only the blank of this name")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	j, text, err := s.readJob(file)
	if err != nil {
		return err
	}
	plans, err := s.lay(j, file, *blank)
	if err != nil {
		return err
	}
	var docs []document
	switch {
	case s.flags.Changed("took"):
		timed, said, err := timed(plans, text, *took, *write)
		if err != nil {
			return err
		}
		if docs = timed; !s.flags.Changed("out") { // the piece is cut: no sheet is asked for
			err = s.write(*force, docs...)
			if err == nil {
				fmt.Fprintln(s.stdout, said)
			}
			return err
		}
	case *write != "":
		return errors.New("--write saves the rate that --took learns: give --took too")
	}
	o, err := paper.options(j.Length)
	if err != nil {
		return err
	}
	drawn, err := s.drawSheet(plans, o, *out)
	if err != nil {
		return err
	}
	if err := s.write(*force, append(docs, drawn)...); err != nil {
		return err
	}
	for _, p := range plans {
		if n := len(p.Groups()); n > 0 {
			fmt.Fprintf(s.stderr, "Blank %q has findings (%d): roundlay check tells them. Mend the job before you cut.\n", p.Blank.Name, n)
		}
	}
	return nil
}

// drawSheet makes the sheet of plans.
func (s *session) drawSheet(plans []*pattern.Plan, o render.Options, out string) (document, error) {
	path, err := sheetPath(out, plans)
	if err != nil {
		return document{}, err
	}
	progress := s.progress("bench sheet", len(plans))
	drawn, err := bench.New(plans, o, progress.step)
	progress.done()
	if err != nil {
		return document{}, err
	}
	var pdf bytes.Buffer
	err = drawn.PDF(&pdf)
	return document{path, pdf.Bytes()}, err
}

// sheetPath reads --out: where the sheet goes.
func sheetPath(out string, plans []*pattern.Plan) (string, error) {
	folder, ending, err := outTarget(out, pdfEnding)
	if err != nil || !folder {
		return out, err
	}
	name := fileName(plans[0].Job.Title)
	if len(plans) == 1 {
		name = planName(plans[0])
	}
	return filepath.Join(out, name+"-sheet"+ending), nil
}
