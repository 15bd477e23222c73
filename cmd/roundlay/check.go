package main

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/render/report"
)

// check reports what stands in the way of cutting the pattern.
func check(s *session, args []string) error {
	blank := s.flags.String("blank", "", "check only the blank of this name")
	asJSON := s.flags.Bool("json", false, "report in JSON")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	plans, err := s.plans(file, *blank)
	if err != nil {
		return err
	}
	var verdict error
	for i, p := range plans {
		if len(p.Findings) > 0 {
			verdict = errFindings
		}
		if *asJSON {
			continue
		}
		if i > 0 {
			fmt.Fprintln(s.stdout)
		}
		if err := report.Check(s.stdout, p); err != nil {
			return err
		}
	}
	var set *pattern.Set
	if len(plans) > 1 {
		if set, err = pattern.NewSet(s.ctx, plans); err != nil {
			return err
		}
	}
	switch {
	case *asJSON:
		err = report.CheckJSON(s.stdout, plans, set)
	case set != nil:
		fmt.Fprintln(s.stdout)
		err = report.Set(s.stdout, set)
	}
	if err != nil {
		return err
	}
	return verdict
}
