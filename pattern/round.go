package pattern

import (
	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// Roundness is what a station that is out of round does to dividers stepped
// round it.
type Roundness struct {
	glass.Station
	Parts int
	Chord float64 // that the dividers are set to: the one for the station's radius
	geometry.Stepping
}

// Roundness returns the stations that were found out of round, from the foot up.
func (p *Plan) Roundness() []Roundness {
	var out []Roundness
	for _, s := range p.Blank.Stations {
		if s.OutOfRound() <= 0 || p.Repeats < 2 {
			continue
		}
		chord := geometry.Division{Radius: s.Radius, Parts: p.Repeats}.Chord()
		// An ellipse of the station's own girth, as much wider one way than the
		// other as was read.
		half := s.OutOfRound() / 4
		oval := geometry.Oval{Wide: s.Radius + half, Narrow: s.Radius - half}
		out = append(out, Roundness{s, p.Repeats, chord, oval.Step(chord, p.Repeats)})
	}
	return out
}
