package search

import (
	"slices"

	"roundlay/pattern/job"
)

// alone is the switch of a kind that is drawn in two motifs, a field and what fills it,
// each for its own wheel.
const alone = "alone"

// together returns series whose candidates keep a field and its hatching in step: what
// they have in common, such as how many diamonds there are, is changed on both.
// Candidates that would move the hatching out of its field are left out.
func together(j *job.Job, all []series) []series {
	if !slices.ContainsFunc(j.Motifs, func(m job.Motif) bool { return m.Values[alone] != 0 }) {
		return all
	}
	kept := make([]series, 0, len(all))
	for _, one := range all {
		var r series
		for _, c := range one {
			if both, ok := inStep(j, c); ok {
				r = append(r, both)
			}
		}
		kept = append(kept, r)
	}
	return kept
}

// inStep returns a candidate with what it changes of a motif changed on that motif's
// partner too, or says that it can't be.
func inStep(j *job.Job, c candidate) (both candidate, ok bool) {
	for _, change := range c {
		both = append(both, change)
		if !common(j, change) {
			continue
		}
		for k := range j.Motifs {
			if !partners(j, change.Motif, k) {
				continue
			}
			other := change
			other.Motif = k
			switch _, isParameter := j.Motifs[k].Kind.Param(change.Key); {
			case isParameter && other.Says(j) == change.Says(j):
				both = append(both, other)
			case isParameter:
			case j.Motifs[change.Motif].Inside == k+1:
				return nil, false
			case j.Motifs[k].Inside != change.Motif+1: // what is inside goes with it
				both = append(both, other)
			}
		}
	}
	return merged(j, both), true
}

// common reports whether a field and its hatching have a value in common: where they
// are and how they are divided, but neither their wheels nor how deep they are.
func common(j *job.Job, c job.Change) bool {
	if c.Motif < 0 {
		return false
	}
	_, isParameter := j.Motifs[c.Motif].Kind.Param(c.Key)
	return isParameter || c.Key != "wheel" && c.Key != "depth"
}

// partners reports whether two motifs are a field and its hatching: of one kind, in the
// same place, and one of them drawn alone.
func partners(j *job.Job, a, b int) bool {
	if a < 0 || b < 0 || a == b {
		return false
	}
	m, n := j.Motifs[a], j.Motifs[b]
	if m.Kind.Name != n.Kind.Name || (m.Values[alone] != 0) == (n.Values[alone] != 0) {
		return false
	}
	return m.Inside == b+1 && fills(m) || n.Inside == a+1 && fills(n) || samePlace(m, n)
}

// fills reports whether a motif inside another takes up all of its box.
func fills(m job.Motif) bool {
	whole, middle := job.Measure{Value: 1, Fraction: true}, job.Measure{Value: 0.5, Fraction: true}
	return m.Width == whole && m.Height == whole && m.X.Value == 0 && m.Y == middle && m.Turn == 0 && !m.Mirror
}

func samePlace(m, n job.Motif) bool {
	return m.Inside == n.Inside && m.X == n.X && m.Y == n.Y && m.Width == n.Width && m.Height == n.Height &&
		m.Turn == n.Turn && m.Mirror == n.Mirror && m.On == n.On && slices.Equal(m.Only, n.Only) && m.Shape == n.Shape
}
