package drawing

import (
	"fmt"
	"slices"

	"roundlay/geometry"
)

// Mark is one thing drawn: a Stroke, a Fill, an Area or a Text. A new kind needs these
// methods, and code in every writer of files. A writer that lacks it returns Unknown,
// so that no mark is left out unnoticed.
type Mark interface {
	// places returns every place that decides where the mark lies.
	places() []geometry.Point
	// placed returns the mark with its places changed, and turned.
	placed(place func(geometry.Point) geometry.Point, turn float64) Mark
	// clipped returns what of the mark lies in a window.
	clipped(w Window) []Mark
	// thinned returns the mark without the points its lines can do without.
	thinned(tolerance float64) Mark
	// ink returns what the mark is drawn in.
	ink() Ink
}

// Unknown returns the error of a writer that can't draw a mark.
func Unknown(m Mark) error { return fmt.Errorf("a mark of the kind %T is not drawn here", m) }

// Cap is how the ends of a stroke are finished.
type Cap int

// A round end runs on by half the pen's width; a flat one stops at the last
// point.
const (
	RoundCap Cap = iota
	FlatCap
)

// Pen is what a stroke is drawn with. Corners are round.
type Pen struct {
	Width float64
	Ink   Ink
	Cap   Cap
	// Dash is the lengths drawn and left out in turn, in millimetres; none is a
	// whole line.
	Dash []float64
}

// Same reports whether two pens draw alike.
func (p Pen) Same(q Pen) bool {
	return p.Width == q.Width && p.Ink == q.Ink && p.Cap == q.Cap && slices.Equal(p.Dash, q.Dash)
}

// Name is what a mark belongs to, for files that can hold names.
type Name struct {
	ID    string // such as cut-12; empty for a mark without a name
	Title string // the same for people
}

// Stroke is a line through points. A closed one runs back to its first point.
// Strokes of one layer that have the same name are pieces of one thing.
type Stroke struct {
	Points []geometry.Point
	Closed bool
	Pen    Pen
	Name   Name
}

// Fill is the inside of a polygon. Its edge, if it has a pen, lies under it, so
// that half of the pen's width shows, all round and outside; edges of fills that
// follow on each other lie under all of these, which so have one edge together.
type Fill struct {
	Points []geometry.Point
	Ink    Ink
	Edge   Pen
}

// Align is which part of a text stands at its place.
type Align int

// A text's place is on its baseline.
const (
	Left Align = iota
	Centre
	Right
)

// Text is one line of words.
type Text struct {
	At    geometry.Point
	Words string
	Size  float64 // in points, 1/72 of an inch
	Bold  bool
	Align Align
	Turn  float64 // anticlockwise; at zero the words run to the right
	Ink   Ink
}

func (s Stroke) places() []geometry.Point { return s.Points }
func (f Fill) places() []geometry.Point   { return f.Points }
func (t Text) places() []geometry.Point   { return []geometry.Point{t.At} }

func (s Stroke) placed(place func(geometry.Point) geometry.Point, _ float64) Mark {
	s.Points = each(s.Points, place)
	return s
}

func (f Fill) placed(place func(geometry.Point) geometry.Point, _ float64) Mark {
	f.Points = each(f.Points, place)
	return f
}

func (t Text) placed(place func(geometry.Point) geometry.Point, turn float64) Mark {
	t.At = place(t.At)
	t.Turn += turn
	return t
}

func each(points []geometry.Point, place func(geometry.Point) geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[i] = place(p)
	}
	return out
}
