package search

import (
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// seriesFor returns what may rid a motif of a problem: what moves it, what
// makes it less dense, lighter or smaller, and larger where its marks are short. They
// go by the steps of the cures, so that the two come to the same values.
func seriesFor(d *pattern.Draft, i int, p pattern.Problem) []series {
	j, alone, runsOn := d.Plan.Job, p.Motifs[1] < 0, d.RunsOn(i)
	var all []series
	place := p.Kind == pattern.Rim || p.Kind == pattern.Foot || p.Kind == pattern.AtEdge || p.Kind == pattern.Off
	if place || !alone || p.Kind == pattern.Thin || p.Kind == pattern.Uneven {
		all = append(all, moves(j, i, 0, 1), moves(j, i, 0, -1))
		if !alone && !runsOn {
			all = append(all, moves(j, i, 1, 0), moves(j, i, -1, 0))
		}
		if !alone {
			all = append(all, otherRepeats(j, i)...)
		}
	}
	if p.Kind == pattern.Crowded || p.Kind == pattern.Shallow || p.Kind == pattern.Tight {
		all = append(all, countsDown(j, i)...)
	}
	if p.Kind != pattern.Shallow {
		all = append(all, gentler(j, i)...)
	}
	if p.Kind == pattern.Shallow {
		all = append(all, ofOwners(func(j *job.Job, o owner) []series { return []series{fineDepths(j, o)} })(j, i)...)
	} else {
		all = append(all, ofOwners(func(j *job.Job, o owner) []series { return []series{depths(j, o, j.Length.Step())} })(j, i)...)
	}
	if !place {
		all = append(all, ofOwners(otherWheels)(j, i)...)
	}
	switch {
	case p.Kind == pattern.Tight:
		all = append(all, straighter(j, i)...)
	case p.Kind == pattern.Shallow:
		all = append(all, longer(j, i)...)
	case p.Kind == pattern.Crowded && alone:
		all = append(all, tapered(j, i)...)
		if d.Plan.Face == job.Base { // they run together towards the middle
			all = append(all, shorter(j, i)...)
		}
	}
	if shut := closed(j, i); alone && p.Kind == pattern.Crowded && len(shut) > 0 {
		for _, r := range all { // and then what takes more
			both := make(series, len(r))
			for n := range r {
				both[n] = slices.Concat(shut[0], r[n])
			}
			all = append(all, both)
		}
		all = append(all, shut)
	}
	var by [][]float64
	if p.Kind != pattern.Shallow && p.Kind != pattern.Buried {
		by = append(by, smallerTimes())
	}
	if alone && (p.Kind == pattern.Crowded || p.Kind == pattern.Shallow || p.Kind == pattern.Tight) {
		by = append(by, largerTimes())
	}
	for _, keys := range [][]string{{"width"}, {"height"}, {"width", "height"}} {
		for _, times := range by {
			if !runsOn || keys[0] == "height" {
				all = append(all, resized(j, i, keys, times))
			}
		}
	}
	return all
}

// layoutSeries returns what changes what all motifs stand on: another
// number of repeats, a lower band, a higher foot.
func layoutSeries(p *pattern.Plan) []series {
	j, band, table := p.Job, p.Band, p.Face.Table()
	var repeats, lower, higher series
	const most, parts = 6, 28
	by := p.Period
	for n := by; n <= most*by; n += by {
		for _, r := range []int{p.Repeats - n, p.Repeats + n} {
			if c := (job.Change{Motif: table, Key: "repeats", Value: float64(r)}); c.Allowed(j) {
				repeats = append(repeats, candidate{c})
			}
		}
	}
	step := j.Length.Step()
	part := max(step, floor((band.Top-band.Foot)*7/8/parts, step))
	foot, top := -floor(-band.Foot, step), floor(band.Top, step)
	for _, n := range []float64{0, 1, 2, 3, 4, 6, 8, 10, 13, 16, 19, 22, 25, 28} {
		low := job.Band{Foot: foot, Top: top - n*part}
		high := job.Band{Foot: foot + n*part, Top: top}
		if low.Top-low.Foot < 2 {
			break
		}
		if low.Top < band.Top-1e-9 {
			lower = append(lower, candidate{{Motif: table, Key: "band", Band: low}})
		}
		if high.Foot > band.Foot+1e-9 {
			higher = append(higher, candidate{{Motif: table, Key: "band", Band: high}})
		}
	}
	return []series{repeats, lower, higher}
}
