package search

import (
	"math"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Offer is changes with which a job clears, and what they do to its look.
type Offer struct {
	Changes []job.Change
	Job     *job.Job // with the changes made
	Cost
}

// Cost is what changes take from the look of a job on its first blank; below
// zero, what they add. Each length is that of the motif that loses or gains most.
type Cost struct {
	Cuts   int     // round the whole glass
	Depth  float64 // that the cuts come out with, on average, mm
	Width  float64 // of the grooves, likewise
	Across float64 // the motif's width, mm
	Height float64 // and height
	Moved  float64 // how far a motif is moved, mm
	Bent   float64 // how far a number that bends a motif's lines is changed, of its range
	// Score adds up the shares that are lost, by each motif's share in the cuts:
	// offers are ranked by it. Where a job has to change in order to clear, a share
	// that is won takes it as far from what was asked for as one that is lost.
	Score float64
}

// looks is what is seen of each motif on one blank.
type looks []seen

type seen struct {
	cuts          int // round the glass
	depth, groove float64
	at            [2]job.Measure
	pattern.Box
}

// look sees what a draft comes to.
func look(d *pattern.Draft) looks {
	all := make(looks, len(d.Motifs))
	for i, m := range d.Motifs {
		cuts := d.Cuts(i)
		all[i] = seen{cuts: len(cuts) * d.Plan.Turns(), at: [2]job.Measure{m.Across, m.Up}, Box: d.Plan.Box(m)}
		for _, c := range cuts {
			all[i].depth += c.Depth / float64(len(cuts))
			all[i].groove += c.Width / float64(len(cuts))
		}
	}
	return all
}

// moved returns how far a motif stands from where it stood, in millimetres and in
// shares of the repeat and the band; 0 where it stands in the same place of a
// band that has changed.
func (b seen) moved(a seen) (far, share float64) {
	if a.at == b.at {
		return 0, 0
	}
	x, y := math.Abs(a.Middle.X-b.Middle.X), math.Abs(a.Middle.Y-b.Middle.Y)
	return math.Hypot(x, y), x/b.Repeat + y/b.Band
}

// bent returns by how much of its range a number of a motif has changed.
func bent(was, is job.Motif) float64 {
	most := 0.0
	for _, p := range was.Kind.Params {
		if p.Sort == motifs.Number {
			most = max(most, math.Abs(is.Values[p.Name]-was.Values[p.Name])/(p.Most-p.Least))
		}
	}
	return most
}

// weigh finds what an offer costs.
func (f *fitter) weigh(o *Offer) {
	d, err := f.Draft(o.Job, o.Job.Blanks[0]) // it clears: it is weighed, whatever was tried
	if err != nil {
		o.Score = math.Inf(1)
		return
	}
	before, after := f.before[0], look(d)
	total := 0
	for _, b := range before {
		total += b.cuts
	}
	further := func(into *float64, by float64) {
		if math.Abs(by) > math.Abs(*into) && math.Abs(by) > 1e-6 {
			*into = by
		}
	}
	for i, b := range before {
		a := after[i]
		o.Cuts += b.cuts - a.cuts
		further(&o.Depth, b.depth-a.depth)
		further(&o.Width, b.groove-a.groove)
		further(&o.Across, b.Width-a.Width)
		further(&o.Height, b.Height-a.Height)
		far, moved := b.moved(a)
		bent := bent(f.job.Motifs[i], o.Job.Motifs[i])
		o.Bent = max(o.Bent, bent)
		o.Moved = max(o.Moved, far)
		part := float64(b.cuts) / float64(max(total, 1))
		for _, lost := range []float64{
			1 - float64(a.cuts)/float64(max(b.cuts, 1)), 1 - a.depth/b.depth,
			1 - a.Width/b.Width, 1 - a.Height/b.Height, math.Abs(math.Log(a.groove/b.groove)) / 4, moved, bent,
		} {
			if !f.clear {
				lost = math.Abs(lost)
			}
			o.Score += part * lost
		}
	}
}

// room offers what there is room for in a job that clears: more of a count,
// deeper cuts, larger motifs, a band that reaches further up.
func (f *fitter) room() {
	for i, m := range f.job.Motifs {
		for _, p := range m.Kind.Params {
			if p.Sort != motifs.Count || len(m.Most) > 0 {
				continue
			}
			for n := p.Most; n > m.Values[p.Name]; n-- {
				c := job.Change{Motif: i, Key: p.Name, Value: n}
				if f.Clears(f.job.With(c)) && f.offer(c) {
					break
				}
			}
		}
		f.last(deeper(f.job, i))
		f.last(larger(f.job, i, "width", m.Width, 1))
		f.last(larger(f.job, i, "height", m.Height, 1))
	}
	f.last(f.taller())
}

// last offers the last step of a row up to which all of them clear.
func (f *fitter) last(r row) {
	n := 0
	for n < len(r) && f.Clears(f.job.With(r[n]...)) {
		n++
	}
	if n > 0 {
		f.offer(r[n-1]...)
	}
}

// deeper returns greater depths, by the caliper's step.
func deeper(j *job.Job, i int) row {
	const most = 64
	step := j.Length.Step()
	var r row
	for n := math.Floor(j.Motifs[i].Depth/step+1e-9) + 1; len(r) < most; n++ {
		r = append(r, []job.Change{{Motif: i, Key: "depth", Value: n * step}})
	}
	return r
}

// larger returns larger widths or heights: a fraction up to the whole.
func larger(j *job.Job, i int, key string, from job.Measure, whole float64) row {
	var r row
	for n := 21.0; n <= 40; n++ {
		value := tidy(j, job.Measure{Value: from.Value * n / 20, Fraction: from.Fraction})
		if from.Fraction && value >= whole {
			if from.Value < whole {
				r = append(r, []job.Change{{Motif: i, Key: key, Value: whole}})
			}
			break
		}
		r = append(r, []job.Change{{Motif: i, Key: key, Value: value}})
	}
	return r
}

// taller returns bands whose top is higher, where the job states its band: up to
// the rim, a 32nd of the glass at a time.
func (f *fitter) taller() row {
	b := f.job.Layout.Band
	if b == nil {
		return nil
	}
	rim := math.Inf(1)
	for _, blank := range f.job.Blanks {
		rim = min(rim, blank.Height())
	}
	step := f.job.Length.Step()
	var r row
	for top := floor(b.Top, step); ; {
		top += max(step, floor(rim/32, step))
		if top > rim {
			return r
		}
		r = append(r, []job.Change{{Motif: -1, Key: "band", Band: job.Band{Foot: b.Foot, Top: top}}})
	}
}
