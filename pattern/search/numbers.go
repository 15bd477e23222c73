package search

import (
	"math"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// straighter returns for each number that bends a motif's lines the candidates that
// bring it nearer to zero, as far as its range goes.
func straighter(j *job.Job, i int) []series {
	var all []series
	for _, p := range j.Motifs[i].Kind.Params {
		if p.Bends {
			straight := min(max(0, p.Min), p.Max)
			all = append(all, towards(j, i, p, straight))
		}
	}
	return all
}

// longer returns for each number that makes a motif's shortest marks longer the
// candidates that take it that way.
func longer(j *job.Job, i int) []series { return lengths(j, i, 1) }

// shorter returns for each number that makes a motif's shortest marks longer the
// candidates that take it the other way.
func shorter(j *job.Job, i int) []series { return lengths(j, i, -1) }

// lengths is longer for a way of 1, shorter for one of -1.
func lengths(j *job.Job, i, way int) []series {
	var all []series
	for _, p := range j.Motifs[i].Kind.Params {
		switch by := way * p.Longer; {
		case by > 0:
			all = append(all, towards(j, i, p, p.Max))
		case by < 0:
			all = append(all, towards(j, i, p, p.Min))
		}
	}
	return all
}

// towards returns the values of a number on the way from the one it has to another,
// on the steps of its range.
func towards(j *job.Job, i int, p motifs.Param, to float64) series {
	const exact = 1e-9
	from, step := j.Motifs[i].Values[p.Name], stepOf(p)
	n, way := math.Floor(from/step+exact), 1.0
	if to < from {
		n, way = math.Ceil(from/step-exact), -1
	}
	var r series
	for n += way; (to/step-n)*way >= -exact; n += way {
		value := math.Round(n*step*1e6) / 1e6 // as it is written
		r = append(r, candidate{{Motif: i, Key: p.Name, Value: value}})
	}
	return r
}

// stepOf returns a round step of which a number's range has some hundred or two.
func stepOf(p motifs.Param) float64 {
	const parts = 200
	rough := (p.Max - p.Min) / parts
	decade := math.Pow(10, math.Floor(math.Log10(rough)))
	for _, round := range []float64{1, 2, 5} {
		if round*decade >= rough*(1-1e-9) {
			return round * decade
		}
	}
	return 10 * decade
}
