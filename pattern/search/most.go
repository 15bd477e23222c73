package search

import (
	"context"
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Lay finds the counts that are to be the most that clear, and lays the job out on
// each of its blanks, or on those given, as pattern.Lay does. No cures are sought.
func Lay(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*pattern.Plan, error) {
	r, err := Resolve(ctx, j)
	if err != nil {
		return nil, err
	}
	plans, err := pattern.Lay(ctx, r.Job, blanks...)
	for _, p := range plans {
		p.NoneClears = r.NoneClears
	}
	return plans, err
}

// Resolved is a job with a number for every count, ready to be laid out.
type Resolved struct {
	Job *job.Job
	// NoneClears lists the counts that were to be the most that clear of which not even
	// the least does.
	NoneClears []job.Count
}

// Resolve returns the job with a number for each count that is to be the most
// that clears: the largest of the parameter's range with which nothing is found
// on the whole glass that has to do with its motif; of a set, on any of its
// blanks. Where none clears it is the least, and the findings say why.
//
// Of several such counts the first in the job is found first, and within one
// motif in the order of the kind's parameters. Those not found yet are at their
// least meanwhile, and those found stay: what comes earlier has the room.
//
// A job without such counts is returned as it is. The error says that too many
// cuts would have to be tried, or is the context's.
func Resolve(ctx context.Context, j *job.Job) (Resolved, error) {
	return resolve(ctx, pattern.NewEvaluator(), j)
}

func resolve(ctx context.Context, e *pattern.Evaluator, j *job.Job) (Resolved, error) {
	if !asksMost(j) {
		return Resolved{Job: j}, nil
	}
	r := Resolved{Job: j.Clone()}
	for _, m := range r.Job.Motifs {
		for _, name := range m.Most {
			param, _ := m.Kind.Param(name)
			m.Values[name] = param.Min
		}
	}
	for i, m := range r.Job.Motifs {
		for _, name := range m.Most {
			clears := mostOf(ctx, e, r.Job, i, name)
			if err := ctx.Err(); err != nil {
				return Resolved{}, fmt.Errorf("finding the most %s that clear: %w", name, err)
			}
			if e.Spent() {
				return Resolved{}, j.Refuse(job.Item("motif", i)+"."+name, "", "a number",
					"too many cuts would have to be tried to find the most that clear")
			}
			if !clears {
				r.NoneClears = append(r.NoneClears, job.Count{Motif: i, Key: name})
			}
		}
	}
	return r, nil
}

func asksMost(j *job.Job) bool {
	return slices.ContainsFunc(j.Motifs, func(m job.Motif) bool { return len(m.Most) > 0 })
}

// mostOf sets a count to the largest with which its motif clears, and reports
// whether there is one; if not, the count is left at its least. A count that
// clears says nothing of those below or above it, so they are tried from the
// top; what each costs is little where it crowds, and that is where most do.
func mostOf(ctx context.Context, e *pattern.Evaluator, j *job.Job, i int, name string) bool {
	param, _ := j.Motifs[i].Kind.Param(name)
	for n := param.Max; n >= param.Min; n-- {
		j.Motifs[i].Values[name] = n
		if e.ClearsMotif(ctx, j, i) {
			return true
		}
	}
	j.Motifs[i].Values[name] = param.Min
	return false
}
