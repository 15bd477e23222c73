package main

import (
	"context"
	"errors"
	"fmt"

	"roundlay/pattern/job"
	"roundlay/pattern/search"
	"roundlay/render/report"
)

// fit offers the changes with which a job clears; of one that clears, what it
// has room for.
func fit(s *session, args []string) error {
	rack := s.flags.Bool("rack", false, "put the whole design on each wheel of the rack in turn")
	asJSON := s.flags.Bool("json", false, "report in JSON")
	save := addRewriteFlags(s.flags, "write the job with one of the changes made to this `FILE`")
	pick := s.flags.Int("pick", 1, "which of the changes to write")
	force := s.flags.Bool("force", false, "overwrite the file if it is there")
	file, err := s.parse(args)
	switch {
	case err != nil:
		return err
	case *rack && (*save.to != "" || *save.included || s.flags.Changed("pick")):
		return errors.New("fit takes --rack or --write, not both")
	case *save.to == "" && s.flags.Changed("pick"):
		return errors.New("--pick says which change to write: give --write FILE too")
	case *pick < 1:
		return fmt.Errorf("--pick: read %d; accepted: a whole number from 1", *pick)
	}
	if err := save.given(); err != nil {
		return err
	}
	if *save.to != "" {
		if err := mayWrite(*force, document{path: *save.to}); err != nil {
			return err
		}
	}
	j, text, err := s.readJob(file)
	if err != nil {
		return err
	}
	if err := save.agree(j, file); err != nil {
		return err
	}
	if *rack {
		wheels, err := search.Wheels(s.ctx, j)
		if err != nil {
			return s.placed(file, err)
		}
		if *asJSON {
			return report.RackJSON(s.stdout, j, wheels)
		}
		return report.Rack(s.stdout, j, wheels)
	}
	f, err := search.NewFit(s.ctx, j)
	if err != nil {
		return s.placed(file, err)
	}
	if *save.to != "" {
		edits, offered, err := picked(f, *pick)
		if err != nil {
			return err
		}
		docs, read, err := save.rewrite(j, file, text, edits)
		if err == nil {
			err = agrees(s.ctx, read, offered)
		}
		if err != nil {
			return err
		}
		said := s.stdout
		if *asJSON {
			said = s.stderr // the JSON has standard output to itself
		}
		if err := s.put(*force, docs...); err != nil {
			return err
		}
		for _, doc := range docs {
			fmt.Fprintf(said, "wrote %s\n", printable(doc.path))
		}
		fmt.Fprint(s.stderr, save.apart(j, file))
		if !*asJSON {
			return nil
		}
	}
	if *asJSON {
		return report.FitJSON(s.stdout, f)
	}
	return report.Fit(s.stdout, f)
}

// picked returns the changes of one of a fit's offers, each with a comment, and the job that
// is offered.
func picked(f *search.Fit, pick int) ([]job.Edit, *job.Job, error) {
	if len(f.Offers) == 0 {
		return nil, nil, errors.New("fit has no change to write")
	}
	if pick > len(f.Offers) {
		return nil, nil, fmt.Errorf("--pick: read %d; accepted: a whole number from 1 to %d", pick, len(f.Offers))
	}
	o := f.Offers[pick-1]
	edits := make([]job.Edit, len(o.Changes))
	for i, c := range o.Changes {
		was := c.Says(f.Job)
		if was == "" {
			was = "not given"
		}
		edits[i] = job.Edit{Motif: c.Motif, Part: c.Part, Key: c.Key, Value: c.Says(o.Job), Note: "fit: " + c.Key + " was " + was}
	}
	return edits, o.Job, nil
}

// agrees proves that a changed job reads as the one that was offered.
func agrees(ctx context.Context, read, offered *job.Job) error {
	plans, err := search.Lay(ctx, read)
	if err != nil {
		return err
	}
	for i, p := range plans {
		if !p.Clear() || !job.Alike(p.Job, offered) {
			return fmt.Errorf("the change can't be written into this file: on blank %q it would not be what was offered", plans[i].Blank.Name)
		}
	}
	return nil
}
