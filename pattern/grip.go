package pattern

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Bare returns the plan of a job on a blank before anything is drawn or cut: its surface
// and its band, and where its motifs stand. Counts that are to be the most that clear may
// still lack their numbers.
func Bare(j *job.Job, blank *glass.Blank) (*Plan, error) {
	return BareOn(j, blank, job.Side)
}

// BareOn is Bare for a face of the blank. Ask for a base only where the job has one.
func BareOn(j *job.Job, blank *glass.Blank, face job.Face) (*Plan, error) {
	at := faceOf{blank, face}
	a, err := arrange(j, at)
	if err != nil {
		return nil, err
	}
	p, err := bare(j, at, a.band)
	if err != nil {
		return nil, err
	}
	p.sized = a.sized(j)
	return p, nil
}

// Grip is a motif's box in the first repeat in which the motif stands, as a hand takes
// hold of it.
type Grip struct {
	setting
	plan  *Plan
	shift float64 // the angle from the first repeat to the one in which the motif stands
}

// Grip returns the box of a motif, by its number from 0.
func (p *Plan) Grip(motif int) Grip {
	g := Grip{setting: p.set(p.sized[motif]), plan: p}
	if copies := p.layout().Copies(g.motif); len(copies) > 0 {
		g.shift = float64(copies[0]-1) * p.PitchAngle()
	}
	return g
}

// At returns a place of the box: x from -0.5 to 0.5 across, y from 0 to 1 up.
func (g Grip) At(x, y float64) geometry.Spot {
	theta, along := g.surface.ReverseAlong(g.place(g.local(geometry.Point{X: x, Y: y})))
	return geometry.Spot{Theta: theta + g.shift, Along: along}
}

// In returns where a place of the glass lies in the box: it undoes At.
func (g Grip) In(at geometry.Spot) geometry.Point {
	q := g.inBox(at)
	return geometry.Point{X: q.X / g.width, Y: q.Y/g.height + 0.5}
}

// Middle returns the middle of the box.
func (g Grip) Middle() geometry.Spot { return g.At(0, 0.5) }

// MovedTo returns where the job would say the motif is with its middle at a place, as
// shares or lengths as it says it now.
func (g Grip) MovedTo(to geometry.Spot) (x, y job.Measure) {
	to.Theta -= g.shift
	if g.outer != nil {
		by := g.outer.uncarry(g.unplace(to))
		// by is from the outer box's middle; heights count from its foot.
		return like(g.motif.X, by.X, g.outer.width), like(g.motif.Y, by.Y+g.outer.height/2, g.outer.height)
	}
	if g.motif.Middle {
		return g.motif.X, g.motif.Y // it has no other place
	}
	radius := g.surface.RadiusAt(g.surface.HeightAt(to.Along))
	foot, top := g.surface.AlongAt(g.plan.Band.Foot), g.surface.AlongAt(g.plan.Band.Top)
	return like(g.motif.X, to.Theta*radius, radius*g.plan.PitchAngle()), like(g.motif.Y, to.Along-foot, top-foot)
}

// Sized returns the width and the height that the job would give the motif if a place of
// its box, such as a corner, were moved from one place to another and the middle stayed.
func (g Grip) Sized(from, to geometry.Spot) (width, height job.Measure) {
	a, b := g.inBox(from), g.inBox(to)
	grown := func(m job.Measure, size, from, to float64) job.Measure {
		if from < 0 {
			from, to = -from, -to
		}
		// A set may give it another size than the job says. It grows by the same share.
		m.Value *= max(0, 1+2*(to-from)/size)
		return m
	}
	return grown(g.motif.Width, g.width, a.X, b.X), grown(g.motif.Height, g.height, a.Y, b.Y)
}

// Turned returns the angle that the motif would be turned to if a place of it were moved
// round its middle from one place to another.
func (g Grip) Turned(from, to geometry.Spot) geometry.Angle {
	direction := func(s geometry.Spot) float64 {
		q := g.fromOuter(s)
		return math.Atan2(q.Y, q.X)
	}
	by := math.Remainder(direction(to)-direction(from), 2*math.Pi)
	return geometry.Degrees(math.Remainder(g.motif.Turn.Degrees()+by*180/math.Pi, 360))
}

// fromOuter returns a place as it lies from the box's middle before the motif is mirrored
// and turned, but after the motifs it is inside are.
func (g Grip) fromOuter(s geometry.Spot) geometry.Point {
	s.Theta -= g.shift
	q := g.unplace(s)
	if g.outer != nil {
		q = r2.Sub(g.outer.uncarry(q), g.offset)
	}
	return q
}

// inBox returns a place as it lies from the box's middle, along the box's own sides.
func (g Grip) inBox(s geometry.Spot) geometry.Point { return g.unturned(g.fromOuter(s)) }

// unplace returns the local point of a place: it undoes place.
func (s *setting) unplace(at geometry.Spot) geometry.Point {
	if s.motif.Middle {
		return s.surface.ForwardAlong(at.Theta, at.Along)
	}
	if s.motif.Shape == job.True {
		return s.surface.Apart(s.theta, s.along, at)
	}
	radius, _ := s.surface.At(s.along)
	return geometry.Point{X: (at.Theta - s.theta) * radius, Y: at.Along - s.along}
}

// uncarry undoes carry.
func (s *setting) uncarry(q geometry.Point) geometry.Point {
	if s.outer != nil {
		q = r2.Sub(s.outer.uncarry(q), s.offset)
	}
	return s.unturned(q)
}

// unturned undoes the motif's own turn and then its mirroring.
func (s *setting) unturned(q geometry.Point) geometry.Point {
	if s.motif.Turn != 0 {
		q = r2.Rotate(q, -s.motif.Turn.Radians(), geometry.Point{})
	}
	if s.motif.Mirror {
		q.X = -q.X
	}
	return q
}

// like returns a length as a measure of the same sort as another.
func like(m job.Measure, length, whole float64) job.Measure {
	m.Value = length
	if m.Fraction {
		m.Value = length / whole
	}
	return m
}
