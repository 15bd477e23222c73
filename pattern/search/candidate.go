package search

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
)

// candidate is changes to a job that are tried together. Most are of one value, some
// of two.
type candidate []job.Change

// shares reports whether a candidate changes a value that another does.
func (c candidate) shares(other candidate) bool {
	return slices.ContainsFunc(c, func(a job.Change) bool {
		return slices.ContainsFunc(other, func(b job.Change) bool { return a.Motif == b.Motif && a.Part == b.Part && a.Key == b.Key })
	})
}

// series is candidates of one sort, from the mildest on.
type series []candidate

// countsDown returns for each count of a motif the candidates that lower it, but for
// counts that are to be the most.
func countsDown(j *job.Job, i int) []series {
	m := j.Motifs[i]
	var all []series
	for _, p := range m.Kind.Params {
		if p.Sort != motifs.Count || slices.Contains(m.Most, p.Name) {
			continue
		}
		var r series
		for n := m.Values[p.Name] - 1; n >= p.Min; n-- {
			r = append(r, candidate{{Motif: i, Key: p.Name, Value: n}})
		}
		all = append(all, r)
	}
	return all
}

// smallStep is a step of depths that no caliper shows and the bench sheet does.
func smallStep(u geometry.Unit) float64 {
	return [...]float64{geometry.Inch: geometry.MillimetresPerInch / 1000, geometry.Millimetre: 0.02}[u]
}

// moves returns places further and further away in one direction, across and up:
// a hundredth of the repeat or the band at a time, or a step of the calipers
// where the place is given as a length.
func moves(j *job.Job, i int, across, up float64) series {
	const most = 40
	m := j.Motifs[i]
	moved := func(s job.Measure, way float64, n int) job.Measure {
		by := float64(n) * way
		switch step := j.Length.Step(); {
		case way == 0:
		case s.Fraction:
			s.Value = math.Round((s.Value+by/100)*1000) / 1000
		default:
			s.Value = (math.Round(s.Value/step) + by) * step
		}
		return s
	}
	var r series
	for n := 1; n <= most; n++ {
		c := job.Change{Motif: i, Key: "at", At: [2]job.Measure{moved(m.X, across, n), moved(m.Y, up, n)}}
		if !c.Allowed(j) {
			break
		}
		r = append(r, candidate{c})
	}
	return r
}

// gallop looks for the first of n for which something holds: ahead by twice as
// far each time, and then back. It takes it that from the first on it holds for
// all; what it returns is one for which it holds, and doesn't for the one before.
// It returns n where it finds none.
func gallop(n int, holds func(int) bool) int {
	low, high := -1, n
	for ahead := 1; low < n-1; ahead *= 2 {
		at := min(low+ahead, n-1)
		if holds(at) {
			high = at
			break
		}
		low = at
	}
	if high == n {
		return n
	}
	for high-low > 1 {
		if at := (low + high) / 2; holds(at) {
			high = at
		} else {
			low = at
		}
	}
	return high
}
