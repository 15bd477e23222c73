package desk

import (
	"context"
	"errors"
	"sync"
	"time"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// counts keeps the numbers that were found for counts asked as "most". They are found by
// trying, which may take long. What is kept holds for a job whose values are all the same,
// so it is never out of date.
type counts struct {
	mu    sync.Mutex
	found map[string]search.Resolved
	order []string // the keys, the oldest first
}

// wantMost names what an answer waits for: the request of that name finds the numbers.
const wantMost = "most"

// mostKept is how many jobs' numbers are kept: undo goes back through as many edits at once.
const mostKept = 32

// asksMost reports whether a job has a count without a number.
func asksMost(j *job.Job) bool {
	for _, m := range j.Motifs {
		if len(m.Most) > 0 {
			return true
		}
	}
	return false
}

// get returns a job with the numbers found for it, if they are kept.
func (c *counts) get(j *job.Job) (search.Resolved, bool) {
	if !asksMost(j) {
		return search.Resolved{Job: j}, true
	}
	c.mu.Lock()
	known, ok := c.found[pattern.Fingerprint(j)]
	c.mu.Unlock()
	if !ok {
		return known, false
	}
	// The numbers are kept, not the job: it may have been read from another text.
	r := search.Resolved{Job: j.Clone(), NoneClears: known.NoneClears}
	for i, m := range r.Job.Motifs {
		for _, name := range m.Most {
			m.Values[name] = known.Job.Motifs[i].Values[name]
		}
	}
	return r, true
}

// find finds a job's numbers and keeps them.
func (c *counts) find(ctx context.Context, j *job.Job) (search.Resolved, error) {
	if r, ok := c.get(j); ok {
		return r, nil
	}
	r, err := search.Resolve(ctx, j)
	if err != nil {
		return r, err
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.found == nil {
		c.found = map[string]search.Resolved{}
	}
	k := pattern.Fingerprint(j)
	if _, known := c.found[k]; !known {
		c.found[k], c.order = r, append(c.order, k)
	}
	if len(c.order) > mostKept {
		delete(c.found, c.order[0])
		c.order = c.order[1:]
	}
	return r, nil
}

// soon is how long a layout that a person waits for looks for numbers.
const soon = 100 * time.Millisecond

// findSoon is find for who can't wait: waits is true where it would take longer.
func (c *counts) findSoon(ctx context.Context, j *job.Job) (r search.Resolved, waits bool, err error) {
	r, err = c.find(due{ctx, time.Now().Add(soon)}, j)
	if errors.Is(err, context.DeadlineExceeded) && ctx.Err() == nil {
		return r, true, nil
	}
	return r, false, err
}

// due is a context that looks at the clock itself. In a browser's worker nothing else runs
// while the engine computes, so no timer would end it.
type due struct {
	context.Context
	at time.Time
}

func (d due) Err() error {
	if err := d.Context.Err(); err != nil || time.Now().Before(d.at) {
		return err
	}
	return context.DeadlineExceeded
}
