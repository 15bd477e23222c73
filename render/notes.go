package render

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// note is a paragraph of words on a page.
type note struct {
	words string
	size  float64 // in points
	bold  bool
	mark  string // hung in the margin, such as a finding's letter
	item  bool   // one of a list, which may be set as one paragraph
}

// runOn returns notes with each list as one paragraph.
func runOn(notes []note) []note {
	var out []note
	for i, n := range notes {
		if i > 0 && n.item && notes[i-1].item {
			out[len(out)-1].words += " " + n.words
		} else {
			out = append(out, n)
		}
	}
	return out
}

// Leading and hanging, as shares of the size.
const (
	leading = 1.28
	hang    = 1.6
)

// column sets notes one below another into a box, from its top down. It returns
// what it set, how far down that reaches, and the notes that found no room.
func column(notes []note, box geometry.Box, letters *lettering.Letters) (set []drawing.Mark, y float64, rest []note) {
	y = box.Max.Y
	width, _ := box.Size()
	for i, n := range notes {
		em := n.size * lettering.MillimetresPerPoint
		indent := 0.0
		if n.mark != "" {
			indent = hang * em
		}
		lines := fold(n, width-indent, letters)
		depth := em * leading * float64(len(lines))
		if n.bold && i+1 < len(notes) { // a heading does not stand without what it heads
			next := notes[i+1]
			depth += em*(leading-1) + float64(len(fold(next, width, letters)))*next.size*lettering.MillimetresPerPoint*leading
		}
		if y-depth < box.Min.Y {
			return set, y, notes[i:]
		}
		for j, line := range lines {
			y -= em * leading
			if j == 0 && n.mark != "" {
				set = append(set, drawing.Text{
					At: geometry.Point{X: box.Min.X, Y: y}, Words: n.mark, Size: n.size, Bold: true,
				})
			}
			set = append(set, drawing.Text{
				At: geometry.Point{X: box.Min.X + indent, Y: y}, Words: line, Size: n.size, Bold: n.bold,
			})
		}
		y -= em * (leading - 1)
	}
	return set, y, nil
}

// fold breaks a note into lines of a width, one at least.
func fold(n note, width float64, letters *lettering.Letters) []string {
	if lines := letters.Lines(n.words, n.size, n.bold, width); lines != nil {
		return lines
	}
	return []string{""}
}
