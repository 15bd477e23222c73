package pattern

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/job"
)

// bare returns the plan of a job in a band of a face of a blank, without cuts.
func bare(j *job.Job, at faceOf, band job.Band) (*Plan, error) {
	if at.face == job.Base {
		return bareBase(j, at.blank, band), nil
	}
	blank := at.blank
	p := uncut(j, blank, band)
	if paper := blank.Paper; paper != nil && min(band.Top, paper.High)-max(band.Foot, paper.Low) < MinBand {
		return nil, offPaper(j, blank, band)
	}
	if !p.hasCone() {
		return nil, noCone(j, blank, band)
	}
	p.goreError = func() float64 { return 0 }
	if face := p.outside(); face.Curved() {
		p.goreError = sync.OnceValue(func() float64 { return face.goreError(p.Repeats) })
	}
	return p, nil
}

// hasCone reports whether the band's cone has a radius above zero all over the band.
func (p *Plan) hasCone() bool {
	return p.Cone.RadiusAt(p.Band.Foot) > 0 && p.Cone.RadiusAt(p.Band.Top) > 0
}

// PitchAngle returns the angle of one repeat.
func (p *Plan) PitchAngle() float64 { return 2 * math.Pi / float64(p.Repeats) }

// setting is a motif's place in the first repeat: the middle of its box, and the lengths of
// the box's sides on the glass. Inside another motif the place is the outer motif's, and
// offset is the way from the outer box's middle to its own.
type setting struct {
	motif         job.Motif
	surface       *geometry.Surface
	theta, along  float64
	width, height float64
	outer         *setting
	offset        geometry.Point
}

func (p *Plan) set(m job.Motif) setting {
	if m.Inside > 0 {
		outer := p.set(p.sized[m.Inside-1])
		width, height := m.Size(outer.width, outer.height)
		return setting{
			motif: m, surface: &p.Surface, theta: outer.theta, along: outer.along,
			width: width, height: height, outer: &outer,
			offset: geometry.Point{X: m.X.Of(outer.width), Y: m.Y.Of(outer.height) - outer.height/2},
		}
	}
	if m.Middle {
		return p.overMiddle(m)
	}
	foot, top := p.Surface.AlongAt(p.Band.Foot), p.Surface.AlongAt(p.Band.Top)
	along := foot + m.Y.Of(top-foot)
	radius := p.Surface.RadiusAt(p.Surface.HeightAt(along))
	pitch := radius * p.PitchAngle()
	width, height := m.Size(pitch, top-foot)
	return setting{
		motif: m, surface: &p.Surface,
		theta: math.Remainder(m.X.Of(pitch)/radius, 2*math.Pi), along: along,
		width: width, height: height,
	}
}

// MotifSize returns how wide and how high the box of a motif is on the plan's blank, in mm. The
// motif stands on the plan's face.
func (p *Plan) MotifSize(motif int) (width, height float64) {
	s := p.set(p.sized[motif])
	return s.width, s.height
}

// local converts a point of the unit repeat to millimetres from the middle of the motif's
// box, mirrored and turned; inside another motif, from the middle of the outermost box.
func (s *setting) local(u geometry.Point) geometry.Point {
	return s.carry(geometry.Point{X: u.X * s.width, Y: (u.Y - 0.5) * s.height})
}

// carry mirrors and turns a point with the motif, and with the motifs it is inside.
func (s *setting) carry(q geometry.Point) geometry.Point {
	if s.motif.Mirror {
		q.X = -q.X
	}
	if s.motif.Turn != 0 {
		q = r2.Rotate(q, s.motif.Turn.Radians(), geometry.Point{})
	}
	if s.outer != nil {
		return s.outer.carry(r2.Add(q, s.offset))
	}
	return q
}

// place converts a local point to one of the chart. A motif with shape taper keeps its
// angle round the glass, one with shape true its lengths.
func (s *setting) place(q geometry.Point) geometry.Point {
	if s.motif.Middle {
		return q // the chart's origin is the middle of the base
	}
	if s.motif.Shape == job.True {
		return s.surface.Near(s.theta, s.along, q)
	}
	radius, _ := s.surface.At(s.along)
	return s.surface.ForwardAlong(s.theta+q.X/radius, s.along+q.Y)
}

// Periods returns the number of periods round the glass.
func (p *Plan) Periods() int { return p.Repeats / p.Period }

// Shifted returns the plan's cuts as they stand the given number of periods further round:
// with the ids, repeats and places there.
func (p *Plan) Shifted(turns int) []Cut {
	cuts := make([]Cut, len(p.Cuts))
	for i, c := range p.Cuts {
		c.ID = p.id(c.ID, turns)
		c.Repeat = (c.Repeat-1+turns*p.Period)%p.Repeats + 1
		joins := make([]int, len(c.Joins))
		for k, id := range c.Joins {
			joins[k] = p.id(id, turns)
		}
		c.Joins = joins
		turned := c.Turned(&p.Surface, float64(turns*p.Period)*p.PitchAngle())
		c.Groove = &turned
		cuts[i] = c
	}
	return cuts
}

// id returns the id of a cut's copy the given number of periods further round.
func (p *Plan) id(id, turns int) int {
	all := len(p.Cuts) * p.Periods()
	return ((id-1-p.before+turns*len(p.Cuts))%all+all)%all + 1 + p.before
}

// All returns every cut on the glass, in the order of their ids.
func (p *Plan) All() []Cut {
	var all []Cut
	for t := range p.Periods() {
		all = append(all, p.Shifted(t)...)
	}
	return all
}
