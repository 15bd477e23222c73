package render

import "roundlay/geometry"

// format is a sheet of paper and what every page keeps room for: the printer's
// margin, words at the head, the bar across and the cautions at the foot, and
// the bar up at the left.
type format struct {
	width, height, margin float64
}

// Room kept on every page, in millimetres.
const (
	footRoom = 26.0
	sideRoom = 2*BarDepth + 3
	barsEnd  = 4*geometry.MillimetresPerInch + 1 // the longer bar
)

func (f format) standing() format {
	return format{min(f.width, f.height), max(f.width, f.height), f.margin}
}

func (f format) lying() format {
	return format{max(f.width, f.height), min(f.width, f.height), f.margin}
}

// head returns the room for the words at the head: they take more lines on a
// narrow page.
func (f format) head() float64 {
	if f.width < 180 {
		return 25
	}
	return 17
}

// cautions returns the box for the cautions, to the right of the bar across;
// ok is false on a page too narrow for it.
func (f format) cautions() (box geometry.Box, ok bool) {
	box = geometry.Box{
		Min: geometry.Point{X: f.bars().X + barsEnd + 3, Y: f.margin - 1},
		Max: geometry.Point{X: f.width - f.margin, Y: f.margin + footRoom - 1},
	}
	return box, box.Max.X-box.Min.X > 70
}

// bars returns the corner at which the bars begin.
func (f format) bars() geometry.Point {
	return geometry.Point{X: f.margin + BarDepth + 1, Y: f.margin + BarDepth + 1}
}

// room returns the part of the page between head and foot, down to the left of
// which the bar up stands.
func (f format) room() geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: f.margin, Y: f.margin + footRoom},
		Max: geometry.Point{X: f.width - f.margin, Y: f.height - f.margin - f.head()},
	}
}

// place returns the shift that puts a drawing's box on the page, as high as it
// goes and in the middle, clear of the bar up; ok is false where it does not fit.
func (f format) place(box geometry.Box) (shift geometry.Motion, ok bool) {
	room := f.room()
	width, height := box.Size()
	low := room.Max.Y - height
	if low < f.bars().Y+barsEnd+1 {
		room.Min.X += sideRoom
	}
	if low < room.Min.Y || width > room.Max.X-room.Min.X {
		return shift, false
	}
	left := room.Min.X + (room.Max.X-room.Min.X-width)/2
	return geometry.Motion{Cos: 1, X: left - box.Min.X, Y: low - box.Min.Y}, true
}
