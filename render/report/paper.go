package report

import (
	"fmt"
	"math"

	"roundlay/pattern"
)

// PaperEnds says in a sentence each where the paper of a face begins or ends short
// of it, and why. The sentences call it by the name in paper.
func PaperEnds(p *pattern.Plan, f pattern.Face, paper string) []string {
	u := p.Job.Length
	var words []string
	low, high := f.Carries()
	if f.Lower.Why != pattern.WholeGlass {
		words = append(words, fmt.Sprintf("%s begins %s above the table%s.", paper, u.Format(f.Low), why(p, f.Lower, low-f.Low, low, "below that")))
	}
	if f.Upper.Why != pattern.WholeGlass {
		words = append(words, fmt.Sprintf("%s ends %s above the table, %s below the rim%s.",
			paper, u.Format(f.High), u.Format(f.Upper.Own-f.High), why(p, f.Upper, high-f.High, high, "above that")))
	}
	return words
}

// why says what ends the paper at an edge. outside is the height opposite it on the
// outside, off is how far the two differ, and beyond is "below that" or "above that".
func why(p *pattern.Plan, e pattern.Edge, off, outside float64, beyond string) string {
	if u := p.Job.Length; e.Why == pattern.AsAsked {
		if math.Abs(off) > u.Step()/2 {
			return fmt.Sprintf(", opposite %s outside, as the job asks", u.Format(outside))
		}
		return ", as the job asks"
	}
	if e.Off == 0 {
		return fmt.Sprintf(": %s the glass bends too much for its gores to lie on it", beyond)
	}
	than := "wider"
	if e.Off < 0 {
		than = "narrower"
	}
	return fmt.Sprintf(": %s the glass is %s than paper that lies on the band, by up to %s in radius",
		beyond, than, p.Job.Length.FormatDecimal(math.Abs(e.Off)))
}

// paperNotes says where the outside paper ends short of the glass, and which cuts
// it therefore can't carry.
func paperNotes(p *pattern.Plan, outside pattern.Face) []string {
	words := PaperEnds(p, outside, "the outside paper")
	if outside.Lower.Why != pattern.WholeGlass {
		words[0] += " Its marks are stepped there (divide --at paper-edge)."
	}
	if off := len(p.Unseen(outside)); off > 0 {
		words = append(words, fmt.Sprintf("%s of %d lie off the outside paper, wholly or partly; wrap lists them.",
			count(off*p.Periods(), "cut"), len(p.Cuts)*p.Periods()))
	}
	return words
}
