// Package screen turns a plan into shapes for a screen: the wrap laid flat, the glass to be
// turned under a finger, and its profile. It is made for a picture that is drawn anew after
// every edit: it adds no words and no page, and leaves out what no screen shows.
//
// Start with NewFlat, which says how a plan's face is laid flat. [NewWrap] draws on it, and
// its Reverse says which place of the glass a finger is on. [NewGlass] and [NewProfile] need
// no flat map.
//
// Shapes are paths as SVG has them, with y up, in millimetres.
package screen

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/wrap"
)

// Kind is how a face is laid flat.
type Kind string

// A straight or a tapered face is unrolled true to size. A curved one is charted: round the
// glass lengths are true at the band's middle alone.
const (
	Cylinder Kind = "cylinder"
	Cone     Kind = "cone"
	Curved   Kind = "curved"
	Disc     Kind = "disc" // the base, as it is seen from below, with its middle at the origin
)

// Flat is the flat map of one face of a plan's glass.
type Flat struct {
	Kind
	plan    *pattern.Plan
	face    pattern.Face
	inside  bool
	surface geometry.Surface // whose chart the map is
	radius  float64          // of a curved face at the band's middle
	seam    float64          // the angle at which the paper's left edge lies
}

// NewFlat returns the flat map of the outside of a plan's glass or of its inside. The plan of
// a base has one map. The error
// says that the inside can't be shown.
func NewFlat(p *pattern.Plan, inside bool) (Flat, error) {
	if p.Face == job.Base {
		return newDisc(p), nil
	}
	f := Flat{Kind: Cone, plan: p, inside: inside, surface: p.Surface}
	if inside {
		face, err := p.Inside()
		if err != nil {
			return f, err
		}
		f.face, f.surface = face, geometry.NewSurface(face.Profile, face.Cone)
	} else {
		f.face = p.Outside()
	}
	side := wrap.Outside
	if inside {
		side = wrap.Inside
	}
	var err error
	if f.seam, err = wrap.LeftEdge(p, side); err != nil {
		return f, err
	}
	band := f.face.Band
	switch {
	case f.face.Curved():
		f.Kind, f.radius = Curved, f.face.Profile.Radius((band[0]+band[1])/2)
	case f.face.Straight():
		f.Kind = Cylinder
	}
	return f, nil
}

// newDisc returns the flat map of the base. Its heights are distances from the middle.
func newDisc(p *pattern.Plan) Flat {
	face := pattern.Face{High: p.Blank.BaseRadius(), Band: [2]float64{p.Band.Foot, p.Band.Top}}
	return Flat{Kind: Disc, plan: p, face: face, surface: p.Surface, seam: -math.Pi}
}

// Forward returns where a place of the outside lies on the map.
func (f Flat) Forward(s geometry.Spot) geometry.Point {
	if f.inside {
		s.Along = f.surface.AlongAt(f.face.Height(f.plan.Surface.HeightAt(s.Along)))
	}
	return f.lay(s)
}

// lay returns where a place of the face lies on the map.
func (f Flat) lay(s geometry.Spot) geometry.Point {
	if f.Kind == Curved {
		return geometry.Point{X: s.Theta * f.radius, Y: s.Along}
	}
	return f.surface.ForwardAlong(s.Theta, s.Along)
}

// Reverse returns the place of the outside that lies at a point of the map.
func (f Flat) Reverse(q geometry.Point) geometry.Spot {
	s := geometry.Spot{Theta: q.X / f.radius, Along: q.Y}
	if f.Kind != Curved {
		s.Theta, s.Along = f.surface.ReverseAlong(q)
	}
	if f.inside {
		s.Along = f.plan.Surface.AlongAt(f.face.Outer(f.surface.HeightAt(s.Along)))
	}
	return s
}

// ReverseNear is Reverse for a point that is not far from an angle of the glass. Far round a
// wide cone a point of the map alone doesn't say how far: the map comes round first.
func (f Flat) ReverseNear(q geometry.Point, theta float64) geometry.Spot {
	s := f.Reverse(f.turned(-theta).Apply(q))
	s.Theta += theta
	return s
}

// turned returns the motion of the map that carries every place round the glass.
func (f Flat) turned(theta float64) geometry.Motion {
	if f.Kind == Curved {
		return geometry.Motion{Cos: 1, X: theta * f.radius}
	}
	return f.surface.Turned(theta)
}

// middle is the angle of the glass that stands upright: the middle of a wrap that begins
// with repeat 1. It is not that of the paper, so that motifs stay where they are seen while one
// is dragged and the paper's ends give way.
func (f Flat) middle() float64 {
	if f.Kind == Disc {
		return 0 // repeat 1 is at the top
	}
	return math.Pi - f.plan.PitchAngle()/2
}

// ends returns the angles of the wrap's left and right edge, from its upright on.
func (f Flat) ends() (from, to float64) {
	from = f.seam - f.middle()
	return from, from + 2*math.Pi
}

// around is an angle of the glass as one on the paper, from the upright on.
func (f Flat) around(theta float64) float64 {
	from, _ := f.ends()
	half := from + math.Pi
	return half + math.Remainder(theta-f.middle()-half, 2*math.Pi)
}

// charted returns where points of the plan's own chart lie on the map.
func (f Flat) charted(points []geometry.Point) []geometry.Point {
	if !f.inside && f.Kind != Curved {
		return points // the chart is the map
	}
	out := make([]geometry.Point, len(points))
	for i, q := range points {
		theta, along := f.plan.Surface.ReverseAlong(q)
		out[i] = f.Forward(geometry.Spot{Theta: theta, Along: along})
	}
	return out
}
