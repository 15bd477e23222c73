package pattern

import (
	"testing"

	"roundlay/motifs"
)

// A motif with marks that are short is as the job will have it only if every one
// of them reaches its share of the depth. Of five rays the second and the fourth are
// 7.2 mm long and the others 24, all but upright, under a wheel of 50 mm in radius:
// 50 - √(50² - 3.6²) = 0.130 mm deep, and 50 - √(50² - 12²) = 1.461, of 2 mm asked.
// The outer ones lean by 5° and come out 50/40 sin² 5° or a hundredth deeper. The mark
// that reaches 2 mm upright is 2 √(50² - 48²) = 28 mm long.
func TestShortMarks(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "fan", motifs.Values{"rays": 5, "spread": 10, "hub": 0, "short": 0.3}, depth(2)))
	j.Motifs[0].Height = mm(24)
	for reach, allowed := range map[float64]bool{0.8: false, 0.5: false, 0.05: true} {
		j.Limits.Reach = reach
		got := laid(t, j).ShortMarks()[0]
		if got.Marks != 5 || got.Allowed != allowed || !near(got.Min, 0.130, 0.001) || !near(got.Max, 1.461*1.0095, 0.002) || !near(got.Needed, 28, 0.1) {
			t.Errorf("reach of %g: %+v", reach, got)
		}
	}
	j.Limits.Reach, j.Motifs[0].Depth = 0.5, 0.1
	if got := laid(t, j).ShortMarks(); len(got) != 0 {
		t.Errorf("0.1 mm deep: %+v", got)
	}
}
