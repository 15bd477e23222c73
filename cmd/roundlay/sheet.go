package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"roundlay/cmd/desk/files"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/report"
)

// sheet writes the sheet that goes to the wheel, and learns from a timed piece
// how fast this shop cuts.
func sheet(s *session, args []string) error {
	f := addSheetFlags(s.flags)
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	if err := f.read(s.flags); err != nil {
		return err
	}
	j, text, err := s.readJob(file)
	if err != nil {
		return err
	}
	o, err := f.paper.options(j.Length)
	if err != nil {
		return err
	}
	if err := f.save.agree(j, file); err != nil {
		return err
	}
	docs, err := f.files(j)
	if err != nil {
		return err
	}
	if err := mayWrite(*f.force, docs...); err != nil {
		return err
	}
	lay := s.lay
	if f.draws { // findings, with what cures them
		lay = s.cured
	}
	plans, err := lay(j, file, *f.blank)
	if err != nil {
		return err
	}
	said := ""
	if f.learns {
		l, err := learn(plans, *f.took, f.minutes)
		if err != nil {
			return err
		}
		said = l.words(j.Length)
		if *f.save.to != "" {
			saved, _, err := f.save.rewrite(j, file, text, l.edits(j.Length))
			if err != nil {
				return err
			}
			docs = append(saved, docs[1:]...)
		}
	}
	if f.draws {
		if docs[len(docs)-1].data, err = s.drawSheet(plans, o); err != nil {
			return err
		}
	}
	if err := s.write(*f.force, docs...); err != nil {
		return err
	}
	fmt.Fprint(s.stderr, f.save.apart(j, file))
	if !f.draws {
		fmt.Fprintln(s.stdout, said)
		return nil
	}
	for _, p := range plans {
		for _, words := range report.Remeasure(p) {
			fmt.Fprintln(s.stderr, words)
		}
		if n := p.Lettered(); n > 0 {
			fmt.Fprintf(s.stderr, "Blank %q has findings (%d): roundlay check lists them. Mend the job before you cut.\n", p.Blank.Name, n)
		}
	}
	return nil
}

// sheetFlags are the flags of sheet, and what comes of them.
type sheetFlags struct {
	out, took, blank *string
	save             rewriteFlags
	paper            paperFlags
	force            *bool

	learns, draws bool
	minutes       float64 // that the timed piece took
}

func addSheetFlags(f *pflag.FlagSet) *sheetFlags {
	return &sheetFlags{
		out:   f.String("out", "", "where to write: a file ending in .pdf, or a folder (this folder if not given)"),
		paper: addPaperFlags(f),
		took:  f.String("took", "", "how long a piece took at the wheel, a `TIME` such as 95, \"1 h 35 min\" or 1:35: learns the shop's rate from it. Of several blanks say with --blank which. Makes a sheet only with --out"),
		save:  addRewriteFlags(f, "with --took: save the job with the rate learnt, in this `FILE`"),
		blank: f.String("blank", "", "only the blank of this name"),
		force: f.Bool("force", false, "overwrite files that are there"),
	}
}

// read finds out what is asked for. A piece that was timed is already cut, so --took
// makes a sheet only where --out names one.
func (f *sheetFlags) read(flags *pflag.FlagSet) error {
	f.learns = flags.Changed("took")
	f.draws = !f.learns || flags.Changed("out")
	if *f.save.to != "" && !f.learns {
		return errors.New("--write saves the rate that --took learns: give --took too")
	}
	if err := f.save.given(); err != nil {
		return err
	}
	if !f.learns {
		return nil
	}
	var err error
	if f.minutes, err = readMinutes(*f.took); err != nil {
		return fmt.Errorf("--took: %w", err)
	}
	return nil
}

// files are the files asked for, not made yet: the job with its rate, and the
// sheet.
func (f *sheetFlags) files(j *job.Job) ([]document, error) {
	chosen, err := blanks(j, *f.blank)
	if err != nil {
		return nil, err
	}
	if f.learns && len(chosen) > 1 {
		return nil, errors.New("--took is the time of one piece, and the job has several blanks: say with --blank which it was")
	}
	var docs []document
	if *f.save.to != "" {
		docs = append(docs, document{path: *f.save.to, as: "--write"})
	}
	if f.draws {
		path, err := sheetPath(*f.out, j, chosen)
		if err != nil {
			return nil, err
		}
		docs = append(docs, document{path: path, as: "--out"})
	}
	return docs, nil
}

// sheetPath reads --out: where the sheet goes.
func sheetPath(out string, j *job.Job, chosen []*glass.Blank) (string, error) {
	folder, ending, err := outTarget(out, pdfEnding)
	if err != nil || !folder {
		return out, err
	}
	return filepath.Join(out, files.SheetFile(j, chosen)+ending), nil
}

// drawSheet makes the sheet of plans.
func (s *session) drawSheet(plans []*pattern.Plan, o page.Options) ([]byte, error) {
	progress := s.progress("bench sheet", len(plans))
	pdf, err := files.Sheet(s.ctx, plans, o, progress.step)
	progress.done()
	return pdf, flagged(err)
}
