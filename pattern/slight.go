package pattern

import "slices"

// What no hand holds, and no caliper shows. A cut that misses what is wanted by no more
// is noted, and is no finding.
const (
	slightLength = 0.005 // mm
	slightShare  = 0.005 // of a cut that joins another
	slightPart   = 0.02  // and never more than this part of what is wanted
)

// slight reports whether a finding misses what is wanted by no more than no hand holds.
// It is so of lands, of shares that are clear, and of what the wheel does: shoulders
// that go under, a bend, a mark that is too short. Glass left has no such allowance.
// The heights a cut keeps to have one of their own: see margins.
func (f Finding) slight() bool {
	miss, allowed := f.Wanted-f.Measured, slightLength
	switch f.Kind {
	case Crowded, Shallow:
	case Tight, Buried:
		miss = -miss
	default:
		return false
	}
	if f.Share {
		allowed = slightShare
	}
	return miss <= min(allowed, slightPart*f.Wanted)
}

// counts reports whether it is a finding, and no note.
func (f Finding) counts() bool { return !f.slight() }

// apartFrom returns of what is slight all that is no part of a trouble that is found
// anyway: of one kind on the same motifs.
func (p *Plan) apartFrom(found, slight []Finding) []Finding {
	if len(slight) == 0 {
		return nil
	}
	about := func(f Finding) Problem {
		motifs, _ := p.About(f)
		return Problem{Kind: f.Kind, Motifs: MotifPair(motifs)}
	}
	troubles := map[Problem]bool{}
	for _, f := range found {
		troubles[about(f)] = true
	}
	return slices.DeleteFunc(slight, func(f Finding) bool { return troubles[about(f)] })
}

// SlightGroups returns what is missed by no more than no hand holds, as Groups does the
// findings. Their letters are their own.
func (p *Plan) SlightGroups() []Group { return p.grouped(p.Slight) }
