package job

import (
	"fmt"
	"math"
	"strconv"

	"roundlay/geometry"
)

// Change is one value of a job that is to be another. It is data, so that it can
// be told, added up and written to a file.
type Change struct {
	Motif int    // the job's; -1 where it is a value of the layout
	Key   string // as it stands in a job
	// Value is a count or another parameter, a depth in mm, the number of a wheel
	// in the rack, a width or a height as the job gives it, or the repeats.
	Value float64
	Band  Band       // where the key is band
	At    [2]Measure // where the key is at
}

// With returns a copy of a job with changes made to it.
func (j *Job) With(changes ...Change) *Job {
	j = j.Clone()
	for _, c := range changes {
		c.apply(j)
	}
	return j
}

// apply makes the change to a job.
func (c Change) apply(j *Job) {
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
func (c Change) Says(j *Job) string {
	text := func(mm float64) string { return strconv.Quote(lengthText(j.Length, mm)) }
	measure := func(m Measure) string {
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

// lengthText returns a length as a job file has it: as calipers show it, or as a
// decimal of its owner's unit, where that is all of it.
func lengthText(u geometry.Unit, mm float64) string {
	for _, text := range []string{u.Text(mm), u.Fine(mm)} {
		if read, err := u.Parse(text); err == nil && math.Abs(read-mm) < 1e-6 {
			return text
		}
	}
	return strconv.FormatFloat(mm, 'g', 8, 64) + " mm"
}

// Name says whose value it is: motif 2 (leaf), or layout.
func (c Change) Name(j *Job) string {
	if c.Motif < 0 {
		return "layout"
	}
	return fmt.Sprintf("motif %d (%s)", c.Motif+1, j.Motifs[c.Motif].Kind.Name)
}
