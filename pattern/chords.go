package pattern

import (
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/job"
)

// PaperEdge names the circle at which the outside paper begins, where that is above the
// table: the paper's marks are stepped off there.
const PaperEdge = "paper edge"

// Circle is a circle round the glass that a job marks.
type Circle struct {
	Name   string // foot, paper edge (where the paper begins above the table), band foot or band top
	Height float64
	Radius float64
}

// Circles returns the circles that the job marks, from the foot up.
func (p *Plan) Circles() []Circle {
	if p.Face == job.Base {
		return p.baseCircles()
	}
	circles := []Circle{{Name: "foot"}, {Name: "band foot", Height: p.Band.Foot}, {Name: "band top", Height: p.Band.Top}}
	if face := p.Outside(); face.Lower.Why != WholeGlass {
		circles = slices.Insert(circles, 1, Circle{Name: PaperEdge, Height: face.Low})
	}
	profile := p.Blank.Profile()
	for i, c := range circles {
		circles[i].Radius = profile.Radius(c.Height)
	}
	return circles
}

// chords returns the divider settings for the circles. One repeat divides nothing, so
// there are none then.
func (p *Plan) chords() []Chord {
	if p.Repeats < 2 {
		return nil
	}
	circles := p.Circles()
	chords := make([]Chord, len(circles))
	for i, c := range circles {
		chords[i] = Chord{c, p.Repeats, geometry.Division{Radius: c.Radius, Parts: p.Repeats}.Chord()}
	}
	return chords
}

// Totals is the sums over all the cuts on the glass.
type Totals struct {
	Cuts   int
	Length float64 // of groove, mm
}

// Totals returns the sums over all the cuts on the glass.
func (p *Plan) Totals() Totals {
	t := Totals{Cuts: len(p.Cuts) * p.Periods()}
	for _, c := range p.Cuts {
		t.Length += c.Length * float64(p.Periods())
	}
	return t
}
