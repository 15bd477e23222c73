package pattern

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// thin checks the least glass left under each cut.
func (p *Plan) thin() []Finding {
	var found []Finding
	leave := p.Job.Limits.Leave
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.Left >= leave-1e-9 {
			continue
		}
		f := Finding{Kind: Thin, Cuts: []int{c.ID}, Repeat: c.Repeat, Measured: c.Left, Wanted: leave}
		f.Theta, f.Height = c.Remains.Theta, c.Remains.Height
		found = append(found, f)
	}
	return found
}

// shallow checks that each mark is long enough for the wheel to reach its depth, or the
// share of it that the job accepts.
func (p *Plan) shallow() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if p.reaches(c) {
			continue
		}
		at := c.Middle()
		found = append(found, Finding{
			Kind: Shallow, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.Theta, Height: at.Height,
			Measured: c.Reached(), Wanted: c.Asked * p.Job.Limits.Reach,
		})
	}
	return found
}

// reaches reports whether a cut is as deep as the job accepts.
func (p *Plan) reaches(c *Cut) bool { return c.Reaches(p.Job.Limits.Reach - 1e-9/c.Asked) }

// ShortMarks is marks of a motif that are too short for the depth asked for.
type ShortMarks struct {
	Motif    int      // number in the job, from 0
	Parts    []string // what they are, where not all of the motif's are cut alike
	Asked    float64  // the depth
	Marks    int      // in one period
	Min, Max float64  // the depths they reach
	Needed   float64  // the length that would reach the depth at every one of them
	Allowed  bool     // whether the job accepts every one of them
}

// ShortMarks returns the marks that are too short, motif by motif and depth by depth.
func (p *Plan) ShortMarks() []ShortMarks {
	needed := make([]float64, len(p.Cuts)) // 0 for a mark that is long enough
	_ = each(context.Background(), len(p.Cuts), func() func(int) {
		return func(i int) {
			if c := &p.Cuts[i]; c.Short() {
				needed[i] = c.LengthFor(&p.Surface, p.Job.Rack[c.Wheel], c.Asked)
			}
		}
	})
	var all []ShortMarks
	for i, length := range needed {
		if length == 0 {
			continue
		}
		c := &p.Cuts[i]
		k := slices.IndexFunc(all, func(s ShortMarks) bool { return s.Motif == c.Motif && s.Asked == c.Asked })
		if k < 0 {
			k = len(all)
			all = append(all, ShortMarks{Motif: c.Motif, Asked: c.Asked, Min: math.Inf(1), Allowed: true})
		}
		s := &all[k]
		s.Marks++
		s.Allowed = s.Allowed && p.reaches(c)
		s.Min, s.Max, s.Needed = min(s.Min, c.Reached()), max(s.Max, c.Reached()), max(s.Needed, length)
		if len(p.Job.Motifs[c.Motif].Parts) > 0 && !slices.Contains(s.Parts, c.Part) {
			s.Parts = append(s.Parts, c.Part)
		}
	}
	slices.SortStableFunc(all, func(a, b ShortMarks) int { return cmp.Compare(a.Motif, b.Motif) })
	return all
}
