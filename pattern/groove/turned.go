package groove

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Turned returns the groove turned round the glass by an angle.
func (g Groove) Turned(outside *geometry.Surface, theta float64) Groove {
	if theta == 0 {
		return g
	}
	m := outside.Turned(theta)
	turned := func(samples []Sample) []Sample {
		if samples == nil {
			return nil
		}
		all := make([]Sample, len(samples))
		for i, s := range samples {
			s.At, s.LeftEdge, s.RightEdge = m.Apply(s.At), m.Apply(s.LeftEdge), m.Apply(s.RightEdge)
			s.Theta += theta
			all[i] = s
		}
		return all
	}
	outlines := make([]geometry.Outline, len(g.Outlines))
	for i, o := range g.Outlines {
		outlines[i] = o.Turned(outside, theta)
	}
	g.Line = g.Line.moved(m)
	g.Samples, g.Outlines = turned(g.Samples), outlines
	g.Remains.Theta += theta
	if g.Bridge != nil {
		b := *g.Bridge
		b.Theta += theta
		g.Bridge = &b
	}
	if t := g.tips; t != nil {
		g.tips = &[2][]Sample{turned(t[0]), turned(t[1])}
	}
	return g
}

// Middle returns the sample halfway along the groove.
func (g Groove) Middle() Sample { return g.Samples[len(g.Samples)/2] }

// Nearest returns the sample nearest to a distance along the groove.
func (g Groove) Nearest(along float64) Sample {
	return slices.MinFunc(g.Samples, func(a, b Sample) int {
		return cmp.Compare(math.Abs(a.Along-along), math.Abs(b.Along-along))
	})
}

// Box returns the smallest box round the footprint on the flat map.
func (g *Groove) Box() geometry.Box {
	box := geometry.EmptyBox()
	for _, o := range g.Outlines {
		box = box.Union(o.Box())
	}
	return box
}

// Short reports whether the mark is too short for the depth asked for. A swelled cut that is
// drawn isn't: how deep it gets is up to its swell, which may well be greatest at an end, where
// the wheel has to be out of the glass.
func (g *Groove) Short() bool {
	switch least := g.Asked * (1 - 1e-6); {
	case g.Line.hand.swells() && !g.Touch:
		return false
	case g.Line.hand.rocks():
		return g.Plunge < least
	default:
		return g.Depth < least
	}
}

// Reached returns how deep the wheel comes of the depth asked for. One that is rolled may bite
// deeper beside the cut's line, which doesn't make the mark long enough.
func (g *Groove) Reached() float64 {
	if g.Line.hand == nil {
		return g.Depth
	}
	return g.Plunge
}

// Reaches reports whether the wheel comes as deep as a share of the depth asked. Where a drawn
// cut's swell is greatest at an end of its line, and only there, the wheel is as deep as the
// swell asks wherever it may stand: at the end itself it has to be out of the glass.
func (g *Groove) Reaches(share float64) bool {
	if hand := g.Line.hand; hand != nil && hand.atEnd && !g.Touch {
		return true
	}
	return g.Reached() >= g.Asked*share
}

// LengthFor returns the length of the shortest mark in the groove's place that reaches a
// depth with a wheel: twice the contact half-length.
func (g Groove) LengthFor(outside *geometry.Surface, wheel Wheel, depth float64) float64 {
	i := len(g.Samples) / 2
	ahead := r2.Unit(r2.Sub(g.Samples[i+1].At, g.Samples[i-1].At))
	b := wheel.middle()
	p := place(outside, wheel.Radius, depth, g.Samples[i].At, ahead)
	return p.contact(&b, -1) + p.contact(&b, 1)
}
