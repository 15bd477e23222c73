package report

import (
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// mostJSON is a count that the job asks the most of.
type mostJSON struct {
	Motif int    `json:"motif"` // the motif's number, from 1
	Key   string `json:"key"`   // which of its counts
	Count int    `json:"count"` // what was found
	Clear bool   `json:"clear"` // whether it clears: false where not even the least count does
}

func mosts(p *pattern.Plan) []mostJSON {
	out := []mostJSON{}
	for i, m := range p.Job.Motifs {
		for _, key := range m.Most {
			out = append(out, mostJSON{i + 1, key, m.Values.Count(key), !slices.Contains(p.NoneClears, job.Count{Motif: i, Key: key})})
		}
	}
	return out
}

// counted says which number was found for each count that the job asks "most" of.
func counted(p *pattern.Plan) []string {
	var said []string
	for _, m := range mosts(p) {
		found := "from \"most\""
		if !m.Clear {
			found = "the least there is: not even that clears, so \"most\" finds none"
		}
		said = append(said, fmt.Sprintf("Motif %d (%s): %s = %d, %s.", m.Motif, p.Job.Motifs[m.Motif-1].Called(), m.Key, m.Count, found))
	}
	return said
}
