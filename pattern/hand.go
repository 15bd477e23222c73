package pattern

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// hands returns what the hand does along each of a drawing's cuts, as they lie on the glass;
// nil where all are even, as most are.
func (d *drawing) hands() []groove.Hand {
	if d.even() {
		return nil
	}
	all := make([]groove.Hand, len(d.cuts))
	for i := range d.cuts {
		all[i] = d.hand(&d.cuts[i])
	}
	return all
}

// even reports whether all of the drawing's cuts are even ones.
func (d *drawing) even() bool {
	last := "" // of the parts looked at: their cuts come in runs
	for i := range d.cuts {
		if part := d.cuts[i].Part; i == 0 || part != last {
			if !d.motif.GestureOf(part).Even() {
				return false
			}
			last = part
		}
	}
	return true
}

// hand returns what the hand does along a cut of a motif where the motif is set. Where that
// is mirrored, or the motif it is inside, left and right change places.
func (s *setting) hand(c *motifs.Cut) groove.Hand {
	g := s.motif.GestureOf(c.Part)
	if g.Even() {
		return groove.Hand{}
	}
	g = g.On(c.Side)
	for at := s; at != nil; at = at.outer {
		if at.motif.Mirror {
			g = g.Mirrored()
		}
	}
	h := groove.Hand{Swell: g.Swell, Rock: [2]float64{g.Rock[0].Radians(), g.Rock[1].Radians()}}
	if len(h.Swell) == 1 { // one share for all of the cut
		h.Swell = []float64{h.Swell[0], h.Swell[0]}
	}
	return h
}

// leastFlank is the angle in degrees that has to be left between the glass and the flank of a
// wheel that is rolled to its side. Flatter, it would take the glass off like a plane.
const leastFlank = 5

// tooRolled returns an error if a motif, or a part of it, is rolled so far that a flank of its
// wheel lies on the glass, or is cut with a gang of too many mitres to be rolled.
func (p *Plan) tooRolled(i int) error {
	m := p.sized[i]
	for _, part := range m.Kind.Parts {
		rock := m.GestureOf(part).Rock
		wheel := p.Job.Rack[m.WheelOf(part)]
		if wheel.Edge != groove.Mitre && wheel.Edge != groove.Gang {
			continue
		}
		most := math.Pi/2 - wheel.Angle/2 - geometry.Degrees(leastFlank).Radians()
		rolled := max(rock[0], rock[1])
		many := wheel.Edge == groove.Gang && wheel.Mitres > groove.MaxRolledMitres
		if rolled == 0 || rolled.Radians() <= most+1e-9 && !many {
			continue
		}
		key := job.Item("motif", i) + ".rock"
		switch own := m.Part(part); {
		case own.Rock != nil || own.Wheel != nil && m.Rock != nil:
			key = partKey(i, part) + ".rock"
		case m.Rock == nil:
			key = job.Item("motif", i) + "." + motifs.HandParam
		}
		read := fmt.Sprintf("a roll of %s degrees", job.InDegrees(rolled))
		if many {
			return p.Job.Refuse(key, read, fmt.Sprintf("no roll of the %s, or a gang of at most %d mitres", part, groove.MaxRolledMitres),
				fmt.Sprintf("its wheel %q has %d", wheel.Name, wheel.Mitres))
		}
		accepted := fmt.Sprintf("a roll of the %s of at most %.3g degrees", part, math.Floor(geometry.Angle(most).Degrees()))
		if most < 0 {
			accepted = fmt.Sprintf("no roll of the %s", part)
		}
		return p.Job.Refuse(key, read, accepted,
			fmt.Sprintf("beyond that a flank of its wheel %q, which has %s degrees, lies on the glass", wheel.Name, job.InDegrees(geometry.Angle(wheel.Angle))))
	}
	return nil
}
