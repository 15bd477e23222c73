package render

import (
	"fmt"
	"math"

	"roundlay/geometry"
)

// format is a page as it comes out of the printer, and what it keeps room for:
// the printer's margin, words at the head, the bar across and the cautions at
// the foot, and the bar up at the left.
type format struct {
	width, height, margin float64
	head                  float64 // the room for the words at the head
	printed               Printed
}

// Room kept on every page, in millimetres.
const (
	footRoom = 26.0
	sideRoom = 2*BarDepth + 3
	barsEnd  = 4*geometry.MillimetresPerInch + 1 // the longer bar
	upStart  = BarDepth + 0.5                    // the bar up stands clear of the bar across: each ends where it seems to
	upEnd    = upStart + barsEnd
)

// narrow reports whether the page has no room beside the bar across.
func (f format) narrow() bool { return f.width-f.margin-(f.bars().X+barsEnd+3) < 70 }

// cautions returns the box for the cautions: to the right of the bar across, or
// on a narrow page above it.
func (f format) cautions() geometry.Box {
	foot := f.bars()
	if f.narrow() {
		return geometry.Box{
			Min: geometry.Point{X: foot.X + BarDepth + 2, Y: foot.Y + BarDepth + 1},
			Max: geometry.Point{X: f.width - f.margin, Y: f.margin + footRoom - 1},
		}
	}
	return geometry.Box{
		Min: geometry.Point{X: foot.X + barsEnd + 3, Y: f.margin - 1},
		Max: geometry.Point{X: f.width - f.margin, Y: f.margin + footRoom - 1},
	}
}

// bars returns the corner at which the bars begin.
func (f format) bars() geometry.Point {
	return geometry.Point{X: f.margin + BarDepth + 1, Y: f.margin + BarDepth + 1}
}

// bar returns where a check bar begins.
func (f format) bar(b Bar) geometry.Point {
	at := f.bars()
	if b.Up {
		at.Y += upStart
	}
	return at
}

// room returns the part of the page between head and foot, down to the left of
// which the bar up stands.
func (f format) room() geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: f.margin, Y: f.margin + footRoom},
		Max: geometry.Point{X: f.width - f.margin, Y: f.height - f.margin - f.head},
	}
}

// beside returns the part of the room that is clear of the bar up.
func (f format) beside() geometry.Box {
	room := f.room()
	room.Min.X += sideRoom
	return room
}

// above returns the part of the room that is above the bar up.
func (f format) above() geometry.Box {
	room := f.room()
	room.Min.Y = max(room.Min.Y, f.bars().Y+upEnd+1)
	return room
}

// barsReach returns how far the bars reach into the page, ahead of the margin.
func (a author) barsReach() float64 {
	longest := 0.0
	for _, b := range CheckBars(a.sheet.plan.Job.Length) {
		longest = max(longest, b.Length)
	}
	return BarDepth + 1 + upStart + longest + barWidth
}

// roomForBars returns an error if the bars would reach into the page's margin.
func (a author) roomForBars(f format) error {
	if least := a.barsReach() + 2*f.margin; min(f.width, f.height) < least {
		return fmt.Errorf("--paper: read %q, which with a margin of %s has no room for the check bars; accepted: %s or more each way, or a smaller --margin",
			a.options.Paper.Name, a.sheet.plan.Job.Length.Text(a.options.Margin), a.sheet.plan.Job.Length.Text(math.Ceil(least)))
	}
	return nil
}

// place returns the shift that puts a drawing's box on the page, as high as it
// goes and in the middle, clear of the bar up; ok is false where it does not fit.
func (f format) place(box geometry.Box) (shift geometry.Motion, ok bool) {
	width, height := box.Size()
	for _, room := range []geometry.Box{f.above(), f.beside()} {
		wide, tall := room.Size()
		if width <= wide && height <= tall {
			left := room.Min.X + (wide-width)/2
			return geometry.Motion{Cos: 1, X: left - box.Min.X, Y: room.Max.Y - height - box.Min.Y}, true
		}
	}
	return shift, false
}
