package search

import "roundlay/pattern/job"

// otherRepeats returns the candidate that puts a motif on the odd repeats where it
// stands on the even ones, or the other way round.
func otherRepeats(j *job.Job, i int) []series {
	other := map[job.On]job.On{job.Odd: job.Even, job.Even: job.Odd}
	on, alternates := other[j.Motifs[i].On]
	return word(j, job.Change{Motif: i, Key: "on", Value: float64(on)}, alternates)
}

// tapered returns the candidate that lets a motif narrow with the glass that keeps its
// own shape.
func tapered(j *job.Job, i int) []series {
	return word(j, job.Change{Motif: i, Key: "shape", Value: float64(job.Taper)}, j.Motifs[i].Shape == job.True)
}

// word returns the series of a change alone, where it would be one that is allowed.
func word(j *job.Job, c job.Change, changes bool) []series {
	if !changes || !c.Allowed(j) {
		return nil
	}
	return []series{{{c}}}
}
