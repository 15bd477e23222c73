package render

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/render/report"
)

// printWords is what a person at the printer needs.
const printWords = `Print at 100 % ("actual size", not "fit to page"), then measure both bars with a ruler: each must read 100 mm.`

// cautions go on every page that may lie at the bench.
const cautions = "Cutting glass can hurt. Keep wheel and glass wet: dry glass dust harms the lungs, and lead glass poisons. " +
	"Wear eye protection. Keep electricity away from water, behind a residual-current switch. Cut annealed glass only. " +
	"The depths are geometry, not a promise of strength. Local rules and qualified advice come before this paper."

// notes returns what is to be read beside the wrap: divider settings, the key
// to its lines, and the findings.
func (a author) notes() []note {
	p, u := a.sheet.plan, a.sheet.plan.Job.Length
	notes := []note{{words: fmt.Sprintf("Dividers for %d equal parts", p.Repeats), size: 10, bold: true}}
	for _, c := range p.Chords {
		words := fmt.Sprintf("%s (%s up, %s across): set %s.", c.Name, u.Text(c.Height), u.Text(2*c.Radius), u.Text(c.Chord))
		if gap := geometry.ClosingGap(c.Radius, u.Setting(c.Chord).Length, c.Parts); c.Height == 0 {
			words += " Stepped round, the last step will " + report.Closing(u, gap) + "."
		}
		notes = append(notes, note{words: words, size: 9})
	}
	notes = append(notes, note{size: 9, words: "Step the mark round the foot first, then stand each base tick on its mark. " +
		"Heavy lines are the cuts to trace; grey is each groove at its true width; dashed lines bound the band; " +
		"hatched glass is too thin for the deepest cut; the chain lines are the middles of the repeats."})
	if len(p.Findings) == 0 {
		return append(notes, note{words: "Checked: nothing is crowded, thin, shallow or out of place.", size: 9, bold: true})
	}
	notes = append(notes, note{words: "Findings, ringed on the wrap", size: 10, bold: true})
	for _, g := range p.Groups() {
		notes = append(notes, note{mark: g.Letter, size: 9, words: fmt.Sprintf("%s: %s. Cure: %s.",
			g.Kind, report.Measured(p, g.Worst()), g.Worst().Cure.Text)})
	}
	return notes
}
