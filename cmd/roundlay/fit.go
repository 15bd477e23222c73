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
	to := s.flags.String("write", "", "write the job with one of the changes made to this `FILE`")
	pick := s.flags.Int("pick", 1, "which of the changes to write")
	force := s.flags.Bool("force", false, "overwrite the file if it is there")
	file, err := s.parse(args)
	switch {
	case err != nil:
		return err
	case *rack && (*to != "" || s.flags.Changed("pick")):
		return errors.New("fit takes --rack or --write, not both")
	case *to == "" && s.flags.Changed("pick"):
		return errors.New("--pick says which change to write: give --write FILE too")
	case *pick < 1:
		return fmt.Errorf("--pick: read %d; accepted: a whole number from 1", *pick)
	}
	if *to != "" {
		if err := mayWrite(*force, document{path: *to}); err != nil {
			return err
		}
	}
	j, text, err := s.readJob(file)
	if err != nil {
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
	if *to != "" {
		changed, err := picked(s.ctx, f, text, *pick)
		if err != nil {
			return err
		}
		doc := document{path: *to, as: "--write", data: changed}
		if !*asJSON {
			return s.write(*force, doc)
		}
		// The JSON has standard output to itself.
		if err := s.put(*force, doc); err != nil {
			return err
		}
		fmt.Fprintf(s.stderr, "wrote %s\n", printable(*to))
	}
	if *asJSON {
		return report.FitJSON(s.stdout, f)
	}
	return report.Fit(s.stdout, f)
}

// picked returns the job file with the changes of one of a fit's offers made,
// each with a comment, and proves that it reads as the job that was offered.
func picked(ctx context.Context, f *search.Fit, data []byte, pick int) ([]byte, error) {
	if len(f.Offers) == 0 {
		return nil, errors.New("fit has no change to write")
	}
	if pick > len(f.Offers) {
		return nil, fmt.Errorf("--pick: read %d; accepted: a whole number from 1 to %d", pick, len(f.Offers))
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
	text, err := job.Rewrite(data, edits)
	if err != nil {
		return nil, err
	}
	read, err := job.Read("the changed job", text)
	if err != nil {
		return nil, err
	}
	plans, err := search.Lay(ctx, read)
	if err != nil {
		return nil, err
	}
	for i, p := range plans {
		if len(p.Findings) > 0 || !job.Alike(p.Job, o.Job) {
			return nil, fmt.Errorf("the change can't be written into this file: on blank %q it would not be what was offered", plans[i].Blank.Name)
		}
	}
	return text, nil
}
