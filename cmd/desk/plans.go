package desk

import (
	"context"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// ofJob names a job and one of its blanks.
type ofJob struct {
	jobText
	Blank string `json:"blank"`
}

// unlaid is the answer about a job that can't be laid out.
type unlaid struct {
	Mistake *mistake `json:"mistake"`
}

// unlaidAnswer answers with the mistake that an error is about; an error that is about none
// stays one.
func unlaidAnswer(err error) (*Reply, error) {
	if wrong, ok := mistaken(err); ok {
		return answer(unlaid{wrong})
	}
	return nil, err
}

// planned reads a job and lays it out on some of its blanks, all if none are given, apart
// from the live layout and without waiting for it.
func (d *Desk) planned(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*pattern.Plan, error) {
	r, err := d.counts.find(ctx, j)
	if err != nil {
		return nil, err
	}
	plans, err := pattern.Lay(ctx, r.Job, blanks...)
	for _, p := range plans {
		p.NoneClears = r.NoneClears
	}
	return plans, err
}

// cured is planned with the cures of what is found.
func (d *Desk) cured(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*pattern.Plan, error) {
	plans, err := d.planned(ctx, j, blanks...)
	if err == nil {
		err = search.Cures(ctx, plans...)
	}
	return plans, err
}

// onBlank reads the job of a request, and finds the blank that it names.
func (of ofJob) onBlank() (*job.Job, *glass.Blank, error) {
	j, err := of.read()
	if err != nil {
		return nil, nil, err
	}
	b, err := blankNamed(j, of.Blank)
	return j, b, err
}
