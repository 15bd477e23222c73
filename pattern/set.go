package pattern

import (
	"context"
	"slices"

	"roundlay/pattern/job"
)

// Set compares the blanks of one job: how they differ, and which of them limit the others.
type Set struct {
	Job     *job.Job
	Members []Member // in the job's order
	// Band is the band that all blanks share. Where each blank goes to its own limits, it
	// is the part that all their bands have in common.
	Band job.Band
	// Limits is what limits the set, each once; empty where each blank goes to its own
	// limits.
	Limits []Limit
}

// Member is one blank of a set.
type Member struct {
	*Plan
	Own        job.Band // the tallest band that it carries by itself
	End                 // what limits that at the top
	Diameter   float64  // its diameter at the middle of the set's band
	Wall       float64  // the thinnest in the set's band
	OutOfRound float64
}

// Bound is what a blank limits, or is limited by.
type Bound int

// A band ends where a taller one would put a motif on too thin a wall (ByWall), at the rim
// margin (ByRim), or where the job ends the paper (ByPaper). The blank with the least girth
// limits the size of motifs (ByGirth). With ByFindings a blank is the only one with
// findings.
const (
	ByWall Bound = iota
	ByRim
	ByPaper
	ByGirth
	ByFindings
)

// String returns the bound's name in reports.
func (b Bound) String() string { return [...]string{"wall", "rim", "paper", "girth", "findings"}[b] }

// Limit is how one blank limits the set.
type Limit struct {
	Member *Member
	By     Bound
	End    End // of the band, where By is ByWall, ByRim or ByPaper
	// Next is the blank that would limit the set without this one, in height or in size;
	// nil where none would.
	Next *Member
	Without
}

// Without is what a set would be without one of its blanks.
type Without struct {
	Taller float64 // how much higher the band would reach, mm
	Wider  float64 // how many times as wide the motif that gains most would be
	// Findings is the number of lettered findings the others would have, Before the number
	// they have now.
	Findings, Before int
}

// NewSet compares the plans that Lay made of a job of several blanks.
func NewSet(ctx context.Context, plans []*Plan) (*Set, error) {
	s := compare(plans)
	if !matched(s.Job) {
		return s, nil
	}
	return s, s.hold(ctx)
}

// compare makes the set of some plans, without its limits.
func compare(plans []*Plan) *Set {
	s := &Set{Job: plans[0].Job, Band: plans[0].Band}
	for _, p := range plans[1:] {
		s.Band.Foot, s.Band.Top = max(s.Band.Foot, p.Band.Foot), min(s.Band.Top, p.Band.Top)
	}
	for _, p := range plans {
		m := Member{Plan: p, Diameter: across(p.Blank.Profile(), s.Band), OutOfRound: p.Blank.OutOfRound()}
		m.Own, m.End = carried(p.Job, p.Blank)
		m.Wall = p.Blank.MinWall(s.Band.Foot, max(s.Band.Top, s.Band.Foot))
		s.Members = append(s.Members, m)
	}
	return s
}

// hold finds which blanks limit the set: the height of its band, the size of its motifs,
// and by findings that no other blank has. Where the job states the band, a blank limits it
// only if the band reaches higher than that blank carries.
func (s *Set) hold(ctx context.Context) error {
	_, i, end, err := commonBand(s.Job)
	if err != nil {
		return err
	}
	if s.Job.Layout.Band != nil {
		i = s.lowest()
		end = s.Members[i].End
	}
	if s.Job.Layout.Band == nil || s.Members[i].Own.Top < s.Band.Top-1e-9 {
		if err := s.add(ctx, i, end.By, end); err != nil {
			return err
		}
	}
	_, from, err := oneSize(s.Job, s.Band)
	if err != nil {
		return err
	}
	if i := mostOf(from); i >= 0 {
		if err := s.add(ctx, i, ByGirth, End{}); err != nil {
			return err
		}
	}
	if i, alone := s.onlyFound(); alone {
		return s.add(ctx, i, ByFindings, End{})
	}
	return nil
}

// add adds a member as a limit, and lays the others out without it.
func (s *Set) add(ctx context.Context, i int, by Bound, end End) error {
	h := Limit{Member: &s.Members[i], By: by, End: end}
	rest := s.Job.Clone()
	rest.Blanks = slices.Delete(slices.Clone(s.Job.Blanks), i, i+1)
	band, lowest, _, err := commonBand(rest)
	if err != nil {
		return err
	}
	h.Taller = band.Top - s.Band.Top
	wider, narrowest, err := s.wider(rest, band)
	if err != nil {
		return err
	}
	h.Wider = wider
	known := new(Editor)
	for k, m := range s.Members {
		if k == i {
			continue
		}
		h.Before += len(m.Groups())
		p, _, err := known.lay(ctx, rest, faceOf{m.Blank, job.Side}, 0)
		if err != nil {
			return err
		}
		c, err := p.check(ctx, nil)
		if err != nil {
			return checking(m.Blank, err)
		}
		p.Findings = c.found
		h.Findings += len(p.Groups())
	}
	next := -1
	switch by {
	case ByWall, ByRim, ByPaper:
		next = lowest
	case ByGirth:
		next = narrowest
	}
	if next >= i {
		next++ // an index into the set without member i
	}
	if next >= 0 {
		h.Next = &s.Members[next]
	}
	s.Limits = append(s.Limits, h)
	return nil
}

// wider returns how many times as wide the motif that gains most is in a smaller set, and
// the blank of that set which most widths come from.
func (s *Set) wider(rest *job.Job, band job.Band) (times float64, narrowest int, err error) {
	whole, from, err := oneSize(s.Job, s.Band)
	if err != nil {
		return 0, 0, err
	}
	part, narrow, err := oneSize(rest, band)
	if err != nil {
		return 0, 0, err
	}
	for i := range whole {
		if from[i] >= 0 {
			times = max(times, part[i].Width.Value/whole[i].Width.Value)
		}
	}
	if times == 0 {
		times = 1 // no width comes from a blank
	}
	return times, mostOf(narrow), nil
}

// lowest returns the member whose own band ends lowest.
func (s *Set) lowest() int {
	low := 0
	for i, m := range s.Members {
		if m.Own.Top < s.Members[low].Own.Top {
			low = i
		}
	}
	return low
}

// onlyFound returns the one member that has findings, if only one has.
func (s *Set) onlyFound() (only int, alone bool) {
	for i, m := range s.Members {
		if len(m.Findings) > 0 && alone {
			return 0, false
		}
		if len(m.Findings) > 0 {
			only, alone = i, true
		}
	}
	return only, alone
}

// mostOf returns the number that is most frequent in a list, -1 left out; -1 if there is no
// other.
func mostOf(list []int) int {
	most, times := -1, 0
	for _, n := range list {
		count := 0
		for _, m := range list {
			if m == n {
				count++
			}
		}
		if n >= 0 && count > times {
			most, times = n, count
		}
	}
	return most
}
