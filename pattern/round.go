package pattern

import (
	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Roundness is the error of dividers stepped round a station that is out of round.
type Roundness struct {
	glass.Station
	Parts int
	Chord float64 // the dividers' setting: the chord for the station's radius
	geometry.Stepping
}

// Roundness returns the stations that are out of round, from the foot up.
func (p *Plan) Roundness() []Roundness {
	var out []Roundness
	for _, s := range p.Blank.Stations {
		if s.OutOfRound() <= 0 || p.Repeats < 2 || p.Face != job.Side {
			continue
		}
		chord := geometry.Division{Radius: s.Radius, Parts: p.Repeats}.Chord()
		// Take the station as an ellipse with its girth, whose two diameters differ by the
		// reading.
		half := s.OutOfRound() / 4
		oval := geometry.Oval{Wide: s.Radius + half, Narrow: s.Radius - half}
		out = append(out, Roundness{s, p.Repeats, chord, oval.Step(chord, p.Repeats)})
	}
	return out
}
