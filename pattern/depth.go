package pattern

import (
	"context"
	"math"
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
			Measured: c.Depth, Wanted: c.Asked * p.Job.Limits.Reach,
		})
	}
	return found
}

// reaches reports whether a cut is as deep as the job accepts.
func (p *Plan) reaches(c *Cut) bool { return c.Depth >= c.Asked*p.Job.Limits.Reach-1e-9 }

// ShortMarks is a motif's marks that are too short for the depth asked for.
type ShortMarks struct {
	Marks    int     // in one period
	Min, Max float64 // the depths they reach
	Needed   float64 // the length that would reach the depth at every one of them
	Allowed  bool    // whether the job accepts every one of them
}

// ShortMarks returns, motif by motif, the marks that are too short.
func (p *Plan) ShortMarks() []ShortMarks {
	needed := make([]float64, len(p.Cuts)) // 0 for a mark that is long enough
	_ = each(context.Background(), len(p.Cuts), func() func(int) {
		return func(i int) {
			if c := &p.Cuts[i]; c.Short() {
				needed[i] = c.LengthFor(&p.Surface, p.Job.Rack[c.Wheel], c.Asked)
			}
		}
	})
	short := make([]ShortMarks, len(p.Job.Motifs))
	for i := range short {
		short[i].Min, short[i].Allowed = math.Inf(1), true
	}
	for i, length := range needed {
		if length == 0 {
			continue
		}
		c := &p.Cuts[i]
		s := &short[c.Motif]
		s.Marks++
		s.Allowed = s.Allowed && p.reaches(c)
		s.Min, s.Max, s.Needed = min(s.Min, c.Depth), max(s.Max, c.Depth), max(s.Needed, length)
	}
	return short
}
