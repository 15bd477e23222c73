package report

import (
	"fmt"
	"math"

	"roundlay/pattern"
)

// PaperEnds says, a sentence each, where paper on a face begins or ends short of
// it, and why. The paper is what it is called.
func PaperEnds(p *pattern.Plan, f pattern.Face, paper string) []string {
	u := p.Job.Length
	var words []string
	low, high := f.Carries()
	if f.Lower.Why != pattern.Whole {
		words = append(words, fmt.Sprintf("%s begins %s above the table%s.", paper, u.Format(f.Low), why(p, f.Lower, low-f.Low, low, "below that")))
	}
	if f.Upper.Why != pattern.Whole {
		words = append(words, fmt.Sprintf("%s ends %s above the table, %s below the rim%s.",
			paper, u.Format(f.High), u.Format(f.Upper.Own-f.High), why(p, f.Upper, high-f.High, high, "above that")))
	}
	return words
}

// why says what ends paper: at a height opposite one of the outside, which is off
// it by so much.
func why(p *pattern.Plan, e pattern.Edge, off, outside float64, beyond string) string {
	if u := p.Job.Length; e.Why == pattern.Asked {
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

// paperNotes says of the outside paper where it ends short of the glass, and
// which cuts it can't carry for that.
func paperNotes(p *pattern.Plan, outside pattern.Face) []string {
	words := PaperEnds(p, outside, "the outside paper")
	if outside.Lower.Why != pattern.Whole {
		words[0] += " Its marks are stepped there (divide --at paper-edge)."
	}
	if off := len(p.Unseen(outside)); off > 0 {
		words = append(words, fmt.Sprintf("%s of %d lie off the outside paper, wholly or partly; wrap lists them.",
			count(off*p.Periods(), "cut"), len(p.Cuts)*p.Periods()))
	}
	return words
}
