package page

import (
	"roundlay/geometry"
	"roundlay/render/printing"
)

// Options is the paper that is printed on, and what its printer does.
type Options struct {
	Paper   Paper
	Margin  float64 // what the printer leaves white along the sheet's edges
	Printed Printed
}

// DefaultOptions returns the options that hold unless others are asked for.
func DefaultOptions(unit geometry.Unit) Options {
	name := "a4"
	if unit == geometry.Inch {
		name = "letter"
	}
	paper, _ := ParsePaper(name)
	return Options{Paper: paper, Margin: 6, Printed: TruePrinter()}
}

// Portrait returns the page that stands upright.
func (o Options) Portrait() Format {
	return o.format(min(o.Paper.Width, o.Paper.Height), max(o.Paper.Width, o.Paper.Height), false)
}

// Landscape returns the page that lies on its side; for a square sheet it is the same
// as Portrait.
func (o Options) Landscape() Format {
	return o.format(max(o.Paper.Width, o.Paper.Height), min(o.Paper.Width, o.Paper.Height), o.Paper.Width != o.Paper.Height)
}

// format returns a page of a size in the file: as large as the printer makes it.
func (o Options) format(width, height float64, landscape bool) Format {
	across, up := o.Printed.Scale(landscape)
	return Format{
		Width: width * across, Height: height * up, Margin: o.Margin * max(1, across, up),
		Foot: FootRoom, Landscape: landscape, Printed: o.Printed, Paper: o.Paper.Title(),
	}
}

// MaxDPI returns the largest whole number of dots to the inch with which a page can
// be drawn both portrait and landscape.
func (o Options) MaxDPI() float64 {
	upright, level := o.Portrait(), o.Landscape()
	return min(printing.MaxDPI(upright.Width, upright.Height), printing.MaxDPI(level.Width, level.Height))
}
