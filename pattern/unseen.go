package pattern

// Unseen returns a finding for each cut that reaches below or above the paper on a face.
// Measured is the height that the cut reaches, Wanted the height where the paper ends.
func (p *Plan) Unseen(f Face) []Finding {
	const stray = 0.01 // mm: rounding
	low, high := f.Carries()
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		reach := p.footprintReach(c)
		at, wanted, end := reach.low, low, f.Lower
		if at.height >= low-stray {
			at, wanted, end = reach.high, high, f.Upper
			if at.height <= high+stray {
				continue
			}
		}
		found = append(found, Finding{
			Kind: Unseen, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.theta, Height: at.height,
			Measured: at.height, Wanted: wanted, Cure: &Cure{Advice: f.advice(end)},
		})
	}
	return found
}

// advice says what to do about cuts beyond an edge of the paper.
func (f Face) advice(end Edge) Advice {
	switch {
	case end.Why == AsAsked:
		return MorePaper
	case f.inner != nil:
		return Patches
	}
	return ByHand
}

// Hidden reports whether the cut of an unseen finding is off the paper as a whole.
func (p *Plan) Hidden(f Finding) bool {
	reach := p.footprintReach(&p.Cuts[p.inPeriod(f.Cuts[0])])
	if f.Measured > f.Wanted {
		return reach.low.height >= f.Wanted
	}
	return reach.high.height <= f.Wanted
}

// UnseenGroups returns the unseen findings of paper on a face in groups. Their letters
// continue those of the plan's groups, and of its base's.
func (p *Plan) UnseenGroups(f Face) []Group {
	known := len(p.Groups())
	all := *p
	all.Findings = append(all.Findings[:len(all.Findings):len(all.Findings)], p.Unseen(f)...)
	groups := all.Groups()[known:]
	if p.Base != nil {
		for i := range groups {
			groups[i].Letter = letter(p.Base.letter + len(p.Base.Groups()) + i)
		}
	}
	return groups
}
