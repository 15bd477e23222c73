package pattern

import (
	"slices"

	"roundlay/geometry"
)

// PaperEdge is the name of the circle at which the outside paper begins, where
// that is not at the table: its marks are stepped there.
const PaperEdge = "paper edge"

// chords returns the divider settings for the circles the job marks.
func (p *Plan) chords() []Chord {
	profile := p.Blank.Profile()
	type circle struct {
		name   string
		height float64
	}
	circles := []circle{{"foot", 0}, {"band foot", p.Band.Foot}, {"band top", p.Band.Top}}
	if face := p.Outside(); face.Lower.Why != Whole {
		circles = slices.Insert(circles, 1, circle{PaperEdge, face.Low})
	}
	chords := make([]Chord, len(circles))
	for i, c := range circles {
		radius := profile.Radius(c.height)
		chords[i] = Chord{c.name, c.height, radius, p.Repeats, geometry.Division{Radius: radius, Parts: p.Repeats}.Chord()}
	}
	return chords
}

// Totals sums up the whole glass.
type Totals struct {
	Cuts   int
	Length float64 // of groove, mm
	Volume float64 // of glass ground away, mm³; where cuts cross it counts twice
}

// Totals returns the sums over all the cuts on the glass.
func (p *Plan) Totals() Totals {
	t := Totals{Cuts: len(p.Cuts) * p.Turns()}
	for _, c := range p.Cuts {
		t.Length += c.Length * float64(p.Turns())
		t.Volume += c.Volume * float64(p.Turns())
	}
	return t
}
