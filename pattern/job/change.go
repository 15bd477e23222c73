package job

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs"
)

// Change is a new value for one key of a job. It is data: it can be printed, combined
// with others and written to a file.
type Change struct {
	Motif int    // the job's; OfLayout, OfBase or OfLimits where it is a value of that table
	Part  string // of the motif, where it is a value of that part alone
	Key   string // as it stands in a job: one of those in keys, or a parameter
	// Value is a count or another parameter, a depth in mm, the number of a wheel
	// in the rack or of a word, a width or a height, the repeats or a share. Of a swell it is
	// the mean share, of a rock both sides together in degrees.
	Value    float64
	Fraction bool       // of a width or a height: of the repeat or the band, and no length
	Band     Band       // where the key is band
	At       [2]Measure // where the key is at
	Swell    Shares     // where the key is swell
	Rock     [2]geometry.Angle
}

// With returns a copy of a job with changes made to it.
func (j *Job) With(changes ...Change) *Job {
	j = j.Clone()
	for _, c := range changes {
		c.key().set(j, c)
	}
	return j
}

// Has returns the value that a job has for the change's key, as a change to it; ok is
// false where it has none, as may be with the band.
func (c Change) Has(j *Job) (has Change, ok bool) {
	has = Change{Motif: c.Motif, Part: c.Part, Key: c.Key}
	ok = c.key().get(j, &has)
	return has, ok
}

// Says returns the value that a job has for the change's key, as a job file would
// have it. It is "" where the job has none, which is so for a band it leaves out.
func (c Change) Says(j *Job) string {
	has, ok := c.Has(j)
	if !ok {
		return ""
	}
	return c.key().format(j, has)
}

// Allowed reports whether a job may have the changed value.
func (c Change) Allowed(j *Job) bool { return c.key().may(j, c) }

// Price says how the change is weighed against others.
func (c Change) Price(j *Job) Price {
	if c.Motif >= 0 && c.Part == "" {
		if param, ok := j.Motifs[c.Motif].Kind.Param(c.Key); ok && param.Sort == motifs.Number {
			return ByRange
		}
	}
	return c.key().price
}

// Name says whose value it is: motif 2 (leaf), a part of one, motif 2 (leaf), frond, or
// layout.
func (c Change) Name(j *Job) string {
	switch {
	case c.Motif == OfLimits:
		return "limits"
	case c.Motif == OfBase:
		return "base"
	case c.Motif < 0:
		return "layout"
	}
	name := fmt.Sprintf("motif %d (%s)", c.Motif+1, j.Motifs[c.Motif].Called())
	if c.Part != "" {
		name += ", " + c.Part
	}
	return name
}

// Alike reports whether two jobs have the same motifs, and the same value for every
// key that may be changed, to what a length as it is written may be off.
func Alike(a, b *Job) bool {
	if len(a.Motifs) != len(b.Motifs) || (a.Base == nil) != (b.Base == nil) || !slices.Equal(a.Layout.Bare, b.Layout.Bare) {
		return false
	}
	for i := range a.Motifs {
		if one, other := a.Motifs[i].Kind, b.Motifs[i].Kind; one.Name != other.Name || one.Contents != other.Contents || !slices.Equal(a.Motifs[i].Only, b.Motifs[i].Only) {
			return false
		}
	}
	for _, c := range a.changeable() {
		has, given := c.Has(a)
		other, known := c.Has(b)
		if given != known || !has.near(other) {
			return false
		}
	}
	return true
}

// near reports whether two changes of one key have the same value.
func (c Change) near(d Change) bool {
	same := func(x, y float64) bool { return math.Abs(x-y) < 1e-5 }
	measure := func(x, y Measure) bool { return same(x.Value, y.Value) && x.Fraction == y.Fraction }
	return same(c.Value, d.Value) && c.Fraction == d.Fraction && same(c.Band.Foot, d.Band.Foot) && same(c.Band.Top, d.Band.Top) &&
		measure(c.At[0], d.At[0]) && measure(c.At[1], d.At[1]) && slices.EqualFunc(c.Swell.List(), d.Swell.List(), same) &&
		same(float64(c.Rock[0]), float64(d.Rock[0])) && same(float64(c.Rock[1]), float64(d.Rock[1]))
}
