package pattern

import (
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// chosen is a kept result of the function arrange.
type chosen struct {
	arrangement
	err error
}

// arrange is the function arrange with its results kept. Most changes that are tried leave
// every motif's place, size and depth as they were, and so the band too.
func (e *Evaluator) arrange(j *job.Job, blank *glass.Blank) (arrangement, error) {
	of := -1 // the set
	if !matched(j) {
		of = slices.Index(j.Blanks, blank)
	}
	k := string(keyOf(of, j.Layout, placings(j)))
	c, known := e.bands[k]
	if !known {
		c.arrangement, c.err = arrange(j, blank)
		e.bands[k] = c
	}
	return c.arrangement, c.err
}
