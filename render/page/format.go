package page

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/printing"
)

// Format is a page as it comes out of the printer, and what it keeps room for:
// the printer's margin, words at the head, the bar across and the cautions at
// the foot, and the bar up at the left.
type Format struct {
	Width, Height, Margin float64
	Head                  float64 // the room for the words at the head
	Foot                  float64 // that for the bar across and the cautions
	Landscape             bool    // whether it is wider than high, as the paper lies
	Printed               Printed
	Paper                 string // the name of the sheet it is printed on; empty if that has none
}

// Room kept on every page, in millimetres.
const (
	FootRoom = 26.0 // of a page that is read at a desk
	SideRoom = 2*BarDepth + 3
	barsEnd  = 4*geometry.MillimetresPerInch + 1 // the longer bar
	upStart  = BarDepth + 0.5                    // keeps the bars apart, so that each ends where it seems to
	UpEnd    = upStart + barsEnd                 // from the corner of the bars to above the bar up
)

// narrow reports whether the page has no room beside the bar across.
func (f Format) narrow() bool { return f.Width-f.Margin-(f.corner().X+barsEnd+3) < 70 }

// cautions returns the box for the cautions: to the right of the bar across, or
// on a narrow page above it.
func (f Format) cautions() geometry.Box {
	foot := f.corner()
	if f.narrow() {
		return geometry.Box{
			Min: geometry.Point{X: foot.X + BarDepth + 2, Y: foot.Y + BarDepth + 1},
			Max: geometry.Point{X: f.Width - f.Margin, Y: f.Margin + FootRoom - 1},
		}
	}
	return geometry.Box{
		Min: geometry.Point{X: foot.X + barsEnd + 3, Y: f.Margin - 1},
		Max: geometry.Point{X: f.Width - f.Margin, Y: f.Margin + FootRoom - 1},
	}
}

// corner returns the corner at which the bars begin.
func (f Format) corner() geometry.Point {
	return geometry.Point{X: f.Margin + BarDepth + 1, Y: f.Margin + BarDepth + 1}
}

// Bar returns where a check bar begins.
func (f Format) Bar(b Bar) geometry.Point {
	at := f.corner()
	if b.Up {
		at.Y += upStart
	}
	return at
}

// Room returns the part of the page between head and foot. The bar up stands in its
// lower left.
func (f Format) Room() geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: f.Margin, Y: f.Margin + f.Foot},
		Max: geometry.Point{X: f.Width - f.Margin, Y: f.Height - f.Margin - f.Head},
	}
}

// Beside returns the part of the room that is clear of the bar up.
func (f Format) Beside() geometry.Box {
	room := f.Room()
	room.Min.X += SideRoom
	return room
}

// Above returns the part of the room that is above the bar up.
func (f Format) Above() geometry.Box {
	room := f.Room()
	room.Min.Y = max(room.Min.Y, f.corner().Y+UpEnd+1)
	return room
}

// Place returns the shift that puts a drawing's box at the top middle of the page,
// clear of the bar up; ok is false where it does not fit.
func (f Format) Place(box geometry.Box) (shift geometry.Motion, ok bool) {
	width, height := box.Size()
	for _, room := range []geometry.Box{f.Above(), f.Beside()} {
		wide, tall := room.Size()
		if width <= wide && height <= tall {
			left := room.Min.X + (wide-width)/2
			return geometry.Motion{Cos: 1, X: left - box.Min.X, Y: room.Max.Y - height - box.Min.Y}, true
		}
	}
	return shift, false
}

// Correct turns a drawing at its size on paper into a page of the file: places are
// moved by as much as the printer will move them back.
func (f Format) Correct(d drawing.Drawing, label string) printing.Page {
	across, up := f.Printed.Scale(f.Landscape)
	if !f.Printed.True() {
		d = d.Stretched(1/across, 1/up)
	}
	return printing.Page{Width: f.Width / across, Height: f.Height / up, Label: label, Drawing: d, Titles: layerTitles()}
}

// layerTitles says what the layers of a page hold.
func layerTitles() map[drawing.Layer]string {
	return map[drawing.Layer]string{
		drawing.Paper:      "Paper: where it is cut out",
		drawing.Footprints: "Footprints: each groove at its true width",
		drawing.Marks:      "Marks: the band, the repeats and how the paper lies",
		drawing.Cuts:       "Cuts: the lines to trace",
		drawing.Findings:   "Findings: what the check found",
		drawing.CheckBars:  "Check bars",
		drawing.Notes:      "Notes: words and numbers",
	}
}
