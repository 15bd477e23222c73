package page

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Note is a paragraph of words on a page.
type Note struct {
	Words string
	Size  float64 // in points
	Bold  bool
	Mark  string // hung in the margin, such as a finding's letter
	Item  bool   // one of a list, which may be set as one paragraph
}

// RunOn returns notes with each list as one paragraph.
func RunOn(notes []Note) []Note {
	var out []Note
	for i, n := range notes {
		if i > 0 && n.Item && notes[i-1].Item {
			out[len(out)-1].Words += " " + n.Words
		} else {
			out = append(out, n)
		}
	}
	return out
}

// Between lines, and before what a mark hangs from, as shares of the size.
const (
	Leading = 1.28
	hang    = 1.6
)

// Column sets notes one below another into a box, from its top down. It returns
// what it set, how far down that reaches, and the notes that found no room.
func Column(notes []Note, box geometry.Box, letters *lettering.Letters) (set []drawing.Mark, y float64, rest []Note) {
	y = box.Max.Y
	width, _ := box.Size()
	for i, n := range notes {
		em := n.Size * lettering.MillimetresPerPoint
		indent := 0.0
		if n.Mark != "" {
			indent = hang * em
		}
		lines := n.fold(width-indent, letters)
		depth := em * Leading * float64(len(lines))
		if n.Bold && i+1 < len(notes) { // a heading does not stand without what it heads
			next := notes[i+1]
			depth += em*(Leading-1) + float64(len(next.fold(width, letters)))*next.Size*lettering.MillimetresPerPoint*Leading
		}
		if y-depth < box.Min.Y {
			return set, y, notes[i:]
		}
		for j, line := range lines {
			y -= em * Leading
			if j == 0 && n.Mark != "" {
				set = append(set, drawing.Text{
					At: geometry.Point{X: box.Min.X, Y: y}, Words: n.Mark, Size: n.Size, Bold: true,
				})
			}
			set = append(set, drawing.Text{
				At: geometry.Point{X: box.Min.X + indent, Y: y}, Words: line, Size: n.Size, Bold: n.Bold,
			})
		}
		y -= em * (Leading - 1)
	}
	return set, y, nil
}

// fold breaks a note into lines of a width, one at least.
func (n Note) fold(width float64, letters *lettering.Letters) []string {
	if lines := letters.Lines(n.Words, n.Size, n.Bold, width); lines != nil {
		return lines
	}
	return []string{""}
}
