package search

import (
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// twoPanels is two upright mitres of 90°, 0.5 mm deep and 2.1 mm apart, on a straight glass:
// 1.1 mm of land between them where they are even.
func twoPanels(t *testing.T, left, right float64) *job.Job {
	m := motif(t, "flute", motifs.Values{"panels": 2, "arch": 0})
	m.Width, m.Height = mm(4.2), mm(40)
	m.Rock = &[2]geometry.Angle{geometry.Degrees(left), geometry.Degrees(right)}
	return jobOn(straight(t), 1, m)
}

// Rolled 20° to the right a flank reaches 1.05 mm, and crowds its neighbour. The other flank
// reaches 0.496 mm, so to leave 0.8 mm it may reach 0.804 mm. There the glass has fallen away
// by 0.804²/80 = 0.008 mm: 0.804/0.492 is the tangent of 58.5°, so 13 whole degrees clear it.
// Less rock is the cure on the side that is rolled, and fit offers it.
func TestLessRock(t *testing.T) {
	for _, c := range []struct {
		left, right float64
		want        string
	}{{0, 20, "rock = [0, 13]"}, {20, 0, "rock = [13, 0]"}} {
		j := twoPanels(t, c.left, c.right)
		curesAll(t, j, pattern.Crowded, "motif 1 (flute): "+c.want)
		f, err := NewFit(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(f.Offers, func(o Offer) bool {
			return strings.Contains(strings.Join(offered(j, o), "; "), c.want+", now ["+job.InDegrees(geometry.Degrees(c.left)))
		}) {
			t.Errorf("no offer takes %s", c.want)
		}
		for _, o := range f.Offers {
			for _, p := range laidAll(t, o.Job) {
				if len(p.Findings) > 0 {
					t.Errorf("with %v it finds %+v", offered(j, o), p.Findings)
				}
			}
			if o.Changes[0].Key == "rock" && !near(o.Redrawn, 7.0/60, 1e-9) { // of 30° to either side
				t.Errorf("%v costs %g", offered(j, o), o.Redrawn)
			}
		}
	}
	if p := checked(t, twoPanels(t, 0, 0)); len(p.Findings) > 0 {
		t.Errorf("even, it finds %+v", p.Findings)
	}
}

// A leaf that clears when it is even, and crowds by hand, is cured by a little less of a hand.
func TestLessHand(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", motifs.Values{"fronds": 9, "arch": 0}))
	j.Limits.Clear, j.Limits.Reach, j.Limits.Land = 0.3, 0, 0.1
	j.Motifs[0].Swell = []float64{1}       // its rock alone: a swell makes the roots finer
	for len(checked(t, j).Findings) == 0 { // the most land that it keeps when even
		j.Limits.Land += 0.1
	}
	j.Limits.Land -= 0.1
	j.Motifs[0].Values[motifs.HandParam] = 1
	p := planned(t, j)
	if len(p.Findings) == 0 {
		t.Fatalf("it clears by hand, with a land of %g", j.Limits.Land)
	}
	cure := p.Findings[0].Cure
	if cure == nil || len(cure.Changes) != 1 || cure.Changes[0].Key != motifs.HandParam {
		t.Fatalf("the cure is %s", said(j, cure))
	}
	value := cure.Changes[0].Value
	if found := checked(t, j.With(cure.Changes...)).Findings; len(found) > 0 {
		t.Errorf("with hand = %g it finds %+v", value, found)
	}
	if found := checked(t, j.With(job.Change{Key: motifs.HandParam, Value: value + 0.05})).Findings; len(found) == 0 {
		t.Errorf("hand = %g would have done", value+0.05)
	}
}

// The candidates take the hand away from the mildest on, whatever is rolled or swells, and are
// all such as a job may have.
func TestGentler(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", nil), motif(t, "fan", motifs.Values{motifs.HandParam: 0.52}))
	j = j.With(job.NewRock(0, "", [2]geometry.Angle{geometry.Degrees(3.5), geometry.Degrees(10.5)}), job.NewSwell(0, "frond", []float64{0.5, 1, 0.4}))
	want := map[int][]string{
		0: {"motif 1 (leaf): rock = [3, 10]", "motif 1 (leaf), frond: swell = [0.45, 1, 0.36]"},
		1: {"motif 2 (fan): hand = 0.5"},
	}
	for i, first := range want {
		var got []string
		for _, r := range gentler(j, i) {
			if len(r) == 0 {
				continue
			}
			got = append(got, changesOf(j, r[0]))
			last := math.Inf(1)
			for _, c := range r {
				if !c[0].Allowed(j) || c[0].Value >= last {
					t.Errorf("%s comes after %g", changesOf(j, c), last)
				}
				last = c[0].Value
			}
		}
		if !slices.Equal(got, first) {
			t.Errorf("motif %d: %q", i+1, got)
		}
	}
	if got := gentler(jobOn(straight(t), 4, motif(t, "leaf", nil)), 0); slices.ContainsFunc(got, func(r series) bool { return len(r) > 0 }) {
		t.Errorf("an even leaf: %v", got)
	}
}
