package wrap

import (
	"fmt"
	"math"
	"strings"

	"roundlay/pattern"
	"roundlay/render/page"
	"roundlay/render/report"
)

// unseen lists the cuts that the paper can't carry.
func (a composer) unseen() []page.Note {
	p, face := a.sheet.plan, a.sheet.face
	groups := p.UnseenGroups(face)
	if len(groups) == 0 {
		return nil
	}
	u := p.Job.Length
	low, high := face.Carries()
	floor := u.Format(p.Blank.Floor) + " above the table"
	if opposite := u.Format(low); opposite != u.Format(p.Blank.Floor) {
		floor += " and opposite " + opposite + " outside"
	}
	heading := fmt.Sprintf("Below the inside floor, %s, this paper carries nothing. Print what lies there as patches (--side patches):", floor)
	if a.sheet.side != Inside || face.Lower.Why != pattern.WholeGlass || face.Upper.Why != pattern.WholeGlass {
		heading = fmt.Sprintf("This paper carries what lies between %s and %s above the table. Not on it:", u.Format(low), u.Format(high))
	}
	notes := []page.Note{{Size: 9, Bold: true, Words: heading}}
	for _, g := range groups {
		notes = append(notes, page.Note{Size: 9, Mark: g.Letter, Words: a.unseenWords(g)})
	}
	return notes
}

// unseenWords names the cuts of a group: those wholly off the paper, and those
// partly off it.
func (a composer) unseenWords(g pattern.Group) string {
	p := a.sheet.plan
	var wholly, partly []int
	lowest, highest := math.Inf(1), math.Inf(-1)
	for _, f := range g.Findings {
		if f.Measured < f.Wanted {
			lowest = min(lowest, f.Measured)
		} else {
			highest = max(highest, f.Measured)
		}
		if p.Hidden(f) {
			wholly = append(wholly, f.Cuts[0])
		} else {
			partly = append(partly, f.Cuts[0])
		}
	}
	var which []string
	if len(wholly) > 0 {
		which = append(which, "wholly cuts "+report.Numbers(wholly))
	}
	if len(partly) > 0 {
		which = append(which, "partly cuts "+report.Numbers(partly))
	}
	var reach []string
	if !math.IsInf(lowest, 0) {
		reach = append(reach, "down to "+p.Job.Length.Format(lowest))
	}
	if !math.IsInf(highest, 0) {
		reach = append(reach, "up to "+p.Job.Length.Format(highest))
	}
	m := g.Motifs[0]
	words := fmt.Sprintf("unseen: motif %d (%s), %s: %s, %s above the table",
		m+1, p.Job.Motifs[m].Called(), strings.Join(g.Parts, " and "), strings.Join(which, ", "), strings.Join(reach, " and "))
	if p.Periods() > 1 {
		words += fmt.Sprintf("; the same %d times round the glass", p.Periods())
	}
	return words + "."
}
