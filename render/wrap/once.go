package wrap

import (
	"fmt"

	"roundlay/pattern"
)

// dividing returns the title of the settings, or says that none are needed.
func (a composer) dividing() string {
	if p := a.sheet.plan; len(p.Chords) > 0 {
		return fmt.Sprintf("Dividers for %d equal parts", p.Repeats)
	}
	return "One repeat: there is nothing to divide"
}

// markingOnce says where to make the one mark of a design that goes round once,
// and how the paper meets it.
func (a composer) markingOnce() string {
	switch {
	case a.sheet.side == Inside:
		return "Make one mark at the foot first, then turn the paper until the middle line stands over it."
	case a.sheet.face.Lower.Why == pattern.WholeGlass:
		return "Make one mark at the foot first, then stand the base tick on it."
	}
	return fmt.Sprintf("Draw a line round the glass %s above the table: hold the pencil on a block and turn the glass past it. "+
		"Make one mark on it, then stand the paper's lower edge on the line, the tick on the mark.",
		a.sheet.plan.Job.Length.Format(a.sheet.face.Low))
}
