package report

import (
	"fmt"

	"roundlay/pattern"
)

// Trouble says what a group of findings is in one sentence: of which motifs, what was
// measured, and what was wanted. The kind and the cure are not part of it.
func Trouble(p *pattern.Plan, g pattern.Group) string {
	words := Measured(p, g.Worst())
	if len(g.Motifs) > 0 {
		words = about(p, g) + ": " + words
	}
	return upper(words) + "."
}

// Place says where the worst finding of a group is.
func Place(p *pattern.Plan, g pattern.Group) string {
	if len(g.Worst().Cuts) == 0 {
		return "of the glass as a whole"
	}
	words := worstPlace(p, g)
	if p.Periods() > 1 {
		words += fmt.Sprintf("; the same %d times round the %s", p.Periods(), body(p))
	}
	return words
}

// worstPlace is the repeat and the height of a group's worst finding.
func worstPlace(p *pattern.Plan, g pattern.Group) string {
	worst := g.Worst()
	return fmt.Sprintf("worst in repeat %d%s, %s %s", worst.Repeat, ofFace(p), p.Job.Length.Format(worst.Height), p.From())
}

// Notes lists, as sentences, what check says of a plan that is no finding: doubted readings,
// misses too small to be findings, how its paper is made, marks that are too short for their
// depth, and numbers found for "most".
func Notes(p *pattern.Plan) []string {
	all := []string{}
	for _, words := range allNotes(p) {
		all = append(all, upper(words))
	}
	all = append(append(all, counted(p)...), calibrated(p)...)
	for _, face := range p.Faces() {
		all = append(all, shortMarks(face)...)
	}
	return all
}

// Short says whether a plan clears, in a sentence.
func Short(p *pattern.Plan) string {
	switch n := p.Lettered(); n {
	case 0:
		return Verdict("Clear", p)
	case 1:
		return "Not clear: 1 finding."
	default:
		return fmt.Sprintf("Not clear: %d findings.", n)
	}
}
