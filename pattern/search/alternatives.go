package search

import (
	"math"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// mostOthers is how many other changes a cure lists: as many as are read in one go.
const mostOthers = 2

// others returns what else would do of the candidates of a cure's own list, the
// cheapest first, where a cutter may well prefer it: no key that is told already, none
// twice, and nothing that brings anything.
func others(told candidate, found []proven) []pattern.Alternative {
	told = slices.Clone(told)
	var all []pattern.Alternative
	for _, r := range found {
		if len(r.brings) == 0 && !r.shares(told) && len(all) < mostOthers {
			told = append(told, r.candidate...)
			all = append(all, pattern.Alternative{Changes: r.candidate})
		}
	}
	return all
}

// severalWays reports whether a kind of finding is told more than one cure.
func severalWays(kind pattern.Kind) bool {
	return kind == pattern.Shallow || kind == pattern.Tight || kind == pattern.Off
}

// orOnRack adds to a cure of lines that are too tight the wheel of the rack that does
// for them as they are.
func (s *cureSearch) orOnRack(g pattern.Group, cure pattern.Cure) pattern.Cure {
	if len(cure.Changes) == 0 {
		return cure // with a wheel it would have some
	}
	told := candidate(cure.Changes)
	for _, or := range cure.Or {
		told = slices.Concat(told, or.Changes)
	}
	cure.Or = append(cure.Or, others(told, s.mildest(g, s.wheels(g)))...)
	return cure
}

// hardly is the share of its depth below which a mark hardly marks the glass.
const hardly = 0.1

// orAccept adds to a cure of marks that are too short that they are accepted as they
// come out, on all blanks of a set: what limits.reach has to be for that, and how deep
// they are then. It doesn't where they hardly mark the glass.
func (s *cureSearch) orAccept(g pattern.Group, cure pattern.Cure) pattern.Cure {
	reach, depths := s.shortOnAll(g)
	reach = math.Floor(reach*100+1e-9) / 100
	if reach < hardly {
		return cure
	}
	c := candidate{{Motif: job.OfLimits, Key: "reach", Value: reach}}
	e, j := s.reaching(reach), s.Job.With(c...)
	d, err := e.TryOn(s.ctx, j, s.Blank, s.Face)
	if err != nil || d.Finds(g.Kind, g.Motifs) {
		return cure
	}
	if brings, ok := s.brings(g, e, j); ok && len(brings) == 0 {
		cure.Or = append(cure.Or, pattern.Alternative{Changes: c, Depths: depths})
	}
	return cure
}

// shortOnAll returns the least share of their depth, and the least and the greatest
// depth, that the marks of a group's motifs come to that are too short on any blank.
func (s *cureSearch) shortOnAll(g pattern.Group) (share float64, depths [2]float64) {
	share, depths = 1, [2]float64{math.Inf(1), 0}
	for _, b := range s.Job.Blanks {
		d, err := s.TryOn(s.ctx, s.Job, b, s.Face)
		if err != nil {
			return 0, depths
		}
		for _, i := range g.Motifs {
			for _, cut := range d.Cuts(i) {
				if !cut.Reaches(s.Job.Limits.Reach) {
					share = min(share, cut.Reached()/cut.Asked)
					depths = [2]float64{min(depths[0], cut.Reached()), max(depths[1], cut.Reached())}
				}
			}
		}
	}
	return share, depths
}

// keepBelow adds to a cure for thin glass how far up the band may reach, if that
// clears, and whether it brings anything; and puts it first where it alone brings
// nothing.
func (s *cureSearch) keepBelow(g pattern.Group, cure pattern.Cure) pattern.Cure {
	if s.Face != job.Side {
		return cure // a floor is as thick everywhere
	}
	depth := 0.0
	for _, i := range g.Motifs {
		depth = max(depth, s.Job.Motifs[i].Deepest())
	}
	top := floor(s.Blank.Carries(glass.Wanted{Wall: s.Job.Limits.Leave + depth}), s.Job.Length.Step())
	if top < s.Band.Foot+pattern.MinBand {
		return cure
	}
	c := s.banded(job.Band{Foot: s.Band.Foot, Top: top})
	if !s.clears(g, c) {
		return cure
	}
	below, ok := s.prove(g, c)
	clean := len(below.brings) == 0
	switch {
	case !ok:
	case cure.Changes == nil, clean && len(cure.Brings) > 0:
		return s.found(g, below)
	case len(cure.Brings) == 0:
		cure.Or = append(cure.Or, pattern.Alternative{Changes: c, Brings: !clean})
	}
	return cure
}

// orWheel adds to a cure of lines too tight, or of a wheel that bridges a hollow,
// which wheel like the motif's own would do: one that a job may have, that clears
// it, and brings nothing with it.
func (s *cureSearch) orWheel(g pattern.Group, cure pattern.Cure) pattern.Cure {
	most := s.largestWheel(g)
	across := floor(2*most, s.Job.Length.Step())
	i, wheel := g.Motifs[0], s.cut(g.Findings[0]).Wheel
	if math.IsInf(most, 1) || !job.TakesWheel(wheelAcross(s.Job, wheel, across)) {
		return cure
	}
	j := withWheel(s.Job, i, wheel, across)
	e := s.Afresh() // for another rack
	d, err := e.TryOn(s.ctx, j, s.Blank, s.Face)
	if err != nil || d.Finds(g.Kind, g.Motifs) {
		return cure
	}
	if brings, ok := s.brings(g, e, j); ok && len(brings) == 0 {
		cure.Or = append(cure.Or, pattern.Alternative{Diameter: across})
	}
	return cure
}

// largestWheel returns the radius of the largest wheel that the cuts of a group would
// do with; infinite where another wheel is no help.
func (s *cureSearch) largestWheel(g pattern.Group) float64 {
	most := math.Inf(1)
	for _, f := range g.Findings {
		if s.ctx.Err() != nil {
			return math.Inf(1)
		}
		most = min(most, wheelThatFits(s.ctx, s.Plan, s.cut(f), g.Kind == pattern.Tight))
	}
	return most
}

// wheelAcross returns a wheel of the rack, of another diameter.
func wheelAcross(j *job.Job, of int, across float64) groove.Wheel {
	wheel := j.Rack[of]
	wheel.Radius = across / 2
	return wheel
}

// withWheel returns the job with such a wheel on its rack, for a motif and its parts in
// place of the one it is like.
func withWheel(j *job.Job, i, of int, across float64) *job.Job {
	j = j.Clone()
	j.Rack = append(slices.Clone(j.Rack), wheelAcross(j, of, across))
	m, fresh := &j.Motifs[i], len(j.Rack)-1
	if m.Wheel == of {
		m.Wheel = fresh
	}
	for k, part := range m.Parts {
		if part.Wheel != nil && *part.Wheel == of {
			m.Parts[k].Wheel = &fresh
		}
	}
	return j
}

// tightestCurve says which curve the group's wheel would follow.
func (s *cureSearch) tightestCurve(g pattern.Group) []pattern.Fact {
	radius := 0.0
	for _, f := range g.Findings {
		radius = max(radius, s.cut(f).CurveFor(pattern.MaxSweep))
	}
	return []pattern.Fact{{Kind: pattern.CurveRadius, Length: radius}}
}

// shortestMark says how long a mark any cut of the group needs to reach the depth it
// was asked for.
func (s *cureSearch) shortestMark(g pattern.Group) []pattern.Fact {
	longest := 0.0
	for _, f := range g.Findings {
		cut := s.cut(f)
		longest = max(longest, cut.LengthFor(&s.Surface, s.Job.Rack[cut.Wheel], cut.Asked))
	}
	return []pattern.Fact{{Kind: pattern.MarkLength, Length: longest}}
}
