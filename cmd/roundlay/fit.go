package main

import (
	"context"
	"errors"
	"fmt"
	"math"

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
		edits[i] = job.Edit{Motif: c.Motif, Key: c.Key, Value: c.Says(o.Job), Note: "fit: " + c.Key + " was " + was}
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
		if len(p.Findings) > 0 || !alike(p.Job, o.Job) {
			return nil, fmt.Errorf("the change can't be written into this file: on blank %q it would not be what was offered", plans[i].Blank.Name)
		}
	}
	return text, nil
}

// alike reports whether two jobs are the same in all that a fit may change, to
// what a text of a length may be off.
func alike(a, b *job.Job) bool {
	same := func(x, y float64) bool { return math.Abs(x-y) < 1e-5 }
	if len(a.Motifs) != len(b.Motifs) || a.Layout.Repeats != b.Layout.Repeats || (a.Layout.Band == nil) != (b.Layout.Band == nil) {
		return false
	}
	if p, q := a.Layout.Band, b.Layout.Band; p != nil && !(same(p.Foot, q.Foot) && same(p.Top, q.Top)) {
		return false
	}
	for i, m := range a.Motifs {
		n := b.Motifs[i]
		if m.Kind.Name != n.Kind.Name || m.Wheel != n.Wheel || !same(m.Depth, n.Depth) ||
			!same(m.Width.Value, n.Width.Value) || !same(m.Height.Value, n.Height.Value) ||
			!same(m.Across.Value, n.Across.Value) || !same(m.Up.Value, n.Up.Value) ||
			m.Width.Fraction != n.Width.Fraction || m.Height.Fraction != n.Height.Fraction {
			return false
		}
		for key, value := range m.Values {
			if !same(value, n.Values[key]) {
				return false
			}
		}
	}
	return true
}
