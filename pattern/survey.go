package pattern

import (
	"math"
	"slices"
	"strings"

	"roundlay/pattern/job"
)

// site is a kind of trouble in one place of the pattern: what a letter stands for.
type site struct {
	kind   Kind
	motifs [2]int // none is -1
	parts  string
	share  bool
	cuts   int    // of each finding: the glass, one cut or two
	blank  string // where it is another of the set
}

// about reports whether the site is one of a group's kind and motifs.
func (s site) about(g Group) bool { return s.kind == g.Kind && s.motifs == both(g.Motifs) }

func both(motifs []int) [2]int {
	two := [2]int{-1, -1}
	copy(two[:], motifs)
	return two
}

// amount is how much is found at a site: how often in a period, and by how much
// the worst misses what is wanted.
type amount struct {
	times int
	miss  float64
}

// sites is all that is found.
type sites map[site]amount

// count adds findings on a plan's cuts.
func (s sites) count(p *Plan, found []Finding) {
	for _, f := range found {
		motifs, parts := p.about(f)
		at := site{f.Kind, both(motifs), strings.Join(parts, " "), f.Share, len(f.Cuts), ""}
		a := s[at]
		s[at] = amount{a.times + 1, max(a.miss, math.Abs(f.Measured-f.Wanted))}
	}
}

// beyond returns the sites that were not there before, and those at which there
// is more than there was, but for a group's own.
func (s sites) beyond(before sites, g Group) (fresh, more []site) {
	const worse = 1.1 // what misses by so many times as much is worse
	for at, now := range s {
		was, known := before[at]
		switch {
		case at.about(g):
		case !known:
			fresh = append(fresh, at)
		case now.times > was.times || now.miss > worse*was.miss+1e-6:
			more = append(more, at)
		}
	}
	order := func(a, b site) int {
		return slices.Compare([]int{int(a.kind), a.motifs[0], a.motifs[1]}, []int{int(b.kind), b.motifs[0], b.motifs[1]})
	}
	slices.SortFunc(fresh, order)
	slices.SortFunc(more, order)
	return fresh, more
}

// survey answers, of many jobs that differ little from one another, what is
// found on one blank. As with trials, what a change leaves as it was is not
// looked at again.
type survey struct {
	*trials
	alone map[int]sites
	pairs map[[2]int]sites
	told  []told // the cures that bring nothing, on any blank
}

func newSurvey() *survey {
	return &survey{trials: newTrials(), alone: map[int]sites{}, pairs: map[[2]int]sites{}}
}

// finds reports whether a group's kind is found on its motifs.
func (s *survey) finds(tr *trial, g Group) bool {
	p := *tr.plan
	switch len(g.Motifs) {
	case 1:
		if i := g.Motifs[0]; tr.alone(i) {
			return false
		}
		tr.measured(g.Motifs[0])
		p.Cuts = tr.cuts(g.Motifs[0])
	case 2:
		if tr.pair(g.Motifs[0], g.Motifs[1]) {
			return false
		}
		p.Cuts = tr.both(g.Motifs[0], g.Motifs[1])
		s.paired(p.Cuts)
	}
	return p.has(g.Kind, g.Motifs)
}

// sites returns all that is found on a trial.
func (s *survey) sites(tr *trial) sites {
	all := sites{}
	add := func(some sites) {
		for at, a := range some {
			all[at] = amount{max(all[at].times, a.times), max(all[at].miss, a.miss)}
		}
	}
	s.toil += len(tr.motifs) * len(tr.motifs) / 32 // pairs that are looked up
	for i := range tr.motifs {
		add(s.onAlone(tr, i))
		for k := range i {
			add(s.onPair(tr, k, i))
		}
	}
	return all
}

func (s *survey) onAlone(tr *trial, i int) sites {
	id := tr.ids[i]
	found, ok := s.alone[id]
	if !ok {
		found = sites{}
		if !tr.alone(i) || len(tr.plan.uneven()) > 0 {
			p := *tr.plan
			p.Cuts = slices.Clone(tr.cuts(i))
			tr.measured(i)
			found.count(&p, p.findings())
		}
		s.alone[id] = found
	}
	return found
}

func (s *survey) onPair(tr *trial, a, b int) sites {
	key := [2]int{tr.ids[a], tr.ids[b]}
	found, ok := s.pairs[key]
	if !ok {
		found = sites{}
		if !tr.pair(a, b) {
			p := *tr.plan
			p.Cuts = tr.both(a, b)
			s.paired(p.Cuts)
			found.count(&p, slices.Collect(p.crowd(a, b)))
		}
		s.pairs[key] = found
	}
	return found
}

// with sets a plan's job with changes made to it on its blank; it returns nil
// where the job can't be laid out so.
func (s *survey) with(p *Plan, changes []Change) *trial {
	tr, err := s.on(changedBy(p.Job, changes...), p.Blank)
	if err != nil {
		return nil
	}
	return tr
}

// runsOn reports whether a motif is meant to run on from one repeat to the next:
// it is as wide as its repeat, or its lines go on there.
func (tr *trial) runsOn(i int) bool {
	m := tr.plan.Job.Motifs[i]
	if m.Width.Fraction && meets(m) && m.Width.Value < stride(m)+1e-3 {
		return true
	}
	return slices.ContainsFunc(tr.cuts(i), func(c Cut) bool { return c.RunsOn })
}

// stride returns how many repeats a motif's copies stand apart.
func stride(m job.Motif) float64 {
	if m.On != job.Each {
		return 2
	}
	return 1
}
