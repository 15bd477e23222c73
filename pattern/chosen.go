package pattern

import (
	"slices"

	"roundlay/pattern/job"
)

// chosen is a kept result of the function arrange.
type chosen struct {
	arrangement
	err error
}

// arrange is the function arrange with its results kept. Most changes that are tried leave
// every motif's place, size and depth as they were, and so the band too.
func (e *Evaluator) arrange(j *job.Job, at faceOf) (arrangement, error) {
	of := -1 // the set
	if !matched(j) {
		of = slices.Index(j.Blanks, at.blank)
	}
	k := string(keyOf(of, int(at.face), j.LayoutOf(at.face), j.Layout.Match, placings(j)))
	c, known := e.bands[k]
	if !known {
		c.arrangement, c.err = arrange(j, at)
		e.bands[k] = c
	}
	return c.arrangement, c.err
}
