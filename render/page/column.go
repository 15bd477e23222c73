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

// Column sets notes one below another. Its lengths are shares of a note's size.
type Column struct {
	Letters *lettering.Letters
	Leading float64     // from line to line; between notes there is half as much again of what exceeds 1
	Hang    float64     // how far words stand in from their mark
	Ink     drawing.Ink // of marks
}

// Leading is the distance between the lines of words that are read at a desk, as
// a share of their size.
const Leading = 1.28

// NewColumn returns the column of a page that is read at a desk.
func NewColumn(letters *lettering.Letters) Column {
	return Column{Letters: letters, Leading: Leading, Hang: 1.6}
}

// Sizes of words that are read at arm's length beside running water.
const (
	BenchSize    = 12.0 // in points: nothing there is smaller
	BenchLeading = 1.3
	BenchRise    = 0.25 // a line's foot above the end of its leading, as a share of that: room for its tails
	benchHang    = 6.5  // mm
)

// NewBenchColumn returns the column of a page that is read at the bench.
func NewBenchColumn(letters *lettering.Letters) Column {
	return Column{Letters: letters, Leading: BenchLeading, Hang: benchHang / (BenchSize * lettering.MillimetresPerPoint)}
}

// Lines returns the lines of a note in a width, each as the words on it: they
// stand on 0, and begin at the note's left edge.
func (c Column) Lines(n Note, width float64) [][]drawing.Text {
	indent := 0.0
	if n.Mark != "" {
		indent = c.Hang * em(n)
	}
	var lines [][]drawing.Text
	for i, words := range c.fold(n, width-indent) {
		var line []drawing.Text
		if i == 0 && n.Mark != "" {
			line = append(line, drawing.Text{Words: n.Mark, Size: n.Size, Bold: true, Ink: c.Ink})
		}
		lines = append(lines, append(line, drawing.Text{
			At: geometry.Point{X: indent}, Words: words, Size: n.Size, Bold: n.Bold,
		}))
	}
	return lines
}

// Set sets notes into a box, from its top down. It returns the marks, how far down
// they reach, and the notes that found no room.
func (c Column) Set(notes []Note, box geometry.Box) (set []drawing.Mark, y float64, rest []Note) {
	y = box.Max.Y
	width, _ := box.Size()
	for i, n := range notes {
		lines := c.Lines(n, width)
		depth := em(n) * c.Leading * float64(len(lines))
		if n.Bold && i+1 < len(notes) { // a heading stays with what it heads
			next := notes[i+1]
			depth += em(n)*(c.Leading-1) + float64(len(c.fold(next, width)))*em(next)*c.Leading
		}
		if y-depth < box.Min.Y {
			return set, y, notes[i:]
		}
		for _, line := range lines {
			y -= em(n) * c.Leading
			for _, text := range line {
				text.At.X += box.Min.X
				text.At.Y += y
				set = append(set, text)
			}
		}
		y -= em(n) * (c.Leading - 1)
	}
	return set, y, nil
}

// Depth returns how far down notes reach when they are set in a width.
func (c Column) Depth(notes []Note, width float64) float64 {
	depth := 0.0
	for _, n := range notes {
		depth += em(n) * (c.Leading*float64(len(c.fold(n, width))) + c.Leading - 1)
	}
	return depth
}

// em returns a note's size in millimetres.
func em(n Note) float64 { return n.Size * lettering.MillimetresPerPoint }

// fold breaks a note into lines of a width, at least one.
func (c Column) fold(n Note, width float64) []string {
	if lines := c.Letters.Lines(n.Words, n.Size, n.Bold, width); lines != nil {
		return lines
	}
	return []string{""}
}
