package main

import (
	"fmt"

	"roundlay/motifs"
	"roundlay/render/report"
)

// listMotifs reports the motifs there are, or the parameters of one.
func listMotifs(s *session, args []string) error {
	asJSON := s.flags.Bool("json", false, "report in JSON")
	name, err := s.parse(args)
	if err != nil {
		return err
	}
	kinds := motifs.All()
	if name != "" {
		kind, ok := motifs.Find(name)
		if !ok {
			return fmt.Errorf("there is no motif %q; the motifs are %s", name, report.Names(kinds))
		}
		kinds = []motifs.Kind{kind}
	}
	if *asJSON {
		return report.MotifsJSON(s.stdout, kinds)
	}
	return report.Motifs(s.stdout, kinds)
}
