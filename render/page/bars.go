package page

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// Bar is a check bar: a line of known length that a ruler is laid against, to
// see whether a page has printed true. It is ticked at both ends and at every
// step between.
type Bar struct {
	Up     bool // or across
	Length float64
	Steps  int
	Label  string
	// Under puts the ticks and the label below a bar across and to the left of
	// one up, instead of above and to the right.
	Under bool
}

// CheckBars returns the bars every page carries: 100 mm across and up, and for
// users of inches 4 in across and up as well. Drawn from the same place, the two
// sorts lie back to back.
func CheckBars(unit geometry.Unit) []Bar {
	bars := []Bar{
		{Length: 100, Steps: 10, Label: "100 mm"},
		{Length: 100, Steps: 10, Label: "100 mm", Up: true},
	}
	if unit == geometry.Inch {
		for _, up := range []bool{false, true} {
			bars = append(bars, Bar{Length: 4 * geometry.MillimetresPerInch, Steps: 8, Label: "4 in", Up: up, Under: true})
		}
	}
	return bars
}

// Sizes on paper, in millimetres except the label's.
const (
	barWidth      = 0.2 // of the pen: a fifth of what a ruler divides
	endTick       = 3.0
	stepTick      = 1.5
	barLabelSize  = 8.0 // points
	barLabelAbove = 2.1 // from the bar to the label's foot, clear of the step ticks
	barCapHeight  = 2.1 // of the label, rounded up
	BarDepth      = barLabelAbove + barCapHeight
)

// Marks draws the bar from a place on. The line has flat ends, so that it is exactly
// as long as it says; the ticks stand across its ends.
func (b Bar) Marks(at geometry.Point) []drawing.Mark {
	pen := drawing.Pen{Width: barWidth, Cap: drawing.FlatCap}
	line := func(x0, y0, x1, y1 float64) drawing.Mark {
		return drawing.Stroke{Points: []geometry.Point{b.Place(at, x0, y0), b.Place(at, x1, y1)}, Pen: pen}
	}
	marks := []drawing.Mark{line(0, 0, b.Length, 0)}
	for i := range b.Steps + 1 {
		x, tall := b.Length*float64(i)/float64(b.Steps), stepTick
		if i == 0 || i == b.Steps {
			tall = endTick
		}
		marks = append(marks, line(x, 0, x, tall))
	}
	return append(marks, b.label(at))
}

// Place returns where a point along the bar and beside it, on the side of its
// ticks, comes to lie.
func (b Bar) Place(at geometry.Point, along, beside float64) geometry.Point {
	if b.Under {
		beside = -beside
	}
	if b.Up {
		return geometry.Point{X: at.X + beside, Y: at.Y + along}
	}
	return geometry.Point{X: at.X + along, Y: at.Y + beside}
}

// label stands beside the middle of the bar, read from below or from the right.
func (b Bar) label(at geometry.Point) drawing.Text {
	foot := barLabelAbove
	text := drawing.Text{Words: b.Label, Size: barLabelSize, Align: drawing.Centre}
	// The words' foot is on the bar's side only where they rise away from it.
	if b.Up {
		text.Turn = math.Pi / 2
	}
	if b.Up != b.Under {
		foot += barCapHeight
	}
	text.At = b.Place(at, b.Length/2, foot)
	return text
}

// Box returns the box round the bar, its ticks and its label.
func (b Bar) Box(at geometry.Point) geometry.Box {
	return geometry.BoxOf(
		b.Place(at, -barWidth/2, -barWidth/2), b.Place(at, b.Length+barWidth/2, BarDepth))
}
