package pattern

import (
	"math"

	"roundlay/pattern/job"
)

// ThinGlass is a range of heights at which the wall is too thin: for the cuts there or,
// where there are none, for the shallowest of the job's motifs.
type ThinGlass struct {
	From, To float64
	Cut      bool // there are cuts somewhere in it
}

// grain is the step of heights in TooThin, in millimetres.
const grain = 0.1

// TooThin returns the heights at which the wall is too thin to be cut as the job asks, from
// the foot up. Where there are cuts, it agrees with the check for thin glass.
func (p *Plan) TooThin() []ThinGlass {
	const slack = 1e-9 // as in thin
	idle := math.Inf(1)
	for _, m := range p.Job.Motifs {
		if m.Face == job.Side {
			idle = min(idle, m.Shallowest())
		}
	}
	var all []ThinGlass
	untouched := p.Blank.CutTo(idle)
	for i, left := range p.leftAt() {
		t := ThinGlass{grain * float64(i), min(grain*float64(i+1), p.Blank.Height()), !math.IsInf(left, 1)}
		if t.Cut && left >= p.Job.Limits.Leave-slack {
			continue
		}
		if !t.Cut {
			low := untouched.Left(t.From) - p.Job.Limits.Leave + slack
			high := untouched.Left(t.To) - p.Job.Limits.Leave + slack
			if low >= 0 && high >= 0 {
				continue
			}
			// Within a grain the glass left changes along a straight line, or nearly so.
			if cross := t.From + (t.To-t.From)*low/(low-high); low >= 0 {
				t.From = cross
			} else if high >= 0 {
				t.To = cross
			}
		}
		if n := len(all); n > 0 && all[n-1].To == t.From {
			all[n-1].To, all[n-1].Cut = t.To, all[n-1].Cut || t.Cut
		} else {
			all = append(all, t)
		}
	}
	return all
}

// leftAt returns the least glass left under any cut, for each grain from the foot up: +Inf
// where there is no cut.
func (p *Plan) leftAt() []float64 {
	least := make([]float64, int(math.Ceil(p.Blank.Height()/grain)))
	for i := range least {
		least[i] = math.Inf(1)
	}
	cut := p.Blank.CutTo(0)
	for i := range p.Cuts {
		// Under a broad wheel the least glass may be beside the cut's line.
		if r := p.Cuts[i].Remains; r.Height >= 0 && r.Height < p.Blank.Height() {
			n := int(r.Height / grain)
			least[n] = min(least[n], r.Min)
		}
		samples := p.Cuts[i].Samples
		for k := range samples {
			a, b := samples[max(k-1, 0)], samples[k]
			if a.Height > b.Height {
				a, b = b, a
			}
			one := cut.To(a.Depth).Left(a.Height)
			other := cut.To(b.Depth).Left(b.Height)
			from, to := max(int(a.Height/grain), 0), min(int(b.Height/grain), len(least)-1)
			for n := from; n <= to; n++ {
				// The part of the way between the two samples that is in this grain.
				begin, end := 0.0, 1.0
				if rise := b.Height - a.Height; rise > 0 {
					begin = min(max((grain*float64(n)-a.Height)/rise, 0), 1)
					end = min(max((grain*float64(n+1)-a.Height)/rise, 0), 1)
				}
				least[n] = min(least[n], one+(other-one)*begin, one+(other-one)*end)
			}
		}
	}
	return least
}
