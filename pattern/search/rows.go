package search

import (
	"math"
	"slices"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// row is steps that a search for a fit may take, of one
// kind and from the mildest on. Some steps change two values at once.
type row [][]job.Change

// countsDown returns for each count of a motif the steps that lower it, but for
// counts that are to be the most.
func countsDown(j *job.Job, i int) []row {
	m := j.Motifs[i]
	var all []row
	for _, p := range m.Kind.Params {
		if p.Sort != motifs.Count || slices.Contains(m.Most, p.Name) {
			continue
		}
		var r row
		for n := m.Values[p.Name] - 1; n >= p.Least; n-- {
			r = append(r, []job.Change{{Motif: i, Key: p.Name, Value: n}})
		}
		all = append(all, r)
	}
	return all
}

// otherWheels returns for each other wheel of the rack the step that takes it.
func otherWheels(j *job.Job, i int) []row {
	var all []row
	for w := range j.Rack {
		if w != j.Motifs[i].Wheel {
			all = append(all, row{{{Motif: i, Key: "wheel", Value: float64(w)}}})
		}
	}
	return all
}

// depths returns shallower depths, a step apart: of very many only some, if no
// more than so many are wanted.
func depths(j *job.Job, i int, step float64, most int) row {
	steps := int(math.Ceil(j.Motifs[i].Depth/step-1e-9)) - 1
	var r row
	for n := steps; n >= 1; n -= max(1, steps/most) {
		r = append(r, []job.Change{{Motif: i, Key: "depth", Value: float64(n) * step}})
	}
	return r
}

// resized returns widths, heights or both that are so many times what they are,
// as far as a job accepts them: a fraction of the band or of the way to the next
// copy grows up to the whole, which is its last step.
func resized(j *job.Job, i int, keys []string, times []float64) row {
	var r row
	for _, by := range times {
		var step []job.Change
		last := false
		for _, key := range keys {
			m, whole := j.Motifs[i].Width, j.Motifs[i].Stride()
			if key == "height" {
				m, whole = j.Motifs[i].Height, 1
			}
			was := m.Value
			m.Value *= by
			value := tidy(j, m)
			if m.Fraction && by > 1 && value >= whole {
				if was >= whole {
					return r
				}
				value, last = whole, true
			}
			if value <= 0.001 || !m.Fraction && value < j.Length.Step() {
				return r
			}
			step = append(step, job.Change{Motif: i, Key: key, Value: value})
		}
		r = append(r, step)
		if last {
			break
		}
	}
	return r
}

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

// closed returns the step that makes a motif just meet its next copy: one a
// little too narrow for that, or too wide.
func closed(j *job.Job, i int) row {
	const nearly = 0.9
	m := j.Motifs[i]
	upright := math.Abs(math.Sin(m.Turn)) < 1e-9
	if w := m.Width.Value / m.Stride(); !upright || !m.Width.Fraction || m.Inside > 0 || w < nearly || math.Abs(w-1) < 1e-9 {
		return nil
	}
	return row{{{Motif: i, Key: "width", Value: m.Stride()}}}
}

// moves returns places further and further away in one direction, across and up:
// a hundredth of the repeat or the band at a time, or a step of the calipers
// where the place is given as a length; of them those that are asked for.
func moves(j *job.Job, i int, across, up float64, steps []int) row {
	m := j.Motifs[i]
	moved := func(s job.Measure, way float64, n int, least, most float64) (job.Measure, bool) {
		if way == 0 {
			return s, true
		}
		by := float64(n) * way
		if s.Fraction {
			s.Value = math.Round((s.Value+by/100)*1000) / 1000
			return s, s.Value >= least && s.Value <= most
		}
		step := j.Length.Step()
		s.Value = (math.Round(s.Value/step) + by) * step
		return s, least < 0 || s.Value >= 0
	}
	var r row
	for _, n := range steps {
		x, ok := moved(m.Across, across, n, -0.5, 0.5)
		y, on := moved(m.Up, up, n, 0, 1)
		if !ok || !on {
			break
		}
		r = append(r, []job.Change{{Motif: i, Key: "at", At: [2]job.Measure{x, y}}})
	}
	return r
}

// tidy returns a measure as it can be written: a fraction to a thousandth, a
// length to the step of the calipers, downwards.
func tidy(j *job.Job, m job.Measure) float64 {
	if m.Fraction {
		return math.Floor(m.Value*1000+1e-9) / 1000
	}
	return floor(m.Value, j.Length.Step())
}

// upTo returns the numbers from 1 to n.
func upTo(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i + 1
	}
	return all
}

// rows returns the steps that may rid a motif of a trouble: what moves it, what
// makes it less dense, lighter or smaller, and larger where its marks are short.
func rows(d *pattern.Draft, i int, t trouble) []row {
	j, alone, runsOn := d.Plan.Job, t.motifs[0] == t.motifs[1], d.RunsOn(i)
	const some = 16 // depths
	var all []row
	place := t.kind == pattern.Rim || t.kind == pattern.Foot || t.kind == pattern.Off
	if place || !alone || t.kind == pattern.Thin || t.kind == pattern.Uneven {
		few := []int{1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 30}
		all = append(all, moves(j, i, 0, 1, few), moves(j, i, 0, -1, few))
		if !alone && !runsOn {
			all = append(all, moves(j, i, 1, 0, few), moves(j, i, -1, 0, few))
		}
	}
	if t.kind == pattern.Crowded || t.kind == pattern.Shallow || t.kind == pattern.Tight {
		all = append(all, countsDown(j, i)...)
	}
	all = append(all, depths(j, i, j.Length.Step(), some))
	if !place {
		all = append(all, otherWheels(j, i)...)
	}
	if t.kind == pattern.Tight {
		all = append(all, straighter(j, i)...)
	}
	if shut := closed(j, i); alone && t.kind == pattern.Crowded && len(shut) > 0 {
		for _, r := range all { // and then what takes more
			both := make(row, len(r))
			for n := range r {
				both[n] = slices.Concat(shut[0], r[n])
			}
			all = append(all, both)
		}
		all = append(all, shut)
	}
	var by [][]float64
	if t.kind != pattern.Shallow && t.kind != pattern.Buried {
		by = append(by, times(20, 8, 20))
	}
	if alone && (t.kind == pattern.Crowded || t.kind == pattern.Shallow || t.kind == pattern.Tight) {
		by = append(by, times(20, 60, 20))
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

// straighter returns for each number that bends a motif's lines, those whose
// range has zero inside it, the steps that bring it nearer to zero.
func straighter(j *job.Job, i int) []row {
	const parts = 20
	m := j.Motifs[i]
	var all []row
	for _, param := range m.Kind.Params {
		if param.Sort != motifs.Number || param.Least >= 0 || param.Most <= 0 {
			continue
		}
		var r row
		for part := parts - 1.0; part >= 0; part-- {
			value := math.Round(m.Values[param.Name]*part/parts*100) / 100
			r = append(r, []job.Change{{Motif: i, Key: param.Name, Value: value}})
		}
		all = append(all, r)
	}
	return all
}

// layoutRows returns the steps that change what all motifs stand on: another
// number of repeats, a lower band, a higher foot.
func layoutRows(p *pattern.Plan) []row {
	j, band := p.Job, p.Band
	var repeats, lower, higher row
	const most, parts = 6, 28
	by := p.Period
	for n := by; n <= most*by; n += by {
		for _, r := range []int{j.Layout.Repeats - n, j.Layout.Repeats + n} {
			if r >= by && r <= 360 {
				repeats = append(repeats, []job.Change{{Motif: -1, Key: "repeats", Value: float64(r)}})
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
			lower = append(lower, []job.Change{{Motif: -1, Key: "band", Band: low}})
		}
		if high.Foot > band.Foot+1e-9 {
			higher = append(higher, []job.Change{{Motif: -1, Key: "band", Band: high}})
		}
	}
	return []row{repeats, lower, higher}
}
