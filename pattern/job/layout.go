package job

import (
	"fmt"

	"roundlay/pattern/glass"
)

// layout reads how the glass is divided. A band has to lie on every blank.
func (s section) layout(blanks []*glass.Blank) Layout {
	s.only(keysOf("layout"))
	var l Layout
	l.Repeats, _ = s.required("repeats").whole(1, maxRepeats)
	l.Bare = s.bare(l.Repeats)
	if i, ok := s.optional("match").word(Matches()); ok {
		l.Match = Match(i)
	}
	foot, top, ok := s.optional("band").pair(`a list of two heights, such as ["1/2", "2 3/4"]`)
	if !ok {
		return l
	}
	from, fromRead := foot.length(span{0, maxAcross, 12})
	to, toRead := top.length(span{0, maxAcross, 70})
	if !fromRead || !toRead {
		return l
	}
	if to < from+minBand {
		top.refuse(fmt.Sprintf("a height above the band's foot, %s", top.unit().FormatUp(from)), "a band runs from the foot up")
		return l
	}
	for _, b := range blanks {
		// A height copied from the blank's own may differ in its last digit.
		if to > b.Height()+1e-9 {
			top.refuse(fmt.Sprintf("a height on the glass %s, at most %s", quoted(b.Name), top.unit().FormatDown(b.Height())),
				top.otherUnit(func(mm float64) bool { return mm > from && mm <= b.Height() }))
		}
	}
	l.Band = &Band{from, to}
	return l
}
