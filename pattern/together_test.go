package pattern

import (
	"math"
	"testing"

	"roundlay/pattern/job"
)

// Sixteen rays that run into one another towards the middle are crowded, once, and are told
// at the place farthest out where they touch: by hand where 2 r sin(π/16) is their width.
func TestRaysRunTogether(t *testing.T) {
	j := withBase(t, 16, &job.Band{Foot: 2, Top: 31}, ray(t, 2, 3, 30, depth(1.2), with(fine)))
	p := planned(t, j).Base
	if len(p.Findings) != 1 {
		t.Fatalf("%+v", p.Findings)
	}
	f := p.Findings[0]
	if f.Kind != Crowded || f.Measured != 0 || !f.BetweenCopies() {
		t.Errorf("%+v", f)
	}
	// Outlines are true to 0.003 mm, and a groove's flank is met at 11° to the ray.
	if byHand := 1.2 / math.Sin(math.Pi/16); !near(f.Height, byHand, 0.1) {
		t.Errorf("%.3f mm from the middle, by hand %.3f", f.Height, byHand)
	}
}

// Bars across their sectors whose lines cross lie on top of one another.
func TestCopiesOfBaseCross(t *testing.T) {
	j := withBase(t, 8, &job.Band{Foot: 2, Top: 31}, bar(t, 0, 10, 20, turn(90), with(fine)))
	p := planned(t, j).Base
	for _, f := range p.Findings {
		if f.Kind == Off {
			return
		}
	}
	t.Errorf("none is off: %+v", p.Findings)
}
