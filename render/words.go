package render

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/report"
)

// printWords is what a person at the printer needs.
const printWords = `Print at 100 % ("actual size", not "fit to page"), then measure both bars with a ruler: each must read 100 mm.`

// cautions go on every page that may lie at the bench.
const cautions = "Cutting glass can hurt. Keep wheel and glass wet: dry glass dust harms the lungs, and lead glass poisons. " +
	"Wear eye protection. Keep electricity away from water, behind a residual-current switch. Cut annealed glass only. " +
	"The depths are geometry, not a promise of strength. Local rules and qualified advice come before this paper."

// notes returns what is to be read beside the wrap: divider settings, the key
// to its lines, the findings, and the cautions where the pages' foot has no room.
func (a author) notes(f format) []note {
	notes := a.settings()
	notes = append(notes, a.findings()...)
	if _, ok := f.cautions(); !ok {
		notes = append(notes, note{words: cautions, size: 8})
	}
	return notes
}

func (a author) settings() []note {
	p, u := a.sheet.plan, a.sheet.plan.Job.Length
	notes := []note{{words: fmt.Sprintf("Dividers for %d equal parts", p.Repeats), size: 10, bold: true}}
	for _, c := range p.Chords {
		notes = append(notes, note{words: dividers(u, c), size: 9})
	}
	return append(notes, note{size: 9, words: "Step the mark round the foot first, then stand each base tick on its mark. " +
		"Heavy lines are the cuts to trace; grey is each groove at its true width; dashed lines bound the band; " +
		"hatched glass is too thin for the deepest cut; the chain lines are the middles of the repeats."})
}

func (a author) findings() []note {
	p := a.sheet.plan
	if len(p.Findings) == 0 {
		return []note{{words: "Checked: nothing is crowded, thin, shallow or out of place.", size: 9, bold: true}}
	}
	notes := []note{{words: "Findings, ringed on the wrap", size: 10, bold: true}}
	for _, g := range p.Groups() {
		notes = append(notes, note{mark: g.Letter, size: 9, words: fmt.Sprintf("%s: %s. Cure: %s.",
			g.Kind, report.Measured(p, g.Worst()), g.Worst().Cure.Text)})
	}
	return notes
}

// dividers says how to set dividers for a circle. The foot's is the one that is
// stepped round first, so it says where its last step falls.
func dividers(u geometry.Unit, c pattern.Chord) string {
	if c.Height > 0 {
		return fmt.Sprintf("%s, %s above the table, %s across: set %s.", c.Name, u.Text(c.Height), u.Text(2*c.Radius), u.Text(c.Chord))
	}
	gap := geometry.ClosingGap(c.Radius, u.Setting(c.Chord).Length, c.Parts)
	return fmt.Sprintf("foot, %s across: set %s; the last step will %s.", u.Text(2*c.Radius), u.Text(c.Chord), report.Closing(u, gap))
}
