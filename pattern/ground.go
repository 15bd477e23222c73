package pattern

import (
	"context"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// Volume returns the glass that is ground away in all, in mm³. Where grooves cross or
// overlap, the glass counts once. It is computed on first use.
func (p *Plan) Volume() float64 {
	if p.ground == nil {
		return p.grinds()
	}
	return p.ground()
}

// grinds computes Volume. The grooves of one period that overlap others are laid as hollows
// on a map of it, which shows what share of them is taken more than once. That share is then
// left out of the kernel's own volumes, so that what a map's cells are too coarse for is left
// out of both.
func (p *Plan) grinds() float64 {
	sum, crossed, over := 0.0, 0.0, p.overlapping()
	for i := range p.Cuts {
		sum += p.Cuts[i].Volume
	}
	if m := newGroundMap(p, over); m != nil {
		for n, relief := range p.reliefs(over) {
			for turns := range m.copies(p) {
				m.take(int16(n+turns*len(over)+1), turnedRelief(p, relief, turns))
			}
			crossed += p.Cuts[over[n]].Volume
		}
		if m.sum > 0 {
			sum -= crossed * (1 - m.union/m.sum)
		}
	}
	return sum * float64(p.Periods())
}

// overlapping lists the cuts of the period whose footprints overlap another's, by their
// place in the plan's list.
func (p *Plan) overlapping() []int {
	met := make([]bool, len(p.Cuts))
	p.neighbours(0, func(q pair) bool {
		a, b := &p.Cuts[q.first], &p.Cuts[q.second]
		if (!met[q.first] || !met[q.second]) && overlap(&p.Surface, a.Outlines, b.Outlines, float64(q.turns*p.Period)*p.PitchAngle()) {
			met[q.first], met[q.second] = true, true
		}
		return true
	})
	var over []int
	for i, is := range met {
		if is {
			over = append(over, i)
		}
	}
	return over
}

// overlap reports whether two footprints overlap, the second turned round the glass.
func overlap(surface *geometry.Surface, a, b []geometry.Outline, turned float64) bool {
	const touching = 1e-6 // mm
	for _, other := range b {
		if turned != 0 {
			other = other.Turned(surface, turned)
		}
		for _, o := range a {
			if far, _, _ := o.Distance(other, touching); far < touching {
				return true
			}
		}
	}
	return false
}

// reliefs returns the hollows of some of the plan's cuts.
func (p *Plan) reliefs(of []int) []groove.Relief {
	all := make([]groove.Relief, len(of))
	// The error would be the context's, which has no end.
	_ = each(context.Background(), len(of), func() func(int) {
		cutter := groove.NewCutter(&p.Surface, nil)
		return func(n int) {
			c := &p.Cuts[of[n]]
			all[n] = cutter.Relief(c.Groove, p.Job.Rack[c.Wheel])
		}
	})
	return all
}
