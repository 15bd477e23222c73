package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"runtime"

	"github.com/spf13/pflag"
	"golang.org/x/sync/errgroup"

	"roundlay/cmd/desk/files"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// view writes a picture of each cut glass as it looks from the side.
func view(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a file ending in .svg, .png or .pdf, or a folder for an SVG (this folder if not given)")
	turn := s.flags.String("turn", "0", "the angle on the glass that faces you, in `DEGREES` to the right from the middle of repeat 1")
	tilt := s.flags.String("tilt", files.UsualTilt, "how far down you look at it, in `DEGREES`; 0 is straight from the side")
	round := s.flags.Bool("round", false, "four views side by side, each turned on by a quarter")
	findings := s.flags.Bool("findings", false, "ring what check finds")
	base := s.flags.Bool("base", false, "the underside, as it is seen from below")
	blank := s.flags.String("blank", "", "only the blank of this name")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	jobs, err := s.parseAll(args)
	if err != nil {
		return err
	}
	o, err := files.View{Turn: *turn, Tilt: *tilt, Round: *round, Findings: *findings, Base: *base}.Options()
	if err != nil {
		return flagged(err)
	}
	if len(jobs) > 1 {
		return s.viewSeveral(jobs, o, sideBySide{*out, *blank, *force})
	}
	file := only(jobs)
	j, _, err := s.readJob(file)
	if err != nil {
		return err
	}
	chosen, err := blanks(j, *blank)
	if err != nil {
		return err
	}
	if err := mayViewBase(j, *base, s.flags); err != nil {
		return err
	}
	docs, ending, err := viewFiles(j, chosen, *base, *out)
	if err != nil {
		return err
	}
	if err := mayWrite(*force, docs...); err != nil {
		return err
	}
	plans, err := s.lay(j, file, *blank)
	if err != nil {
		return err
	}
	var shares errgroup.Group
	shares.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range plans {
		shares.Go(func() (err error) {
			docs[i].data, err = files.Picture(s.ctx, p, o, ending)
			return err
		})
	}
	if err := shares.Wait(); err != nil {
		return err
	}
	if err := s.write(*force, docs...); err != nil {
		return err
	}
	for _, p := range plans {
		if *base {
			p = p.Base
		}
		s.unshown(p, *findings, "")
	}
	return nil
}

// unshown says what a picture of a plan does not show, each line after a name.
func (s *session) unshown(p *pattern.Plan, ringed bool, name string) {
	for _, words := range report.Remeasure(p) {
		fmt.Fprintln(s.stderr, name+words)
	}
	if words := notClear(p, ringed); words != "" {
		fmt.Fprintln(s.stderr, name+words)
	}
}

// mayViewBase refuses a picture of the base where the job has none, and flags that are for the
// side alone.
func mayViewBase(j *job.Job, base bool, flags *pflag.FlagSet) error {
	if !base {
		return nil
	}
	if j.Base == nil {
		return errors.New("--base: the job has no base; accepted: a job with a table [base]")
	}
	for _, flag := range []string{"tilt", "round"} {
		if flags.Changed(flag) {
			return fmt.Errorf("--%s is for the side: leave it out with --base", flag)
		}
	}
	return nil
}

// notClear says what a picture of a plan does not show: that it has findings, and that
// a cut breaks through the glass. It is "" for a plan that is clear.
func notClear(p *pattern.Plan, ringed bool) string {
	n, through := len(p.Groups()), p.MinLeft() <= 0
	if n == 0 || ringed && !through {
		return ""
	}
	words := fmt.Sprintf("Blank %q is not clear (findings: %d)", p.Blank.Name, n)
	if through {
		words += ": it breaks through the glass, which the picture shows whole"
	}
	if ringed {
		return words + "; roundlay check says where."
	}
	return words + "; --findings rings them, roundlay check lists them."
}

// viewFiles reads --out: the files of every blank, not made yet, and their ending.
func viewFiles(j *job.Job, chosen []*glass.Blank, base bool, out string) (docs []document, ending string, err error) {
	folder, ending, err := outTarget(out, svgEnding, pngEnding, pdfEnding)
	if err == nil && !folder && len(chosen) > 1 {
		err = errSeveral
	}
	if err != nil {
		return nil, "", err
	}
	for _, b := range chosen {
		path := out
		if folder {
			name := files.ViewFile(j, b)
			if base {
				name = files.BaseViewFile(j, b)
			}
			path = filepath.Join(out, name+ending)
		}
		docs = append(docs, document{path: path, as: fmt.Sprintf("blank %q", b.Name)})
	}
	return docs, ending, nil
}
