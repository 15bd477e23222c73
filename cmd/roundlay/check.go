package main

import (
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/render/report"
)

// check reports what stands in the way of cutting the pattern.
func check(s *session, args []string) error {
	blank := s.flags.String("blank", "", "check only the blank of this name")
	asJSON := s.flags.Bool("json", false, "report in JSON")
	files, err := s.parseAll(args)
	if err != nil {
		return err
	}
	if len(files) > 1 {
		return s.checkSeveral(files, *blank, *asJSON)
	}
	plans, err := s.plans(only(files), *blank)
	if err != nil {
		return err
	}
	if err := s.checked(plans, *asJSON); err != nil {
		return err
	}
	if slices.ContainsFunc(plans, func(p *pattern.Plan) bool { return !p.Clear() }) {
		return errFindings
	}
	return nil
}

// checked reports what was found on one blank or on those of a set.
func (s *session) checked(plans []*pattern.Plan, asJSON bool) error {
	if len(plans) == 1 {
		if asJSON {
			return report.CheckJSON(s.stdout, plans, nil)
		}
		return report.Check(s.stdout, plans[0])
	}
	set, err := pattern.NewSet(s.ctx, plans)
	if err != nil {
		return err
	}
	if asJSON {
		return report.CheckJSON(s.stdout, plans, set)
	}
	if err := report.CheckSet(s.stdout, plans); err != nil {
		return err
	}
	fmt.Fprintln(s.stdout)
	return report.Set(s.stdout, set)
}
