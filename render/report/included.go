package report

import (
	"fmt"
	"io"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// includedJSON is what a job has from one of the files it includes.
type includedJSON struct {
	File    string   `json:"file"`    // its name
	Wheels  []string `json:"wheels"`  // those that are from it, by name
	Motifs  []int    `json:"motifs"`  // those that are from it, by number
	Keys    []string `json:"keys"`    // other keys that are from it, as paths
	Changed []string `json:"changed"` // what stands there and doesn't hold, for the job or a later file has it too
}

func includes(p *pattern.Plan) []includedJSON {
	var out []includedJSON
	for _, in := range p.Job.Included() {
		out = append(out, includedJSON{
			File: in.File, Wheels: append([]string{}, in.Wheels...), Motifs: append([]int{}, in.Motifs...),
			Keys: append([]string{}, in.Keys...), Changed: append([]string{}, in.Changed...),
		})
	}
	return out
}

// Included writes what a job has from which of the files that it includes: nothing where it
// includes none.
func Included(w io.Writer, j *job.Job) error {
	all := j.Included()
	if len(all) == 0 {
		return nil
	}
	var b strings.Builder
	for _, in := range all {
		fmt.Fprintf(&b, "%s\n", wrap(from(j, in), 79, "  "))
	}
	_, err := fmt.Fprintln(w, b.String())
	return err
}

// from says what a job has from one file.
func from(j *job.Job, in job.Included) string {
	var has []string
	for _, wheel := range in.Wheels {
		has = append(has, fmt.Sprintf("wheel %q", wheel))
	}
	for _, n := range in.Motifs {
		has = append(has, fmt.Sprintf("motif %d (%s)", n, j.Motifs[n-1].Called()))
	}
	has = append(has, in.Keys...)
	words := "From " + in.File + ": "
	if len(has) == 0 {
		words += "nothing that holds."
	} else {
		words += strings.Join(has, ", ") + "."
	}
	if len(in.Changed) > 0 {
		words += " Changed after it: " + strings.Join(in.Changed, ", ") + "."
	}
	return words
}
