package wrap

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// Greys that a laser printer keeps apart.
const (
	footprintInk drawing.Ink = 205
	hatchInk     drawing.Ink = 120
)

func cutPen() drawing.Pen { return drawing.Pen{Width: 0.45} }
func centrePen() drawing.Pen {
	return drawing.Pen{Width: 0.2, Ink: 90, Dash: []float64{6, 1.5, 1, 1.5}}
}
func repeatPen() drawing.Pen  { return drawing.Pen{Width: 0.15, Ink: 130, Dash: []float64{0.8, 1.6}} }
func bandPen() drawing.Pen    { return drawing.Pen{Width: 0.2, Ink: 70, Dash: []float64{2, 1.2}} }
func grooveEdge() drawing.Pen { return drawing.Pen{Width: 0.24} } // half of it shows
func hatchPen() drawing.Pen   { return drawing.Pen{Width: 0.15, Ink: hatchInk} }
func ringPen() drawing.Pen    { return drawing.Pen{Width: 0.4} }

// content draws what lies on a strip.
func (s *facePaper) content(d *drawing.Drawing, st strip) {
	s.tooThin(d, st)
	s.bands(d, st)
	s.repeats(d, st)
	s.grooves(d, st)
	s.findings(d, st)
}

// marked returns where lines round a strip begin and end: they stay off the tab.
func (s *facePaper) marked(st strip) (from, to, low, high float64) {
	from, to, low, high = s.shown(st)
	if st.last {
		to = st.to
	}
	return from, to, low, high
}

// tooThin hatches the glass that is too thin for the cuts there or, where there are
// none, for the shallowest cut.
func (s *facePaper) tooThin(d *drawing.Drawing, st strip) {
	from, to, low, high := s.marked(st)
	for _, thin := range s.thin {
		foot, top := max(thin.From, low), min(thin.To, high)
		if foot >= top {
			continue
		}
		for _, line := range drawing.Hatch(st.region(from, to, foot, top), math.Pi/4, 2.5) {
			d.Add(drawing.Marks, drawing.Stroke{Points: line, Pen: hatchPen()})
		}
		for _, end := range []float64{thin.From, thin.To} {
			if end > s.low && end < s.high && end >= low && end <= high {
				d.Add(drawing.Marks, drawing.Stroke{Points: st.level(from, to, end), Pen: drawing.Pen{Width: 0.25, Ink: 70}})
			}
		}
	}
}

// bands draws the limits of the band.
func (s *facePaper) bands(d *drawing.Drawing, st strip) {
	from, to, low, high := s.marked(st)
	for _, limit := range []float64{s.plan.Band.Foot, s.plan.Band.Top} {
		if z := s.face.Height(limit); z >= low && z <= high {
			d.Add(drawing.Marks, drawing.Stroke{Points: st.level(from, to, z), Pen: bandPen()})
		}
	}
}

// repeats draws the lines between repeats, the middle line of each and, at the
// paper's base, a tick to stand on the mark stepped off at the foot. Lines of one
// kind follow on each other.
func (s *facePaper) repeats(d *drawing.Drawing, st strip) {
	const tick = 5.0
	from, to, low, high := s.marked(st)
	middles := slices.Collect(s.steps(from, to, 0))
	for theta := range s.steps(from, to, s.plan.PitchAngle()/2) {
		if st.onEdge(theta) {
			continue // the edge itself parts the repeats
		}
		d.Add(drawing.Marks, drawing.Stroke{Points: st.upright(theta, low, high), Pen: repeatPen()})
	}
	for _, theta := range middles {
		d.Add(drawing.Marks, drawing.Stroke{Points: st.upright(theta, low, high), Pen: centrePen()})
	}
	if !st.lowest {
		return
	}
	for _, theta := range middles {
		d.Add(drawing.Marks, drawing.Stroke{Points: st.upright(theta, low, low+tick), Pen: drawing.Pen{Width: 0.5}})
	}
	for _, theta := range middles {
		d.Add(drawing.Marks, drawing.Fill{Points: []geometry.Point{
			st.beside(theta, low, -1.4), st.beside(theta, low, 1.4), st.at(theta, low+2.2),
		}})
	}
}

// steps yields the angles between two that are a whole number of pitches on from
// another; both ends count.
func (s *facePaper) steps(from, to, first float64) iter.Seq[float64] {
	const touch = 1e-9
	return func(yield func(float64) bool) {
		pitch := s.plan.PitchAngle()
		for i := math.Ceil((from - touch - first) / pitch); first+i*pitch <= to+touch; i++ {
			if !yield(first + i*pitch) {
				return
			}
		}
	}
}

// trace is a cut as places of the glass: points of (θ, z).
type trace struct {
	line     []geometry.Point
	outlines [][]geometry.Point
	box      geometry.Box
}

// traces returns the plan's cuts of one period, as places of a face.
func traces(p *pattern.Plan, face pattern.Face) []trace {
	all := make([]trace, len(p.Cuts))
	for i, c := range p.Cuts {
		t := trace{box: geometry.EmptyBox()}
		for _, at := range c.Samples {
			t.line = append(t.line, geometry.Point{X: at.Theta, Y: face.Height(at.Height)})
		}
		for _, o := range c.Outlines {
			outline := make([]geometry.Point, len(o.Points))
			for k, q := range o.Points {
				theta, z := p.Surface.Reverse(q)
				outline[k] = geometry.Point{X: theta, Y: face.Height(z)}
			}
			t.outlines = append(t.outlines, outline)
			t.box = t.box.Union(geometry.BoxOf(outline...))
		}
		t.box = t.box.Union(geometry.BoxOf(t.line...))
		all[i] = t
	}
	return all
}

// grooves draws the footprints at their true width and the lines to trace. They are
// clipped as places of the glass, where the strip's ends are straight.
func (s *facePaper) grooves(d *drawing.Drawing, st strip) {
	from, to, low, high := s.shown(st)
	var cuts drawing.Drawing
	if st.last && to > st.to {
		slope := tabSlope(st)
		cuts.Append(s.cutsIn(geometry.Box{
			Min: geometry.Point{X: st.to, Y: low + slope}, Max: geometry.Point{X: to, Y: high - slope},
		}))
		to = st.to
	}
	cuts.Append(s.cutsIn(geometry.Box{Min: geometry.Point{X: from, Y: low}, Max: geometry.Point{X: to, Y: high}}))
	cuts = cuts.Mapped(func(q geometry.Point) geometry.Point { return st.at(q.X, q.Y) })
	d.Append(cuts.Thinned(drawing.Footprints, footprintFlatness))
}

// cutsIn returns what of the cuts lies in a box of places of the glass.
func (s *facePaper) cutsIn(box geometry.Box) drawing.Drawing {
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	var cuts drawing.Drawing
	for i, t := range s.traces {
		for turns := math.Ceil((box.Min.X - t.box.Max.X) / period); t.box.Min.X+turns*period <= box.Max.X; turns++ {
			if t.box.Min.Y > box.Max.Y || t.box.Max.Y < box.Min.Y {
				continue
			}
			round := geometry.Motion{Cos: 1, X: turns * period}
			for _, o := range t.outlines {
				cuts.Add(drawing.Footprints, drawing.Fill{Points: carried(o, round), Ink: footprintInk, Edge: grooveEdge()})
			}
			cuts.Add(drawing.Cuts, drawing.Stroke{Points: carried(t.line, round), Pen: cutPen(), Name: s.cutName(i, int(turns))})
		}
	}
	return cuts.Clipped(drawing.BoxWindow(box))
}

// cutName names a cut of the plan, n periods on, by its number in the lists, its
// repeat, motif and part.
func (s *facePaper) cutName(i, periods int) drawing.Name {
	c, around := s.plan.Cuts[i], s.plan.Around(s.plan.Cuts[i].ID)
	turn := modulo(periods, len(around))
	return drawing.Name{
		ID: fmt.Sprintf("cut-%d", around[turn]),
		Title: fmt.Sprintf("Cut %d, repeat %d: %s, %s",
			around[turn], c.Repeat+turn*s.plan.Period, s.plan.Job.Motifs[c.Motif].Called(), c.Part),
	}
}

// footprintFlatness is how far the grey of a footprint may deviate from its outline:
// half a dot. It saves more than half the points.
const footprintFlatness = 0.02

func carried(points []geometry.Point, m geometry.Motion) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, q := range points {
		out[i] = m.Apply(q)
	}
	return out
}

func reversed(points []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[len(points)-1-i] = p
	}
	return out
}
