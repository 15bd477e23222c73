package wrap

import (
	"fmt"
	"slices"

	"roundlay/pattern"
	"roundlay/render/page"
	"roundlay/render/report"
)

func (a composer) findings() []page.Note {
	p := a.sheet.plan
	var doubted []page.Note
	for _, words := range report.Remeasure(p) {
		doubted = append(doubted, page.Note{Words: words, Size: 9, Bold: true})
	}
	if len(p.Findings) == 0 {
		if b := p.Base; b != nil && !b.Clear() {
			return append(doubted, page.Note{Words: fmt.Sprintf("Not clear: the base has findings (%d), which its own paper lists.", len(b.Groups())), Size: 9, Bold: true})
		}
		if len(doubted) > 0 {
			return doubted
		}
		return []page.Note{{Words: report.Verdict("Checked", p), Size: 9, Bold: true}}
	}
	var notes []page.Note
	ringed := 0
	told, more := report.Listed(p)
	for _, g := range told {
		words := fmt.Sprintf("%s: %s.", g.Kind, report.Measured(p, g.Worst()))
		if cure := report.Cure(p, g.Worst()); cure != "" {
			words += " Cure: " + cure + "."
		}
		switch why := a.sheet.unringed(g); {
		case why == "":
			ringed++
			words += a.sheet.sharing(g)
		case !a.options.NoRings:
			words += " Not ringed: " + why + "."
		}
		notes = append(notes, page.Note{Mark: g.Letter, Size: 9, Words: words})
	}
	heading := "Findings, ringed on the paper"
	switch {
	case ringed == 0:
		heading = "Findings"
	case ringed < len(notes):
		heading = "Findings, ringed on the paper where they have a place on it"
	}
	if a.sheet.worstRinged && ringed > 0 {
		notes = append(notes, page.Note{Size: 9, Words: "Too many rings to draw. Only the worst of each letter is ringed; roundlay check lists them all."})
	}
	if more != "" {
		notes = append(notes, page.Note{Size: 9, Words: more})
	}
	return slices.Concat(doubted, []page.Note{{Words: heading, Size: 10, Bold: true}}, notes)
}

// sharing says in how many places a group is found in what recurs round the glass, where there
// are fewer rings of it; "" where each has its own.
func (s *facePaper) sharing(g pattern.Group) string {
	places, rings := len(s.ringable(g)), 0
	for _, r := range s.rings {
		if slices.Contains(r.letters, g.Letter) {
			rings++
		}
	}
	switch {
	case places <= rings:
		return ""
	case rings == 1:
		return fmt.Sprintf(" %d places, of which the ring is one.", places)
	}
	return fmt.Sprintf(" %d places in %d rings.", places, rings)
}

// unringed says why a group of findings has no ring on the paper, "" if it has one.
func (s *facePaper) unringed(g pattern.Group) string {
	for _, r := range s.rings {
		if slices.Contains(r.letters, g.Letter) {
			return ""
		}
	}
	if !placed(g.Worst()) {
		return "it is of the glass as a whole"
	}
	return "it lies off this paper"
}

// letterRuns writes letters of findings, a run of them as its first and last.
func letterRuns(groups []pattern.Group, on func(letter string) bool) string {
	var which []int
	for i, g := range groups {
		if on(g.Letter) {
			which = append(which, i)
		}
	}
	return report.Runs(which, func(i, before int) bool { return i == before+1 }, func(i int) string { return groups[i].Letter })
}
