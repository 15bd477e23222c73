package search

import (
	"fmt"
	"math"
	"slices"
	"strings"
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
	p := laid(t, j)
	if err := Cures(t.Context(), p); err != nil {
		t.Fatal(err)
	}
	return p
}

// laid is planned without looking for cures.
func laid(t testing.TB, j *job.Job) *pattern.Plan {
	t.Helper()
	plans, err := Lay(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return plans[0]
}

// laidAll is planned on all of its blanks.
func laidAll(t testing.TB, j *job.Job) []*pattern.Plan {
	t.Helper()
	plans, err := Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	if err := Cures(t.Context(), plans...); err != nil {
		t.Fatal(err)
	}
	return plans
}

// checked lays it out and checks it, with the counts it has, without looking for
// cures.
func checked(t testing.TB, j *job.Job) *pattern.Plan {
	t.Helper()
	return checkedOn(t, j)[0]
}

// checkedOn is checked on all of its blanks.
func checkedOn(t testing.TB, j *job.Job) []*pattern.Plan {
	t.Helper()
	plans, err := pattern.Lay(t.Context(), j)
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

// said writes a cure down for a test, as a job file has its changes.
func said(j *job.Job, cure *pattern.Cure) string {
	var ways []string
	if len(cure.Changes) > 0 {
		ways = append(ways, changesOf(j, cure.Changes))
	}
	for _, or := range cure.Or {
		if or.Diameter > 0 {
			ways = append(ways, "a wheel up to "+j.Length.Format(or.Diameter))
		} else {
			ways = append(ways, changesOf(j, or.Changes))
			if or.Depths[1] > 0 {
				ways[len(ways)-1] += fmt.Sprintf(" for %.2f to %.2f mm", or.Depths[0], or.Depths[1])
			}
		}
	}
	return strings.Join(ways, ", or ")
}

func changesOf(j *job.Job, changes []job.Change) string {
	var words []string
	for _, c := range changes {
		words = append(words, c.Name(j)+": "+c.Key+" = "+c.Says(j.With(changes...)))
	}
	return strings.Join(words, "; ")
}

// offered says for a test what an offer changes, one change an item: "motif 1 (leaf): fronds = 15, now 20".
func offered(j *job.Job, o Offer) []string {
	words := make([]string, len(o.Changes))
	for i, c := range o.Changes {
		was := ""
		if now := c.Says(j); now != "" {
			was = ", now " + now
		}
		words[i] = fmt.Sprintf("%s: %s = %s%s", c.Name(j), c.Key, c.Says(o.Job), was)
	}
	return words
}
