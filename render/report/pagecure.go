package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// PageUncured says on the page why a finding has no way to clear it, or what to do where no
// change is wanted; "" where there are ways.
func PageUncured(p *pattern.Plan, f pattern.Finding) string {
	if f.Cure == nil || len(Ways(p, f)) > 0 {
		return ""
	}
	switch f.Cure.Advice {
	case pattern.MorePaper:
		return "Give it more paper: Paper, under Glass."
	case pattern.Patches:
		return "Print them as patches: Side, under Paper."
	case pattern.ByHand:
		return "Mark them by hand."
	}
	words := uncured(p, f.Cure)
	words = strings.Replace(words, " (fit tries several together)", "", 1)
	return upper(words) + "."
}

// pageAlternative is alternative for the page.
func pageAlternative(p *pattern.Plan, a pattern.Alternative) string {
	if ofWheel(a) {
		return fmt.Sprintf("A wheel up to %s across", p.Job.Length.FormatDown(a.Diameter))
	}
	words := ChangeWords(p, a.Changes)
	if a.Changes[0].Motif == job.OfLimits {
		words += staying(p.Job.Length, a)
	}
	return words + bringing(a)
}
