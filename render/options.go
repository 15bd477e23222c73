package render

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/render/printing"
)

// Side is where paper goes on the glass.
type Side int

// Paper goes round the outside, round the inside, or on the outside in patches,
// one a repeat.
const (
	Outside Side = iota
	Inside
	Patches
)

// Sides lists the words for Side, in order.
func Sides() []string { return []string{"outside", "inside", "patches"} }

func (s Side) String() string { return Sides()[s] }

// ParseSide reads the word for a side.
func ParseSide(text string) (Side, error) {
	i, err := oneOf(text, Sides())
	return Side(i), err
}

// Seam is how the two ends of a wrap meet.
type Seam int

// One end is taped on a tab under the other, or they meet edge to edge.
const (
	Tab Seam = iota
	Butt
)

// Seams lists the words for Seam, in order.
func Seams() []string { return []string{"tab", "butt"} }

// ParseSeam reads the word for a seam.
func ParseSeam(text string) (Seam, error) {
	i, err := oneOf(text, Seams())
	return Seam(i), err
}

func oneOf(text string, words []string) (int, error) {
	if i := slices.Index(words, strings.ToLower(strings.TrimSpace(text))); i >= 0 {
		return i, nil
	}
	return 0, fmt.Errorf("read %q; accepted: %s", text, strings.Join(words, ", "))
}

// Options is how paper is to be made and printed.
type Options struct {
	Paper     Paper
	Margin    float64 // what the printer leaves white along the sheet's edges
	Printed   Printed
	Side      Side
	Thickness float64 // of the paper
	Seam      Seam
	SeamAt    int // the repeat, from 1, on whose left edge the seam falls
	// Mirror changes right and left, for those who trace through from the back.
	Mirror bool
}

// MostThickness is the thickest that paper may be: thin card.
const MostThickness = 1.0

// DefaultOptions returns what holds where nothing else is asked for.
func DefaultOptions(unit geometry.Unit) Options {
	name := "a4"
	if unit == geometry.Inch {
		name = "letter"
	}
	paper, _ := ParsePaper(name)
	return Options{Paper: paper, Margin: 6, Printed: truePrinter, Thickness: 0.1, SeamAt: 1}
}

// standing returns the page that stands upright.
func (o Options) standing() format {
	return o.page(min(o.Paper.Width, o.Paper.Height), max(o.Paper.Width, o.Paper.Height))
}

// lying returns the page that lies on its side.
func (o Options) lying() format {
	return o.page(max(o.Paper.Width, o.Paper.Height), min(o.Paper.Width, o.Paper.Height))
}

// page returns a page of a size in the file: as large as the printer makes it.
func (o Options) page(width, height float64) format {
	across, up := o.Printed.scale()
	return format{
		width: width * across, height: height * up, margin: o.Margin * max(1, across, up),
		printed: o.Printed,
	}
}

// MostDPI returns the most dots to the inch, in whole ones, that every page can be
// drawn with, however it lies.
func (o Options) MostDPI() float64 {
	upright, level := o.standing(), o.lying()
	return min(printing.MostDPI(upright.width, upright.height), printing.MostDPI(level.width, level.height))
}
