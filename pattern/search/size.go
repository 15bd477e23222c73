package search

import (
	"math"

	"roundlay/pattern/job"
)

// resized returns widths, heights or both that are so many times what they are,
// as far as a job accepts them: a fraction of the band or of the way to the next
// copy grows up to the whole, which is the last candidate.
func resized(j *job.Job, i int, keys []string, times []float64) series {
	var r series
	for _, by := range times {
		var next candidate
		last := false
		for _, key := range keys {
			c, _ := job.Change{Motif: i, Key: key}.Has(j)
			was, whole := c.Value, wholeOf(j, i, key)
			c.Value = tidy(j, job.Measure{Value: was * by, Fraction: c.Fraction})
			if c.Fraction && by > 1 && c.Value >= whole {
				if was >= whole {
					return r
				}
				c.Value, last = whole, true
			}
			if !c.Allowed(j) {
				return r
			}
			next = append(next, c)
		}
		r = append(r, next)
		if last {
			break
		}
	}
	return r
}

// wholeOf returns the fraction that is all of what a motif's width or height is
// measured in.
func wholeOf(j *job.Job, i int, key string) float64 {
	const widest = 2 // that a job takes
	if m := j.Motifs[i]; key == "width" && !m.Middle {
		return min(j.LayoutOf(m.Face).Stride(m), widest)
	}
	return 1
}

// smallerTimes and largerTimes are the factors by which sizes are tried.
func smallerTimes() []float64 { return times(50, 10, 50) }
func largerTimes() []float64  { return times(50, 150, 50) }

// times returns factors from one to another, one part of a whole apart.
func times(from, to, parts int) []float64 {
	var all []float64
	for n := from; n != to; {
		if n < to {
			n++
		} else {
			n--
		}
		all = append(all, float64(n)/float64(parts))
	}
	return all
}

// closed returns the candidate that makes a motif just meet its next copy: one a
// little too narrow for that, or too wide.
func closed(j *job.Job, i int) series {
	const nearly = 0.9
	m := j.Motifs[i]
	upright := math.Abs(math.Sin(m.Turn.Radians())) < 1e-9
	stride := j.LayoutOf(m.Face).Stride(m)
	if m.Middle {
		return nil
	}
	if w := m.Width.Value / stride; !upright || !m.Width.Fraction || m.Inside > 0 || w < nearly || math.Abs(w-1) < 1e-9 {
		return nil
	}
	return series{{{Motif: i, Key: "width", Value: stride, Fraction: true}}}
}

// tidy returns a measure as it can be written: a fraction to a thousandth, a
// length to the step of the calipers, downwards.
func tidy(j *job.Job, m job.Measure) float64 {
	if m.Fraction {
		return math.Floor(m.Value*1000+1e-9) / 1000
	}
	return floor(m.Value, j.Length.Step())
}

// floor returns the greatest multiple of a step that is not above a length.
func floor(length, step float64) float64 { return math.Floor(length/step+1e-9) * step }
