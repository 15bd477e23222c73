package report

import (
	"fmt"
	"math"

	"roundlay/motifs"
	"roundlay/pattern"
)

// made says of motifs that were made of a drawing what was left out or changed.
func made(p *pattern.Plan) []string {
	var words []string
	for i, m := range p.Job.Motifs {
		for _, note := range m.Kind.Notes {
			words = append(words, fmt.Sprintf("motif %d (%s): %s%s.", i+1, m.Called(), note.Text, onGlass(p, i, note)))
		}
	}
	return words
}

// onGlass adds to a note the length that it tells, as it is on the plan's blank.
func onGlass(p *pattern.Plan, motif int, note motifs.Note) string {
	if note.Share == 0 {
		return ""
	}
	for _, face := range p.Faces() {
		if p.Job.Motifs[motif].Face == face.Face {
			width, height := face.MotifSize(motif)
			return ": " + p.Job.Length.FormatDecimalUp(note.Share*largestSide(width, height, p.Job.Motifs[motif].Kind.Aspect)) + " on the glass"
		}
	}
	return ""
}

// largestSide returns how long the longer side of a box of so many times its height in width
// becomes where the box is given another size. A box that is stretched is stretched in one
// direction more than in the other; the greater of the two counts.
func largestSide(width, height, aspect float64) float64 {
	if aspect >= 1 {
		return math.Max(width, height*aspect)
	}
	return math.Max(width/aspect, height)
}
