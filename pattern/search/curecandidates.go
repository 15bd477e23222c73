package search

import (
	"slices"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// moves returns the series that move each of a group's motifs: up the glass
// for 1, and down for -1.
func (s *cureSearch) moves(g pattern.Group, ways ...float64) []series {
	var all []series
	for _, i := range g.Motifs {
		for _, way := range ways {
			all = append(all, moves(s.Job, i, 0, way))
		}
	}
	return all
}

// sideways moves them round the glass: a motif that runs on goes all round it
// already.
func (s *cureSearch) sideways(g pattern.Group) []series {
	var all []series
	for _, i := range g.Motifs {
		if !s.before.RunsOn(i) {
			all = append(all, moves(s.Job, i, 1, 0), moves(s.Job, i, -1, 0))
		}
	}
	return all
}

// inwards moves a motif back into the band from the end it runs over, if it is one.
func (s *cureSearch) inwards(g pattern.Group, below, above bool) []series {
	switch {
	case below == above:
		return nil
	case below:
		return s.moves(g, 1)
	}
	return s.moves(g, -1)
}

// ends reports which ends of the band the cuts of a group run over.
func ends(g pattern.Group) (below, above bool) {
	for _, f := range g.Findings {
		if len(f.Cuts) == 1 {
			below = below || f.Measured < f.Wanted
			above = above || f.Measured > f.Wanted
		}
	}
	return below, above
}

// each returns the series that there are for each of a group's motifs.
func (s *cureSearch) each(g pattern.Group, of func(j *job.Job, i int) []series) []series {
	var all []series
	for _, i := range g.Motifs {
		all = append(all, of(s.Job, i)...)
	}
	return all
}

// fewer takes the counts of the group's motifs down.
func (s *cureSearch) fewer(g pattern.Group) []series { return s.each(g, countsDown) }

// lighter takes their depths down, a caliper's step at a time.
func (s *cureSearch) lighter(g pattern.Group) []series { return s.shallower(g, s.Job.Length.Step()) }

// lightest takes them down for marks that are too short: in small steps too, where a
// caliper's step is too deep for them.
func (s *cureSearch) lightest(g pattern.Group) []series {
	return s.each(g, ofOwners(func(j *job.Job, o owner) []series { return []series{fineDepths(j, o)} }))
}

// finer takes them down in small steps, which no caliper shows and the bench sheet
// does: for where a caliper's step takes so much that it brings something.
func (s *cureSearch) finer(g pattern.Group) []series {
	return s.shallower(g, smallStep(s.Job.Length))
}

func (s *cureSearch) shallower(g pattern.Group, step float64) []series {
	return s.each(g, ofOwners(func(j *job.Job, o owner) []series { return []series{depths(j, o, step)} }))
}

// wheels tries the rack's other wheels on the group's motifs.
func (s *cureSearch) wheels(g pattern.Group) []series { return s.each(g, ofOwners(otherWheels)) }

// fewerRepeats tries a few repeats less.
func (s *cureSearch) fewerRepeats() []series {
	var all series
	for n := s.Repeats - s.Period; n >= max(s.Period, s.Repeats-8); n -= s.Period {
		if c := (job.Change{Motif: s.Face.Table(), Key: "repeats", Value: float64(n)}); c.Allowed(s.Job) {
			all = append(all, candidate{c})
		}
	}
	return []series{all}
}

// narrower, lower and smaller draw a group's motifs in, each by itself, a
// fiftieth at a time; larger makes their marks longer.
func (s *cureSearch) narrower(g pattern.Group) []series {
	return s.sizes(g, smallerTimes(), "width")
}
func (s *cureSearch) lower(g pattern.Group) []series { return s.sizes(g, smallerTimes(), "height") }
func (s *cureSearch) smaller(g pattern.Group) []series {
	return s.sizes(g, smallerTimes(), "width", "height", "width height")
}
func (s *cureSearch) larger(g pattern.Group) []series {
	return s.sizes(g, largerTimes(), "width", "height", "width height")
}

// sizes changes sizes. The width of a motif that is meant to run on from repeat
// to repeat stays: else it wouldn't run on.
func (s *cureSearch) sizes(g pattern.Group, by []float64, sides ...string) []series {
	var all []series
	for _, i := range g.Motifs {
		for _, side := range sides {
			if strings.Contains(side, "width") && s.before.RunsOn(i) {
				continue
			}
			all = append(all, resized(s.Job, i, strings.Fields(side), by))
		}
	}
	return all
}

// closer makes a motif that nearly meets its next copy meet it, and one that
// lies on it just reach it.
func (s *cureSearch) closer(g pattern.Group) []series {
	return s.each(g, func(j *job.Job, i int) []series { return []series{closed(j, i)} })
}

// straighter bends the lines of the group's motifs less.
func (s *cureSearch) straighter(g pattern.Group) []series { return s.each(g, straighter) }

// outwards has the cuts of a base begin farther from the middle, where copies run together:
// its band, the motifs themselves, or their boxes.
func (s *cureSearch) outwards(g pattern.Group) []series {
	step, band := s.Job.Length.Step(), s.calipered()
	var all series
	for n := 1.0; n < (band.Top-band.Foot)/2/step; n++ {
		all = append(all, s.banded(job.Band{Foot: band.Foot + n*step, Top: band.Top}))
	}
	return slices.Concat([]series{all}, s.each(g, shorter), s.lower(g))
}

// calipered returns the plan's band between the steps of the calipers next inside it.
func (s *cureSearch) calipered() job.Band {
	step := s.Job.Length.Step()
	return job.Band{Foot: -floor(-s.Band.Foot, step), Top: floor(s.Band.Top, step)}
}

func (s *cureSearch) banded(band job.Band) candidate {
	return candidate{{Motif: s.Face.Table(), Key: "band", Band: band}}
}

// shorterBand draws the end of the band in from the margin it runs into, by up
// to half. Both its ends are given, on the steps of the calipers.
func (s *cureSearch) shorterBand(g pattern.Group) []series {
	step, band := s.Job.Length.Step(), s.calipered()
	var all series
	for n := 1.0; n < (band.Top-band.Foot)/2/step; n++ {
		shorter := band
		if g.Kind != pattern.Foot {
			shorter.Top -= n * step
		} else {
			shorter.Foot += n * step
		}
		all = append(all, s.banded(shorter))
	}
	return []series{all}
}

// flatterBand draws in either end of the band.
func (s *cureSearch) flatterBand() []series {
	step, band := s.Job.Length.Step(), s.calipered()
	var lower, higher series
	for n := 1.0; band.Top-band.Foot-n*step >= pattern.MinBand; n++ {
		lower = append(lower, s.banded(job.Band{Foot: band.Foot, Top: band.Top - n*step}))
		higher = append(higher, s.banded(job.Band{Foot: band.Foot + n*step, Top: band.Top}))
	}
	return []series{lower, higher}
}
