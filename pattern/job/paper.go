package job

import (
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/pattern/glass"
)

// minPaper is the smallest height of paper that a job can ask for, in millimetres:
// less can't be handled.
const minPaper = 5.0

// paper reads the heights between which a blank is to have paper.
func (s section) paper(b *glass.Blank) {
	foot, rim, ok := s.optional("paper").pair(`a list of two heights, each a length, "table" or "rim", such as ` + s.paperExample())
	if !ok {
		return
	}
	low, lowRead := foot.height(b)
	high, highRead := rim.height(b)
	if !lowRead || !highRead {
		return
	}
	// A height copied from the blank's own may differ in its last digit.
	const touch = 1e-9
	least := min(minPaper, b.Height())
	switch {
	case low > b.Height()-least+touch:
		foot.refuse("a height below the rim, "+s.unit.FormatDown(b.Height()-least)+" at most", "the paper's lower edge comes first")
	case high > b.Height()+touch:
		rim.refuse(fmt.Sprintf("a height on the glass, %s at most, or %q", s.unit.FormatDown(b.Height()), rimWord), "")
	case high < low+least-touch:
		rim.refuse("a height above the paper's lower edge, "+s.unit.FormatUp(low+least)+" at least", "paper runs from the foot up")
	default:
		b.Paper = &glass.Extent{Low: low, High: min(high, b.Height())}
	}
}

// Words for the heights at which a glass begins and ends.
const tableWord, footWord, rimWord = "table", "foot", "rim"

func (s section) paperExample() string {
	return fmt.Sprintf("[%q, %q]", example(60, s.unit), rimWord)
}

// height reads a height above the table of a blank, or a word for one.
func (f field) height(b *glass.Blank) (float64, bool) {
	if f.value.kind == unstable.String {
		switch f.value.text {
		case tableWord, footWord:
			return 0, true
		case rimWord:
			return b.Height(), true
		}
	}
	within := span{0, maxAcross, 60}
	mm, hint := f.millimetres()
	if hint != "" || !within.holds(mm) {
		f.refuse(fmt.Sprintf("%q, %q, or %s", tableWord, rimWord, within.lengths(f.in.unit)), hint)
		return 0, false
	}
	return mm, true
}
