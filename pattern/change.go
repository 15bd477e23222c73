package pattern

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
)

// Change is one value of a job that is to be another. It is data, so that it can
// be told, added up and written to a file.
type Change struct {
	Motif int    // the job's; -1 where it is a value of the layout
	Key   string // as it stands in a job
	// Value is a count or another parameter, a depth in mm, the number of a wheel
	// in the rack, a width or a height as the job gives it, or the repeats.
	Value float64
	Band  job.Band // where the key is band
}

// apply makes the change to a job.
func (c Change) apply(j *job.Job) {
	switch c.Key {
	case "repeats":
		j.Layout.Repeats = int(c.Value)
		return
	case "band":
		band := c.Band
		j.Layout.Band = &band
		return
	}
	switch m := &j.Motifs[c.Motif]; c.Key {
	case "depth":
		m.Depth = c.Value
	case "wheel":
		m.Wheel = int(c.Value)
	case "width":
		m.Width.Value = c.Value
	case "height":
		m.Height.Value = c.Value
	default:
		m.Values[c.Key] = c.Value
	}
}

// Says returns the value that a job has for the change's key, in the words of a
// job file; "" where it has none, as with the band.
func (c Change) Says(j *job.Job) string {
	text := func(mm float64) string { return strconv.Quote(written(j.Length, mm)) }
	measure := func(m job.Measure) string {
		if m.Fraction {
			return fmt.Sprintf("%g", m.Value)
		}
		return text(m.Value)
	}
	switch c.Key {
	case "repeats":
		return fmt.Sprint(j.Layout.Repeats)
	case "band":
		b := j.Layout.Band
		if b == nil {
			return ""
		}
		return "[" + text(b.Foot) + ", " + text(b.Top) + "]"
	}
	switch m := j.Motifs[c.Motif]; c.Key {
	case "depth":
		return text(m.Depth)
	case "wheel":
		return fmt.Sprintf("%q", j.Rack[m.Wheel].Name)
	case "width":
		return measure(m.Width)
	case "height":
		return measure(m.Height)
	default:
		return fmt.Sprintf("%g", m.Values[c.Key])
	}
}

// written returns a length as a job file has it: as calipers show it, where that
// is all of it.
func written(u geometry.Unit, mm float64) string {
	if set := u.Setting(mm); math.Abs(set.Length-mm) < 1e-6 {
		return set.Text
	}
	return strconv.FormatFloat(mm, 'g', 8, 64) + " mm"
}

// Name says whose value it is: motif 2 (leaf), or layout.
func (c Change) Name(j *job.Job) string {
	if c.Motif < 0 {
		return "layout"
	}
	return fmt.Sprintf("motif %d (%s)", c.Motif+1, j.Motifs[c.Motif].Kind.Name)
}

// changedBy returns a copy of a job with changes made to it.
func changedBy(j *job.Job, changes ...Change) *job.Job {
	j = j.Clone()
	for _, c := range changes {
		c.apply(j)
	}
	return j
}

// row is steps that a search for a fit may take, of one
// kind and from the mildest on. Some steps change two values at once.
type row [][]Change

// rows returns the steps that make a motif less demanding.
func rows(j *job.Job, i int) []row {
	m := j.Motifs[i]
	var all []row
	for _, p := range m.Kind.Params {
		if p.Sort != motifs.Count || slices.Contains(m.Most, p.Name) {
			continue
		}
		var r row
		for n := m.Values[p.Name] - 1; n >= p.Least; n-- {
			r = append(r, []Change{{Motif: i, Key: p.Name, Value: n}})
		}
		all = append(all, r)
	}
	all = append(all, depths(j, i))
	for w := range j.Rack {
		if w != m.Wheel {
			all = append(all, row{{{Motif: i, Key: "wheel", Value: float64(w)}}})
		}
	}
	width, height := smaller(j, i, "width", m.Width), smaller(j, i, "height", m.Height)
	both := make(row, min(len(width), len(height)))
	for n := range both {
		both[n] = slices.Concat(width[n], height[n])
	}
	return append(all, width, height, both)
}

// depths returns shallower depths, on the steps that calipers show: of very many
// only some.
func depths(j *job.Job, i int) row {
	const most = 16
	step := j.Length.Step()
	steps := int(math.Ceil(j.Motifs[i].Depth/step-1e-9)) - 1
	var r row
	for n := steps; n >= 1; n -= max(1, steps/most) {
		r = append(r, []Change{{Motif: i, Key: "depth", Value: float64(n) * step}})
	}
	return r
}

// smaller returns smaller widths or heights, by twentieths down to two fifths.
func smaller(j *job.Job, i int, key string, from job.Measure) row {
	var r row
	for n := 19.0; n >= 8; n-- {
		value := tidy(j, job.Measure{Value: from.Value * n / 20, Fraction: from.Fraction})
		if value <= 0.001 {
			break
		}
		r = append(r, []Change{{Motif: i, Key: key, Value: value}})
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

// layoutRows returns the steps that change what all motifs stand on: another
// number of repeats, a lower band, a higher foot.
func layoutRows(j *job.Job, band job.Band) []row {
	var repeats, lower, higher row
	const most, parts = 6, 28
	by := period(j)
	for n := by; n <= most*by; n += by {
		for _, r := range []int{j.Layout.Repeats - n, j.Layout.Repeats + n} {
			if r >= by && r <= 360 {
				repeats = append(repeats, []Change{{Motif: -1, Key: "repeats", Value: float64(r)}})
			}
		}
	}
	step := j.Length.Step()
	part := max(step, floor((band.Top-band.Foot)*7/8/parts, step))
	foot, top := -floor(-band.Foot, step), floor(band.Top, step)
	for n := range parts {
		low := job.Band{Foot: foot, Top: top - float64(n)*part}
		high := job.Band{Foot: foot + float64(n)*part, Top: top}
		if low.Top-low.Foot < 2 {
			break
		}
		if low.Top < band.Top-1e-9 {
			lower = append(lower, []Change{{Motif: -1, Key: "band", Band: low}})
		}
		if high.Foot > band.Foot+1e-9 {
			higher = append(higher, []Change{{Motif: -1, Key: "band", Band: high}})
		}
	}
	return []row{repeats, lower, higher}
}
