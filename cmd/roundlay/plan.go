package main

import (
	"errors"
	"fmt"

	"roundlay/render/report"
)

// plan reports every cut.
func plan(s *session, args []string) error {
	blank := s.flags.String("blank", "", "plan only the blank of this name; --json needs it where the job has several")
	asJSON := s.flags.Bool("json", false, "report in JSON, with every cut's path")
	asCSV := s.flags.Bool("csv", false, "the cut list for a spreadsheet, in the order to cut")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	if *asJSON && *asCSV {
		return errors.New("plan takes --json or --csv, not both")
	}
	j, _, err := s.readJob(file)
	if err != nil {
		return err
	}
	if n := len(j.Blanks); *asJSON && *blank == "" && n > 1 {
		return fmt.Errorf("plan --json is for one blank, and the job has %d: name one with --blank", n)
	}
	lay := s.lay
	if *asJSON {
		lay = s.cured
	}
	plans, err := lay(j, file, *blank)
	if err != nil {
		return err
	}
	switch {
	case *asCSV:
		return report.CutList(s.stdout, plans)
	case *asJSON:
		return report.PlanJSON(s.stdout, plans[0])
	}
	if err := report.Included(s.stdout, j); err != nil {
		return err
	}
	for i, p := range plans {
		if i > 0 {
			fmt.Fprintln(s.stdout)
		}
		if err := report.Plan(s.stdout, p); err != nil {
			return err
		}
	}
	return report.Quotes(s.stdout, plans)
}
