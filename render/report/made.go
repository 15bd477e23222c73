package report

import (
	"fmt"

	"roundlay/pattern"
)

// made says of motifs that were made of a drawing what was left out or changed.
func made(p *pattern.Plan) []string {
	var words []string
	for i, m := range p.Job.Motifs {
		for _, note := range m.Kind.Notes {
			words = append(words, fmt.Sprintf("motif %d (%s): %s.", i+1, m.Kind.Name, note))
		}
	}
	return words
}
