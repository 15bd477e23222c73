package pattern

// Unseen returns the findings that an inside paper adds to the others: the cuts
// that reach below the inside floor, where it can't carry them. Measured is how
// far down a cut reaches, Wanted the floor. It returns none for a blank whose
// floor was not measured.
func (p *Plan) Unseen() []Finding {
	floor := p.Blank.Floor
	if floor <= 0 {
		return nil
	}
	const stray = 0.01 // mm: what rounding may add
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		low := p.footprintReach(c).low
		if low.height >= floor-stray {
			continue
		}
		found = append(found, Finding{
			Kind: Unseen, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: low.theta, Height: low.height,
			Measured: low.height, Wanted: floor, Cure: Cure{Text: "print them as patches"},
		})
	}
	return found
}

// Hidden reports whether the cut of an unseen finding lies below the inside
// floor wholly, and not just partly.
func (p *Plan) Hidden(f Finding) bool {
	return p.footprintReach(&p.Cuts[(f.Cuts[0]-1)%len(p.Cuts)]).high.height <= f.Wanted
}

// UnseenGroups returns the unseen findings in groups, lettered on from those
// of the plan.
func (p *Plan) UnseenGroups() []Group {
	known := len(p.Groups())
	all := *p
	all.Findings = append(all.Findings[:len(all.Findings):len(all.Findings)], p.Unseen()...)
	return all.Groups()[known:]
}
