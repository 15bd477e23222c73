package wrap

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/render/page"
)

// Side is where paper goes on the glass.
type Side int

// Paper goes round the outside, round the inside, or on the outside in patches,
// one a repeat; or it is round, for the base.
const (
	Outside Side = iota
	Inside
	Patches
	Base
)

// Sides lists the words for Side, in order.
func Sides() []string { return append(WallSides(), "base") }

// WallSides lists the words for paper that goes on the wall.
func WallSides() []string { return []string{"outside", "inside", "patches"} }

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
	page.Options
	Side      Side
	Thickness float64 // of the paper
	Seam      Seam
	SeamAt    int // the repeat, from 1, on whose left edge the seam falls
	// Mirror changes right and left, for those who trace through from the back.
	Mirror bool
	// NoRings leaves off the rings round findings, which are still listed.
	NoRings bool
}

// MaxThickness is the thickest that paper may be: thin card.
const MaxThickness = 1.0

// DefaultOptions returns what holds where nothing else is asked for.
func DefaultOptions(unit geometry.Unit) Options {
	return Options{Options: page.DefaultOptions(unit), Thickness: 0.1, SeamAt: 1}
}
