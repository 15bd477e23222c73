package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
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
	name, data, err := s.readData(file)
	if err != nil {
		return err
	}
	j, err := job.Read(name, data)
	if err != nil {
		return err
	}
	plans, err := s.lay(j, file, *blank)
	if err != nil {
		return err
	}
	o, err := paper.options(j.Length)
	if err != nil {
		return err
	}
	var docs []document
	if s.flags.Changed("took") {
		timed, said, err := timed(plans, data, *took, *write)
		if err != nil {
			return err
		}
		if !s.flags.Changed("out") { // the piece is cut: no sheet is asked for
			if err := s.write(*force, timed...); err != nil {
				return err
			}
			fmt.Fprintln(s.stdout, said)
			return nil
		}
		docs = timed
	} else if *write != "" {
		return errors.New("--write saves the rate that --took learns: give --took too")
	}
	path, err := sheetPath(*out, plans)
	if err != nil {
		return err
	}
	progress := s.progress("bench sheet", len(plans))
	drawn, err := bench.New(plans, o, progress.step)
	progress.done()
	if err != nil {
		return err
	}
	var pdf bytes.Buffer
	if err := drawn.PDF(&pdf); err != nil {
		return err
	}
	if err := s.write(*force, append(docs, document{path, pdf.Bytes()})...); err != nil {
		return err
	}
	for _, p := range plans {
		if n := len(p.Groups()); n > 0 {
			fmt.Fprintf(s.stderr, "Blank %q has findings (%d): roundlay check tells them. Mend the job before you cut.\n", p.Blank.Name, n)
		}
	}
	return nil
}

// sheetPath reads --out: where the sheet goes.
func sheetPath(out string, plans []*pattern.Plan) (string, error) {
	switch ending := strings.ToLower(filepath.Ext(out)); {
	case out == "" || isFolder(out) || strings.HasSuffix(out, "/") || ending == "":
		name := fileName(plans[0].Job.Title)
		if len(plans) == 1 {
			name = planName(plans[0])
		}
		return filepath.Join(out, name+"-sheet"+pdfEnding), nil
	case ending != pdfEnding:
		return "", fmt.Errorf("--out: read %q; accepted: a file ending in .pdf, or a folder", out)
	}
	return out, nil
}
