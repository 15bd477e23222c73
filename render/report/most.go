package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
)

// mostJSON is a count that the job asks the most of.
type mostJSON struct {
	Motif int    `json:"motif"`
	Key   string `json:"key"`
	Count int    `json:"count"`
}

func mosts(p *pattern.Plan) []mostJSON {
	out := []mostJSON{}
	for i, m := range p.Job.Motifs {
		for _, key := range m.Most {
			out = append(out, mostJSON{i + 1, key, m.Values.Count(key)})
		}
	}
	return out
}

// counted says which number was found for each count that is to be the most.
func counted(b *strings.Builder, p *pattern.Plan) {
	for _, m := range mosts(p) {
		fmt.Fprintf(b, "Motif %d (%s): %s = %d, from \"most\".\n", m.Motif, p.Job.Motifs[m.Motif-1].Kind.Name, m.Key, m.Count)
	}
}
