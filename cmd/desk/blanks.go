package desk

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// blankNamed returns the blank of a name, the first for "".
func blankNamed(j *job.Job, name string) (*glass.Blank, error) {
	if name == "" {
		return j.Blanks[0], nil
	}
	i := slices.IndexFunc(j.Blanks, func(b *glass.Blank) bool { return b.Name == name })
	if i >= 0 {
		return j.Blanks[i], nil
	}
	var names []string
	for _, b := range j.Blanks {
		names = append(names, fmt.Sprintf("%q", b.Name))
	}
	return nil, badRequest("blank: there is no blank %q in the job; it has %s", name, strings.Join(names, ", "))
}
