package pattern

import (
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// TestClearShare holds the clear share of two cuts that meet to plane
// trigonometry. The glass is straight, so that its flat map is the plane.
//
// Two straight cuts of half width b meet at an angle s. From the edge of one, at
// a distance t from the joint and on the side of the other, it is
// t sin s - b cos s to the other's centre line, and b less to its edge. So the
// land is reached at t = (land + b (1 + cos s)) / sin s. Right-angled mitres are
// as wide on each side as they are deep, less b²/80 for the curve of the glass
// where they run nearly upright. Their tails, √(2 · 25 d) long under the wheel
// of 50 mm, are over before t.
func TestClearShare(t *testing.T) {
	fan := func(spread, d float64) job.Motif {
		return motif(t, "fan", motifs.Values{"rays": 2, "spread": spread, "hub": 0}, depth(d), with(fine))
	}
	crossing := func(width float64) job.Motif {
		m := motif(t, "diamond", motifs.Values{"across": 1, "up": 1}, depth(0.2), with(fine))
		m.Width = mm(width)
		return m
	}
	// One pair of fronds, whose root is at the stem's crown.
	leaf := motif(t, "leaf", motifs.Values{"fronds": 1, "lean": 30, "arch": 0}, depth(0.05), with(fine))
	for _, c := range []struct {
		name   string
		motif  job.Motif
		cuts   []int
		length float64 // of the shorter cut; 0 to take it from the plan
		joint  float64 // how much of it lies too near the other
	}{
		// (0.8 + 0.1995 × 1.98481) / 0.173648 and so on.
		{"rays at 10°", fan(10, 0.2), []int{1, 2}, 60, 6.8872},
		{"rays at 20°", fan(20, 0.2), []int{1, 2}, 60, 3.4704},
		{"rays at 30°", fan(30, 0.05), []int{1, 2}, 60, 1.7866},
		// Both sides of the crossing count. In a box of 20 × 60 mm the sides of the
		// half angle are as 1 to 3, so that sin s = 0.6 and cos s = 0.8.
		{"mitres at a right angle", crossing(60), []int{1, 2}, 84.853, 2 * (0.8 + 0.1997)},
		{"mitres as 3, 4, 5", crossing(20), []int{1, 2}, 63.246, 2 * (0.8 + 0.1995*1.8) / 0.6},
		{"frond on stem", leaf, []int{1, 2}, 0, 1.7866},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOn(straight(t), 4, c.motif)
			j.Limits.Clear = 1 // so that every joint is told
			p := checked(t, j)
			for _, f := range p.Findings {
				if f.Kind != Crowded || !f.Share || f.Wanted != 1 {
					t.Errorf("found %+v", f)
				}
				if f.Cuts[0] != c.cuts[0] || f.Cuts[1] != c.cuts[1] {
					continue
				}
				length := min(p.Cuts[f.Cuts[0]-1].Length, p.Cuts[f.Cuts[1]-1].Length)
				if c.length > 0 && !near(length, c.length, 1e-3) {
					t.Errorf("the shorter is %.4f mm long, by hand %g", length, c.length)
				}
				// 0.02 mm: the hundredth at which the search stops, and the hand's
				// last figure of a half width over the least sine.
				if joint := (1 - f.Measured) * length; !near(joint, c.joint, 0.02) {
					t.Errorf("%.4f mm of %.3f are too near, by hand %.4f", joint, length, c.joint)
				}
				j.Limits.Clear = f.Measured - 1e-4
				if found := checked(t, j).Findings; len(found) > 0 && found[0].Cuts[0] == c.cuts[0] && found[0].Cuts[1] == c.cuts[1] {
					t.Errorf("with %g clear enough, found %+v", j.Limits.Clear, found[0])
				}
				return
			}
			t.Error("nothing found")
		})
	}
}
