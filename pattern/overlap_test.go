package pattern

import (
	"math"
	"testing"

	"roundlay/pattern/job"
)

// How far copies overlap, worked by hand on a straight glass 80 mm across.
func TestOverlap(t *testing.T) {
	pitch := 2 * math.Pi * 40 / 4
	for _, c := range []struct {
		name       string
		motif      job.Motif
		by, height float64
		within     float64
	}{
		// A level bar 64 mm long, whose tips meet its next copies' in the middle of the band.
		{"level", bar(t, 0, 30, 64, turn(90)), 64 - pitch, 50, 0.01},
		// On every other repeat the next copy is two pitches away.
		{"odd", bar(t, 0, 30, 130, turn(90), on(job.Odd)), 130 - 2*pitch, 50, 0.01},
		// An upright bar is 0.4969 mm wide on each side, and far from the next.
		{"apart", bar(t, 0, 30, 40), 2*0.4969 - pitch, 50, 0.001},
	} {
		p := planned(t, jobOn(straight(t), 4, c.motif))
		by, height := p.Overlap(0)
		if !near(by, c.by, c.within) || c.by > 0 && !near(height, c.height, 0.15) {
			t.Errorf("%s: %.4f mm at %.2f, by hand %.4f at %g", c.name, by, height, c.by, c.height)
		}
	}
}
