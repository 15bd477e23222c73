package search

import (
	"context"
	"math"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// NewWheel is a wheel that is not on the rack: like a motif's own, but no more than so
// far across.
type NewWheel struct {
	Motif    int
	Like     int // the wheel of the rack in place of which it is
	Diameter float64
}

// newWheels returns wheels with which the job clears, and all else as it is: one for
// each motif whose lines are too tight for its own, or whose own rests on a hollow. It
// returns none where that is not all it takes.
func (f *fitSearch) newWheels() []NewWheel {
	var all []NewWheel
	j := f.job
	for i := range f.job.Motifs {
		most, like := math.Inf(1), 0
		for _, b := range f.job.Blanks {
			d, err := f.TryOn(f.ctx, f.job, b, f.job.Motifs[i].Face)
			if err != nil {
				return nil
			}
			kinds := d.Kinds(i)
			if !slices.Contains(kinds, pattern.Tight) && !slices.Contains(kinds, pattern.Bridged) {
				continue
			}
			for _, c := range d.Cuts(i) {
				if f.ctx.Err() != nil {
					return nil
				}
				if r := wheelThatFits(f.ctx, d.Plan, &c, true); r < most {
					most, like = r, c.Wheel
				}
			}
		}
		if math.IsInf(most, 1) {
			continue
		}
		across := floor(2*most, f.job.Length.Step())
		if !job.TakesWheel(wheelAcross(f.job, like, across)) {
			return nil
		}
		j = withWheel(j, i, like, across)
		all = append(all, NewWheel{i, like, across})
	}
	if len(all) == 0 || !f.Afresh().Clears(f.ctx, j) { // afresh, for another rack
		return nil
	}
	return all
}

// wheelThatFits returns the radius of the largest wheel that a cut would do with, of a
// line that bends too where that counts; infinite where another wheel is no help.
func wheelThatFits(ctx context.Context, p *pattern.Plan, cut *pattern.Cut, bends bool) float64 {
	r := 0.0
	switch {
	case cut.Bridges():
		r, _ = p.LargestWheel(ctx, cut) // none where it is stopped: the search ends then
	case bends && cut.WheelFit.Share > pattern.MaxSweep:
		r = cut.WheelFor(p.Job.Rack[cut.Wheel], pattern.MaxSweep)
	}
	if r <= 0 {
		return math.Inf(1)
	}
	return r
}
