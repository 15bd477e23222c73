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
	Band  job.Band       // where the key is band
	At    [2]job.Measure // where the key is at
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
	case "at":
		m.Across, m.Up = c.At[0], c.At[1]
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
	case "at":
		return "[" + measure(m.Across) + ", " + measure(m.Up) + "]"
	default:
		return fmt.Sprintf("%g", m.Values[c.Key])
	}
}

// written returns a length as a job file has it: as calipers show it, or as a
// decimal of its owner's unit, where that is all of it.
func written(u geometry.Unit, mm float64) string {
	for _, text := range []string{u.Text(mm), u.Fine(mm)} {
		if read, err := u.Parse(text); err == nil && math.Abs(read-mm) < 1e-6 {
			return text
		}
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
			r = append(r, []Change{{Motif: i, Key: p.Name, Value: n}})
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
		r = append(r, []Change{{Motif: i, Key: "depth", Value: float64(n) * step}})
	}
	return r
}

// resized returns widths, heights or both that are so many times what they are,
// as far as a job accepts them: a fraction of the band or of the way to the next
// copy grows up to the whole, which is its last step.
func resized(j *job.Job, i int, keys []string, times []float64) row {
	var r row
	for _, by := range times {
		var step []Change
		last := false
		for _, key := range keys {
			m, whole := j.Motifs[i].Width, stride(j.Motifs[i])
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
			step = append(step, Change{Motif: i, Key: key, Value: value})
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
	upright := math.Abs(math.Sin(m.Turn.Radians())) < 1e-9
	if w := m.Width.Value / stride(m); !upright || !m.Width.Fraction || m.Inside > 0 || w < nearly || math.Abs(w-1) < 1e-9 {
		return nil
	}
	return row{{{Motif: i, Key: "width", Value: stride(m)}}}
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
		r = append(r, []Change{{Motif: i, Key: "at", At: [2]job.Measure{x, y}}})
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
func rows(tr *trial, i int, t trouble) []row {
	j, alone, runsOn := tr.plan.Job, t.motifs[0] == t.motifs[1], tr.runsOn(i)
	const some = 16 // depths
	var all []row
	place := t.kind == Rim || t.kind == Foot || t.kind == Off
	if place || !alone || t.kind == Thin || t.kind == Uneven {
		few := []int{1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 30}
		all = append(all, moves(j, i, 0, 1, few), moves(j, i, 0, -1, few))
		if !alone && !runsOn {
			all = append(all, moves(j, i, 1, 0, few), moves(j, i, -1, 0, few))
		}
	}
	if t.kind == Crowded || t.kind == Shallow || t.kind == Tight {
		all = append(all, countsDown(j, i)...)
	}
	all = append(all, depths(j, i, j.Length.Step(), some))
	if !place {
		all = append(all, otherWheels(j, i)...)
	}
	if t.kind == Tight {
		all = append(all, straighter(j, i)...)
	}
	if shut := closed(j, i); alone && t.kind == Crowded && len(shut) > 0 {
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
	if t.kind != Shallow && t.kind != Buried {
		by = append(by, times(20, 8, 20))
	}
	if alone && (t.kind == Crowded || t.kind == Shallow || t.kind == Tight) {
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
			r = append(r, []Change{{Motif: i, Key: param.Name, Value: value}})
		}
		all = append(all, r)
	}
	return all
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
	for _, n := range []float64{0, 1, 2, 3, 4, 6, 8, 10, 13, 16, 19, 22, 25, 28} {
		low := job.Band{Foot: foot, Top: top - n*part}
		high := job.Band{Foot: foot + n*part, Top: top}
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
