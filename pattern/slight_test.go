package pattern

import (
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// What misses by a hair is noted and is no finding; by a little more it is one. A mark
// of 8 mm comes 0.16026 mm deep under a wheel of radius 50 mm, 50 - √(50² - 4²), and
// half of what is asked is wanted. The level bar's next copy stands 62.838 mm away,
// less the half widths of its pointed ends: package pattern's TestFindings has it.
func TestSlight(t *testing.T) {
	const pitch = 62.8319 // 20π mm
	thin := func(leave float64) func(*job.Job) { return func(j *job.Job) { j.Limits.Leave = leave } }
	for _, c := range []struct {
		name   string
		motif  job.Motif
		change func(*job.Job)
		found  bool
		slight bool
		kind   Kind
	}{
		{name: "deep enough", motif: bar(t, 0, 30, 8, depth(0.32))},
		{name: "shallow by 0.0027 mm", motif: bar(t, 0, 30, 8, depth(0.326)), slight: true, kind: Shallow}, // 0.163 wanted
		{name: "shallow by 0.0037 mm, a fiftieth", motif: bar(t, 0, 30, 8, depth(0.328)), found: true, kind: Shallow},
		{name: "land of 0.796 mm", motif: bar(t, 0, 30, pitch-0.794, turn(90)), slight: true, kind: Crowded},
		{name: "land of 0.792 mm", motif: bar(t, 0, 30, pitch-0.790, turn(90)), found: true, kind: Crowded},
		// Half way up 4.5 mm of wall, less half a millimetre and the thinner glass at
		// the upper end: a hair of glass is a finding.
		{name: "glass by a hair", motif: bar(t, 0, 30, 40), change: thin(3.2), found: true, kind: Thin},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOn(straight(t), 4, c.motif)
			if c.change != nil {
				c.change(j)
			}
			p := whole(t, j)
			if c.kind == Thin { // as much as there is, and a thousandth of a millimetre more
				j.Limits.Leave = p.MinLeft() + 0.001
				p = whole(t, j)
			}
			if found, slight := len(p.Findings) > 0, len(p.Slight) > 0; found != c.found || slight != c.slight {
				t.Fatalf("found %+v, slight %+v", p.Findings, p.Slight)
			}
			for _, f := range append(p.Findings, p.Slight...) {
				if f.Kind != c.kind {
					t.Errorf("found %v", f.Kind)
				}
			}
			if clears := NewEvaluator().Clears(t.Context(), j); clears == c.found {
				t.Errorf("an evaluator says it clears: %v", clears)
			}
			d, err := NewEvaluator().DraftOn(t.Context(), j, j.Blanks[0], job.Side)
			if err != nil || (len(d.Kinds(0)) > 0) != c.found || (len(d.Problems()) > 0) != c.found || d.Finds(c.kind, []int{0}) != c.found {
				t.Errorf("a draft has %v, %v", d.Kinds(0), err)
			}
		})
	}
}

// Of shares half a percent is slight, whatever the cuts' length.
func TestSlightShares(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "fan", motifs.Values{"rays": 2, "spread": 20, "hub": 0}, depth(0.2)))
	p := whole(t, j)
	if len(p.Findings) > 0 {
		t.Fatalf("found %+v", p.Findings)
	}
	low, high := 0.0, 1.0 // between which the share is that is clear
	for high-low > 1e-4 {
		j.Limits.Clear = (low + high) / 2
		if p := whole(t, j); len(p.Findings)+len(p.Slight) > 0 {
			high = j.Limits.Clear
		} else {
			low = j.Limits.Clear
		}
	}
	for more, want := range map[float64][2]int{-0.001: {0, 0}, 0.004: {0, 1}, 0.006: {1, 0}} {
		j.Limits.Clear = low + more
		if p := whole(t, j); len(p.Findings) != want[0] || len(p.Slight) != want[1] {
			t.Errorf("%g more than is clear: found %+v, slight %+v", more, p.Findings, p.Slight)
		}
	}
}

// whole lays a job out and checks it.
func whole(t *testing.T, j *job.Job) *Plan {
	t.Helper()
	p, err := New(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}
