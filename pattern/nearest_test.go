package pattern

import (
	"context"
	"math"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// The quick look at the two lines that come nearest takes for close what a whole check
// does: a miss that is only noted does not count.
func TestCloseLinesAsChecked(t *testing.T) {
	of := func(land float64) *job.Job {
		m := motif(t, "olives", motifs.Values{"olives": 12, "rows": 2, "long": 0.4}, depth(0.05), with(fine))
		j := jobOn(straight(t), 4, m)
		j.Limits.Land, j.Limits.Reach = land, 0
		return j
	}
	least := math.Inf(1)
	for f := range laid(t, of(30)).crowd() {
		least = min(least, f.Measured)
	}
	if !(least > 0.25 && least < 30) {
		t.Fatalf("the marks are %g mm apart", least)
	}
	for miss, clears := range map[float64]bool{-0.01: true, 0.003: true, 0.01: false} {
		j := of(least + miss)
		found := planned(t, j).Findings
		d, err := NewEvaluator().TryOn(context.Background(), j, j.Blanks[0], job.Side)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Clears(); got != clears || (len(found) == 0) != clears {
			t.Errorf("%g mm short of the land wanted: the draft clears %v, the plan has %d findings; wanted %v", miss, got, len(found), clears)
		}
	}
}
