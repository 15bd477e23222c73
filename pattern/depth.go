package pattern

// thin checks the glass left under each cut, at every place along it.
func (p *Plan) thin() []Finding {
	var found []Finding
	leave := p.Job.Limits.Leave
	for _, c := range p.Cuts {
		if c.Left >= leave-1e-9 {
			continue
		}
		f := Finding{Kind: Thin, Cuts: []int{c.ID}, Repeat: c.Repeat, Measured: c.Left, Wanted: leave}
		for _, s := range c.Samples {
			if p.Blank.Wall(s.Height)-s.Depth <= c.Left {
				f.Theta, f.Height = s.Theta, s.Height
			}
		}
		found = append(found, f)
	}
	return found
}

// shallow checks that each mark is long enough for the wheel to reach its
// depth, or the share of it that the job is content with.
func (p *Plan) shallow() []Finding {
	var found []Finding
	for _, c := range p.Cuts {
		if c.Depth >= c.Asked*p.Job.Limits.Reach-1e-9 {
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
