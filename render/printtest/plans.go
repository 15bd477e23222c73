package printtest

import (
	"context"
	"sync"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// known has the plans of jobs that were laid out in this run of tests, by order. They
// can be shared because nothing changes a plan once it is made.
var known sync.Map

// order is a job that is laid out on all of its blanks, or on the first alone.
type order struct {
	text  string
	first bool
}

// Plans returns the plans of a job on all of its blanks, checked and with their
// cures. A job is laid out once, however many tests ask for it.
func Plans(t testing.TB, text string) []*pattern.Plan {
	t.Helper()
	return laid(t, order{text, false})
}

// Plan returns the plan of a job on its first blank, as Plans does.
func Plan(t testing.TB, text string) *pattern.Plan {
	t.Helper()
	return laid(t, order{text, true})[0]
}

func laid(t testing.TB, o order) []*pattern.Plan {
	t.Helper()
	lay, _ := known.LoadOrStore(o, sync.OnceValues(o.lay))
	plans, err := lay.(func() ([]*pattern.Plan, error))()
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

func (o order) lay() ([]*pattern.Plan, error) {
	j, err := job.Read("trial", []byte(o.text))
	if err != nil {
		return nil, err
	}
	if o.first {
		return Fresh(j, j.Blanks[0])
	}
	return Fresh(j)
}

// Fresh lays a job out, checks it and looks for cures, anew each time: for what
// measures that.
func Fresh(j *job.Job, blanks ...*glass.Blank) ([]*pattern.Plan, error) {
	ctx := context.Background() // what is shared outlasts the test that asked first
	plans, err := search.Lay(ctx, j, blanks...)
	if err != nil {
		return nil, err
	}
	return plans, search.Cures(ctx, plans...)
}
