package report

import (
	"fmt"
	"math"

	"roundlay/pattern"
)

// overlapping says of a motif that lies on its own next copy by how much the two overlap,
// and where that was measured; "" where they don't.
func overlapping(p *pattern.Plan, f pattern.Finding) string {
	const told = 0.005 // mm: less is none at the bench
	if f.Kind != pattern.Off || len(f.Cuts) != 2 || f.Measured > 0 {
		return ""
	}
	motifs, _ := p.About(f)
	by, height := p.Overlap(motifs[0])
	if !(by > told) || math.IsInf(by, 0) {
		return ""
	}
	u := p.Job.Length
	return fmt.Sprintf("its own copies overlap: one reaches %s into the next, measured round the %s %s %s",
		u.FormatDecimal(by), body(p), u.Format(height), p.From())
}
