package search

import (
	"context"
	"math"
	"slices"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Short names for what the jobs of these tests are made of.
const (
	mitre = jobtest.Mitre
	fine  = jobtest.Fine
	olive = jobtest.Olive
)

var (
	blankOf   = jobtest.BlankOf
	blank     = jobtest.Blank
	straight  = jobtest.Straight
	jobOn     = jobtest.On
	of        = jobtest.Of
	mm        = jobtest.MM
	motif     = jobtest.Motif
	bar       = jobtest.Bar
	depth     = jobtest.Depth
	turn      = jobtest.Turn
	at        = jobtest.At
	size      = jobtest.Size
	with      = jobtest.Wheel
	scattered = jobtest.Scattered
	named     = jobtest.Named
	three     = jobtest.Three
	small     = jobtest.Small
	counts    = jobtest.Counts
)

// planned lays a job out on its first blank and checks it, cures and all.
func planned(t testing.TB, j *job.Job) *pattern.Plan {
	t.Helper()
	plans, err := Lay(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	Cures(context.Background(), plans...)
	return plans[0]
}

// laidAll is planned on all of its blanks.
func laidAll(t testing.TB, j *job.Job) []*pattern.Plan {
	t.Helper()
	plans, err := Lay(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	Cures(context.Background(), plans...)
	return plans
}

// checked lays it out and checks it, without looking for cures: with the counts it has.
func checked(t testing.TB, j *job.Job) *pattern.Plan {
	t.Helper()
	return checkedOn(t, j)[0]
}

// checkedOn is checked on all of its blanks.
func checkedOn(t testing.TB, j *job.Job) []*pattern.Plan {
	t.Helper()
	plans, err := pattern.Lay(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// involves reports whether a whole check finds something that has to do with a motif.
func involves(t testing.TB, j *job.Job, i int) bool {
	t.Helper()
	p := checked(t, j)
	return slices.ContainsFunc(p.Findings, func(f pattern.Finding) bool {
		about, _ := p.About(f)
		return slices.Contains(about, i)
	})
}

// near compares lengths and angles. Beside each use stands why the two may differ.
func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }
