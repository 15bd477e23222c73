package search

import (
	"math"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// room offers what there is room for in a job that clears: more of a count,
// deeper cuts, larger motifs, a band that reaches further up.
func (f *fitSearch) room() {
	for i, m := range f.job.Motifs {
		for _, p := range m.Kind.Params {
			if p.Sort != motifs.Count || len(m.Most) > 0 {
				continue
			}
			for n := p.Max; n > m.Values[p.Name]; n-- {
				c := job.Change{Motif: i, Key: p.Name, Value: n}
				if f.clears(f.job.With(c)) && f.offer(c) {
					break
				}
			}
		}
		for _, o := range owners(f.job, i) {
			f.last(deeper(f.job, o))
		}
		f.last(larger(f.job, i, "width"))
		f.last(larger(f.job, i, "height"))
	}
	f.last(f.taller())
}

// last offers the last candidate of a series up to which all of them clear.
func (f *fitSearch) last(r series) {
	n := 0
	for n < len(r) && f.clears(f.job.With(r[n]...)) {
		n++
	}
	if n > 0 {
		f.offer(r[n-1]...)
	}
}

// deeper returns greater depths, by the caliper's step.
func deeper(j *job.Job, o owner) series {
	const most = 64
	step := j.Length.Step()
	var r series
	for n := math.Floor(j.Motifs[o.motif].DepthOf(o.part)/step+1e-9) + 1; len(r) < most; n++ {
		r = append(r, candidate{o.change("depth", n*step)})
	}
	return r
}

// larger returns larger widths or heights: a fraction up to the whole.
func larger(j *job.Job, i int, key string) series {
	const whole = 1
	from, _ := job.Change{Motif: i, Key: key}.Has(j)
	var r series
	for n := 21.0; n <= 40; n++ {
		c := from
		c.Value = tidy(j, job.Measure{Value: from.Value * n / 20, Fraction: from.Fraction})
		if from.Fraction && c.Value >= whole {
			if from.Value < whole {
				c.Value = whole
				r = append(r, candidate{c})
			}
			break
		}
		r = append(r, candidate{c})
	}
	return r
}

// taller returns bands whose top is higher, where the job states its band: up to
// the rim, a 32nd of the glass at a time.
func (f *fitSearch) taller() series {
	b := f.job.Layout.Band
	if b == nil {
		return nil
	}
	rim := math.Inf(1)
	for _, blank := range f.job.Blanks {
		rim = min(rim, blank.Height())
	}
	step := f.job.Length.Step()
	var r series
	for top := floor(b.Top, step); ; {
		top += max(step, floor(rim/32, step))
		if top > rim {
			return r
		}
		r = append(r, candidate{{Motif: -1, Key: "band", Band: job.Band{Foot: b.Foot, Top: top}}})
	}
}
