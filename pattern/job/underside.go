package job

import (
	"fmt"

	"roundlay/pattern/glass"
)

// foot reads the flat underside of a blank and the punty mark's hollow in it.
func (s section) foot(b *glass.Blank) {
	field, foot := s.optional("base"), 2*b.Profile().Radius(0)
	if across, ok := field.length(span{minBase, maxAcross, 58}); ok {
		if across > foot+1e-9 {
			field.refuse("a diameter no wider than the foot, at most "+s.unit.FormatDown(foot),
				field.otherUnit(func(mm float64) bool { return mm >= minBase && mm <= foot }))
			return
		}
		b.BaseAcross = across
	}
	wide, deep, ok := s.optional("hollow").pair(`a list of two lengths, how far across and how deep, such as ["5/8", "1/16"]`)
	if !ok {
		return
	}
	across, acrossRead := wide.length(span{0.1, maxAcross, 16})
	depth, depthRead := deep.length(span{0.1, maxAcross, 1.5})
	base := 2 * b.BaseRadius()
	switch {
	case !acrossRead || !depthRead:
	case across >= base:
		wide.refuse("narrower than the underside, below "+s.unit.FormatDown(base), wide.otherUnit(func(mm float64) bool { return mm < base }))
	case b.FloorKnown() && depth >= b.Floor:
		deep.refuse(fmt.Sprintf("less deep than the floor is thick, below %s", s.unit.FormatDown(b.Floor)),
			deep.otherUnit(func(mm float64) bool { return mm < b.Floor }))
	default:
		b.Hollow = glass.Hollow{Across: across, Depth: depth}
	}
}
