package report

import (
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// A set's cure that is the same but for how large a wheel may be is told once, with
// the smallest of these wheels, which does on every blank. Another cure is told of
// its own blank.
func TestCureOfASetOnce(t *testing.T) {
	plans := slipPlans(t, "rays = 3", "rays = 30")
	fewer := []job.Change{{Key: "rays", Value: 12}}
	curedBy := func(changes [3][]job.Change, wheels ...float64) string {
		one := trouble{}
		for i, p := range plans {
			g := p.Groups()[0]
			f := g.Worst()
			f.Cure = &pattern.Cure{Changes: changes[i], Or: []pattern.Alternative{{Diameter: wheels[i]}}}
			g.Findings = []pattern.Finding{f}
			one.on, one.faces, one.groups = append(one.on, i), append(one.faces, p), append(one.groups, g)
		}
		var b strings.Builder
		one.cures(&b, plans)
		for i, g := range one.groups {
			if left := g.Findings[0].Cure.Or[0].Diameter; left != wheels[i] {
				t.Errorf("the plan's own cure was changed to %g", left)
			}
		}
		return b.String()
	}
	if got := curedBy([3][]job.Change{fewer, fewer, fewer}, 73.6, 73.2, 74.1); got != "   cure: motif 1 (fan): rays = 12, or a wheel up to 73.2 mm across\n" {
		t.Errorf("%q", got)
	}
	if got := curedBy([3][]job.Change{}, 73.6, 73.2, 74.1); got != "   cure: a wheel up to 73.2 mm across\n" {
		t.Errorf("%q", got)
	}
	want := "   cure on \"one\", \"three\": motif 1 (fan): rays = 12, or a wheel up to 73.6 mm across\n" +
		"   cure on \"two\": a wheel up to 73.2 mm across\n"
	got := curedBy([3][]job.Change{fewer, nil, fewer}, 73.6, 73.2, 74.1)
	if strings.ReplaceAll(got, "\n   across", " across") != want {
		t.Errorf("%q", got)
	}
}
