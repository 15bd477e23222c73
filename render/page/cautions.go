package page

import "strings"

// cautions go on every page that is printed, for it may be used at the bench; the short
// ones where there is little room.
const (
	cautions = "Cutting glass can hurt. Keep wheel and glass wet: dry glass dust harms the lungs, and lead glass poisons. " +
		"Wear eye protection. Keep electricity away from water, behind a residual-current switch. Cut annealed glass only. " +
		"The depths are geometry, not a promise of strength. Local rules and qualified advice come before this paper."
	cautionsShort = "Keep wheel and glass wet; dust harms the lungs, lead glass poisons. Wear eye protection. " +
		"Keep electricity off the water. Cut annealed glass only. Depths are geometry, no promise of strength."
)

// CautionSentences returns the cautions one by one, for a screen.
func CautionSentences() []string {
	return strings.Split(strings.ReplaceAll(cautions, ". ", ".\n"), "\n")
}

// Cautions returns them as a note, for a printed page without a frame's foot.
func Cautions() Note { return Note{Words: cautions, Size: 7.5} }

// CautionLine returns the short ones on one line, for what is read at the bench without
// being printed.
func CautionLine() string { return cautionsShort }
