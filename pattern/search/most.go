package search

import (
	"context"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Lay finds the counts that are to be the most that clear, and lays the job out on
// each of its blanks, or on those given, as pattern.Lay does. No cures are sought.
func Lay(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*pattern.Plan, error) {
	j, err := Resolve(ctx, j)
	if err != nil {
		return nil, err
	}
	return pattern.Lay(j, blanks...)
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
// A job without such counts, or with all of them found, is returned as it is. The
// error says that too many cuts would have to be tried, or is the context's.
func Resolve(ctx context.Context, j *job.Job) (*job.Job, error) {
	return resolve(ctx, pattern.NewEvaluator(), j)
}

func resolve(ctx context.Context, e *pattern.Evaluator, j *job.Job) (*job.Job, error) {
	if !unresolved(j) {
		return j, nil
	}
	j = j.Clone()
	for i := range j.Motifs {
		j.Motifs[i].Found, j.Motifs[i].NoneClears = true, nil
		for _, name := range j.Motifs[i].Most {
			param, _ := j.Motifs[i].Kind.Param(name)
			j.Motifs[i].Values[name] = param.Least
		}
	}
	for i, m := range j.Motifs {
		for _, name := range m.Most {
			clears := mostOf(ctx, e, j, i, name)
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			if e.Spent() {
				return nil, j.Refuse(job.Item("motif", i)+"."+name, "", "a number",
					"too many cuts would have to be tried to find the most that clear")
			}
			if !clears {
				j.Motifs[i].NoneClears = append(j.Motifs[i].NoneClears, name)
			}
		}
	}
	return j, nil
}

func unresolved(j *job.Job) bool {
	for _, m := range j.Motifs {
		if len(m.Most) > 0 && !m.Found {
			return true
		}
	}
	return false
}

// mostOf sets a count to the largest with which its motif clears, and reports
// whether there is one; if not, the count is left at its least. A count that
// clears says nothing of those below or above it, so they are tried from the
// top; what each costs is little where it crowds, and that is where most do.
func mostOf(ctx context.Context, e *pattern.Evaluator, j *job.Job, i int, name string) bool {
	param, _ := j.Motifs[i].Kind.Param(name)
	for n := param.Most; n >= param.Least; n-- {
		j.Motifs[i].Values[name] = n
		if e.ClearsMotif(ctx, j, i) {
			return true
		}
	}
	j.Motifs[i].Values[name] = param.Least
	return false
}
