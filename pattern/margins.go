package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// margins checks the height of each cut: its footprint against the margins of rim and
// foot, or of the base's edge, its centre line against the band.
func (p *Plan) margins() []Finding {
	var found []Finding
	keep := p.keepsTo()
	const stray = 0.01 // mm: rounding, and a curve's straight pieces
	for i := range p.Cuts {
		c := &p.Cuts[i]
		footprint, line := p.footprintReach(c), lineReach(c.Groove)
		add := func(kind Kind, at place, wanted float64) {
			found = append(found, Finding{
				Kind: kind, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.theta,
				Height: at.height, Measured: at.height, Wanted: wanted,
			})
		}
		atRim, atFoot := footprint.high.height > keep.high+stray, footprint.low.height < keep.low-stray
		if atRim {
			add(keep.upper, footprint.high, keep.high)
		}
		if atFoot {
			add(Foot, footprint.low, keep.low)
		}
		// A cut beyond the band that is in a margin too is reported once, as in the margin.
		switch {
		case line.high.height > p.Band.Top+stray && !atRim:
			add(Off, line.high, p.Band.Top)
		case line.low.height < p.Band.Foot-stray && !atFoot && !p.sized[c.Motif].Middle:
			add(Off, line.low, p.Band.Foot)
		}
	}
	return found
}

// margin is the heights within which footprints have to stay, and the finding for one that
// reaches beyond the higher.
type margin struct {
	low, high float64
	upper     Kind
}

// keepsTo returns the margins of the plan's face. A base has none at its middle: there its
// band ends.
func (p *Plan) keepsTo() margin {
	limits := p.Job.Limits
	if p.Face == job.Base {
		return margin{0, p.Blank.BaseRadius() - limits.Edge, AtEdge}
	}
	return margin{limits.Foot, p.Blank.Height() - limits.Rim, Rim}
}

// place is a place on the glass.
type place struct{ theta, height float64 }

// reach is the lowest and the highest place of a cut.
type reach struct{ low, high place }

// noReach is the reach before any place is added.
func noReach() reach {
	return reach{place{0, math.Inf(1)}, place{0, math.Inf(-1)}}
}

func (r *reach) add(theta, height float64) {
	if height < r.low.height {
		r.low = place{theta, height}
	}
	if height > r.high.height {
		r.high = place{theta, height}
	}
}

// footprintReach returns the reach of a cut's footprint.
func (p *Plan) footprintReach(c *Cut) reach {
	low, high := math.Inf(1), math.Inf(-1)
	var lowest, highest geometry.Point
	for _, o := range c.Outlines {
		for _, q := range o.Points {
			z := p.Surface.HeightOf(q)
			if z < low {
				low, lowest = z, q
			}
			if z > high {
				high, highest = z, q
			}
		}
	}
	r := noReach()
	if low > high {
		return r
	}
	r.add(p.Surface.Reverse(lowest))
	r.add(p.Surface.Reverse(highest))
	return r
}

// lineReach returns the reach of a groove's centre line.
func lineReach(g *groove.Groove) reach {
	r := noReach()
	for _, s := range g.Samples {
		r.add(s.Theta, s.Height)
	}
	return r
}
