package report

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Standing names the repeats on which a motif stands: "odd repeats", "repeats 1 and 4";
// "" where it is on each, or on each that isn't left bare.
func Standing(p *pattern.Plan, motif int) string {
	m := p.Job.Motifs[motif]
	l := p.Job.LayoutOf(m.Face)
	switch copies := l.Copies(m); {
	case m.Middle:
		return "the middle"
	case m.Only == nil && m.On == job.Each:
		return ""
	case m.Only == nil && len(copies) == l.Repeats/2:
		return m.On.String() + " repeats"
	case len(copies) == 1:
		return fmt.Sprintf("repeat %d", copies[0])
	default:
		return "repeats " + Numbers(copies)
	}
}

// Period names the repeats of the first period.
func Period(p *pattern.Plan) string {
	switch {
	case p.Period == 1:
		return "each repeat"
	case p.Periods() == 1:
		return fmt.Sprintf("all %d repeats", p.Period)
	case p.Period == 2:
		return "repeats 1 and 2, and so on in pairs"
	}
	return fmt.Sprintf("repeats 1 to %d, and so on %d by %d", p.Period, p.Period, p.Period)
}

// further names a period after the first.
func further(p *pattern.Plan) string {
	switch p.Period {
	case 1:
		return "repeat"
	case 2:
		return "pair"
	}
	return fmt.Sprintf("%d repeats", p.Period)
}

// Free says which repeats carry nothing, "" where all do.
func Free(p *pattern.Plan) string {
	switch free := p.Free(); len(free) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("repeat %d is left free", free[0])
	default:
		return "repeats " + Numbers(free) + " are left free"
	}
}

// inRepeats names the repeats of a period in which the findings of a group are, where not
// every repeat is like every other.
func inRepeats(p *pattern.Plan, g pattern.Group) string {
	if p.Period == 1 || len(g.Motifs) == 0 {
		return ""
	}
	var in []int
	for repeat := 1; repeat <= p.Period; repeat++ {
		for _, f := range g.Findings {
			if f.Repeat == repeat {
				in = append(in, repeat)
				break
			}
		}
	}
	if len(in) < 2 {
		return ""
	}
	return "in repeats " + Numbers(in) + "; "
}

// Bare reports whether nothing is cut on a face, as on the side of a glass that has only a
// star under its foot.
func Bare(p *pattern.Plan) bool { return len(p.Cuts) == 0 }
