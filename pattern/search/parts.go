package search

import (
	"math"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// owner is a motif, or a part of one: what has a wheel and a depth.
type owner struct {
	motif int
	part  string // "" is the motif
}

// owners returns what of a motif may be given another wheel or depth: the motif and, where
// the job says something of its parts, each of them too.
func owners(j *job.Job, i int) []owner {
	all := []owner{{i, ""}}
	if len(j.Motifs[i].Parts) > 0 {
		for _, part := range j.Motifs[i].Kind.Parts {
			all = append(all, owner{i, part})
		}
	}
	return all
}

// ofOwners returns the series that there are for each of a motif's owners.
func ofOwners(of func(j *job.Job, o owner) []series) func(j *job.Job, i int) []series {
	return func(j *job.Job, i int) []series {
		var all []series
		for _, o := range owners(j, i) {
			all = append(all, of(j, o)...)
		}
		return all
	}
}

func (o owner) change(key string, value float64) job.Change {
	return job.Change{Motif: o.motif, Part: o.part, Key: key, Value: value}
}

// otherWheels returns for each other wheel of the rack the candidate that takes it.
func otherWheels(j *job.Job, o owner) []series {
	var all []series
	for w := range j.Rack {
		if w != j.Motifs[o.motif].WheelOf(o.part) {
			all = append(all, series{{o.change("wheel", float64(w))}})
		}
	}
	return all
}

// handHeld is the least depth that is offered, in mm: what polishing takes off and no hand
// holds evenly. Common practice, no source.
const handHeld = 0.1

// depths returns shallower depths, a step apart, that a hand holds.
func depths(j *job.Job, o owner, step float64) series {
	steps := int(math.Ceil(j.Motifs[o.motif].DepthOf(o.part)/step-1e-9)) - 1
	var r series
	for n := steps; n >= 1 && float64(n)*step >= handHeld-1e-9; n-- {
		r = append(r, candidate{o.change("depth", float64(n)*step)})
	}
	return r
}

// fineDepths returns shallower depths: a caliper's step apart, and below the last of
// these, for marks so short that even one step is too deep, in small steps. It ends where
// a mark would hardly be one.
func fineDepths(j *job.Job, o owner) series {
	step, fine := j.Length.Step(), smallStep(j.Length)
	all, has := depths(j, o, step), j.Motifs[o.motif].DepthOf(o.part)
	below := has
	if len(all) > 0 {
		below = step
	}
	for n := math.Ceil(below/fine-1e-9) - 1; n >= 1 && n*fine >= max(hardly*has, handHeld-1e-9); n-- {
		all = append(all, candidate{o.change("depth", n*fine)})
	}
	return all
}

// byPart returns what changes one part alone of a motif of which the job says nothing by
// part: the rock and the depth of each part that a group's findings are on, where there are
// others, and its wheel. It is for where nothing does that leaves the motif's cuts alike.
func (s *cureSearch) byPart(g pattern.Group) []series {
	var all []series
	for _, o := range s.partsFound(g) {
		all = append(all, lessRock(s.Job, o), depths(s.Job, o, s.Job.Length.Step()), depths(s.Job, o, smallStep(s.Job.Length)))
		all = append(all, otherWheels(s.Job, o)...)
	}
	return all
}

// partsFound returns the parts that a group's findings are on, of motifs that have others.
func (s *cureSearch) partsFound(g pattern.Group) []owner {
	var all []owner
	for _, f := range g.Findings {
		for _, id := range f.Cuts {
			c := s.CutOf(id)
			o, m := owner{c.Motif, c.Part}, s.Job.Motifs[c.Motif]
			if len(m.Parts) == 0 && len(m.Kind.Parts) > 1 && !slices.Contains(all, o) {
				all = append(all, o)
			}
		}
	}
	return all
}

// share returns which share of a motif's cuts an owner has.
func (o owner) share(cuts []pattern.Cut) float64 {
	if o.part == "" || len(cuts) == 0 {
		return 1
	}
	n := 0
	for _, c := range cuts {
		if c.Part == o.part {
			n++
		}
	}
	return float64(n) / float64(len(cuts))
}
