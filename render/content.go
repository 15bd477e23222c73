package render

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// Greys that a laser printer keeps apart, and how large a finding's ring is.
const (
	footprintInk drawing.Ink = 205
	hatchInk     drawing.Ink = 120

	ringOuter = 2.6 // mm, the radius
)

func cutPen() drawing.Pen { return drawing.Pen{Width: 0.45} }
func centrePen() drawing.Pen {
	return drawing.Pen{Width: 0.2, Ink: 90, Dash: []float64{6, 1.5, 1, 1.5}}
}
func repeatPen() drawing.Pen { return drawing.Pen{Width: 0.15, Ink: 130, Dash: []float64{0.8, 1.6}} }
func bandPen() drawing.Pen   { return drawing.Pen{Width: 0.2, Ink: 70, Dash: []float64{2, 1.2}} }
func hatchPen() drawing.Pen  { return drawing.Pen{Width: 0.15, Ink: hatchInk} }
func ringPen() drawing.Pen   { return drawing.Pen{Width: 0.4} }

// content draws what lies on a strip.
func (s *sheet) content(d *drawing.Drawing, st strip) {
	s.tooThin(d, st)
	s.bands(d, st)
	s.repeats(d, st)
	s.grooves(d, st)
	s.findings(d, st)
}

// marked returns where lines round a strip begin and end: they stay off the tab.
func (s *sheet) marked(st strip) (from, to, low, high float64) {
	from, to, low, high = s.shown(st)
	if st.last {
		to = st.to
	}
	return from, to, low, high
}

// tooThin hatches off the glass whose wall does not carry the deepest cut.
func (s *sheet) tooThin(d *drawing.Drawing, st strip) {
	thin, any := s.plan.TooThin()
	from, to, low, high := s.marked(st)
	foot := max(thin, low)
	if !any || foot >= high {
		return
	}
	for _, line := range drawing.Hatch(st.region(from, to, foot, high), math.Pi/4, 2.5) {
		d.Add(drawing.Marks, drawing.Stroke{Points: line, Pen: hatchPen()})
	}
	if thin >= low {
		d.Add(drawing.Marks, drawing.Stroke{Points: st.level(from, to, thin), Pen: drawing.Pen{Width: 0.25, Ink: 70}})
		s.word(d, st, thin+1.2, "too thin for the deepest cut", "too thin to cut", "too thin")
	}
}

// bands draws the limits of the band.
func (s *sheet) bands(d *drawing.Drawing, st strip) {
	u := s.plan.Job.Length
	from, to, low, high := s.marked(st)
	for _, b := range []struct {
		name   string
		height float64
		above  bool
	}{{"band foot", s.plan.Band.Foot, false}, {"band top", s.plan.Band.Top, true}} {
		if b.height < low || b.height > high {
			continue
		}
		d.Add(drawing.Marks, drawing.Stroke{Points: st.level(from, to, b.height), Pen: bandPen()})
		at := b.height - 2.6
		if b.above {
			at = b.height + 0.8
		}
		if thin, any := s.plan.TooThin(); b.above && (any && thin-b.height < 3 || st.high-b.height < 3.5) {
			at = b.height - 2.6
		}
		if !b.above && b.height-st.low < 3 {
			at = b.height + 0.8
		}
		s.word(d, st, at, b.name+" "+u.Text(b.height), u.Text(b.height))
	}
}

// word sets small words along the left edge of a piece, at a height: the first
// choice that is not too long for the room before the first repeat's middle and
// the arrow to the rim.
func (s *sheet) word(d *drawing.Drawing, st strip, z float64, choices ...string) {
	const size, tall, arrow = 6, 2.2, 7.5
	indent := 2.0
	if !st.first {
		indent = 7 // beside the names at a match line
	}
	if !st.leads || z < st.low || z+tall > st.high {
		return
	}
	to := st.to - arrow/st.on.RadiusAt(z)
	if middle := math.Ceil(st.from/s.plan.Pitch()) * s.plan.Pitch(); middle < to {
		to = middle
	}
	for _, words := range choices {
		if room := (to-st.from)*st.on.RadiusAt(z) - indent - 1; s.letters.Width(words, size, false) < room {
			theta := st.from + indent/st.on.RadiusAt(z)
			s.label(d, drawing.Text{At: st.at(theta, z), Words: words, Size: size, Turn: st.tilt(theta, z)})
			return
		}
	}
}

// repeats draws the lines between repeats, the middle line of each and, at the
// paper's base, a tick to stand on the mark stepped off at the foot, with the
// repeat's number. Lines of one kind follow on each other.
func (s *sheet) repeats(d *drawing.Drawing, st strip) {
	const tick = 5.0
	from, to, low, high := s.marked(st)
	middles := slices.Collect(s.steps(from, to, 0))
	for theta := range s.steps(from, to, s.plan.Pitch()/2) {
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
		if theta < st.from || theta > st.to {
			continue // it is the neighbour's, and so is its number
		}
		n := s.plan.Repeats
		number := (int(math.Round(theta/s.plan.Pitch()))%n+n)%n + 1
		d.Add(drawing.Notes, drawing.Text{
			At: st.beside(theta, low+1.2, 1.8), Words: fmt.Sprint(number), Size: 9, Bold: true, Turn: st.tilt(theta, low),
		})
	}
}

// steps yields the angles between two that are a whole number of pitches on from
// another; both ends count.
func (s *sheet) steps(from, to, first float64) iter.Seq[float64] {
	const touch = 1e-9
	return func(yield func(float64) bool) {
		pitch := s.plan.Pitch()
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

// traces returns the plan's cuts of one period.
func traces(p *pattern.Plan) []trace {
	all := make([]trace, len(p.Cuts))
	for i, c := range p.Cuts {
		t := trace{box: geometry.EmptyBox()}
		for _, at := range c.Samples {
			t.line = append(t.line, geometry.Point{X: at.Theta, Y: at.Height})
		}
		for _, o := range c.Outlines {
			outline := make([]geometry.Point, len(o.Points))
			for k, q := range o.Points {
				outline[k].X, outline[k].Y = p.Surface.Reverse(q)
			}
			t.outlines = append(t.outlines, outline)
			t.box = t.box.Union(geometry.BoxOf(outline...))
		}
		t.box = t.box.Union(geometry.BoxOf(t.line...))
		all[i] = t
	}
	return all
}

// grooves draws the footprints at their true width and the lines to trace. They
// are cut off at the strip's ends while they are places of the glass, where
// those are straight.
func (s *sheet) grooves(d *drawing.Drawing, st strip) {
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
func (s *sheet) cutsIn(box geometry.Box) drawing.Drawing {
	period := float64(s.plan.Period) * s.plan.Pitch()
	var cuts drawing.Drawing
	for _, t := range s.traces {
		for turns := math.Ceil((box.Min.X - t.box.Max.X) / period); t.box.Min.X+turns*period <= box.Max.X; turns++ {
			if t.box.Min.Y > box.Max.Y || t.box.Max.Y < box.Min.Y {
				continue
			}
			round := geometry.Motion{Cos: 1, X: turns * period}
			for _, o := range t.outlines {
				cuts.Add(drawing.Footprints, drawing.Fill{Points: carried(o, round), Ink: footprintInk})
			}
			cuts.Add(drawing.Cuts, drawing.Stroke{Points: carried(t.line, round), Pen: cutPen()})
		}
	}
	return cuts.Clipped(drawing.BoxWindow(box))
}

// footprintFlatness is how far the grey of a footprint may leave its outline: a
// third of a dot, for half the points.
const footprintFlatness = 0.015

func carried(points []geometry.Point, m geometry.Motion) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, q := range points {
		out[i] = m.Apply(q)
	}
	return out
}

// findings rings each finding, in every repeat it recurs in, with its letter.
func (s *sheet) findings(d *drawing.Drawing, st strip) {
	from, to, low, high := s.marked(st)
	period := float64(s.plan.Period) * s.plan.Pitch()
	for _, g := range s.plan.Groups() {
		var ringed []geometry.Point
		for _, f := range g.Findings {
			if f.Height < low || f.Height > high || len(f.Cuts) == 0 {
				continue
			}
			for theta := f.Theta + math.Ceil((from-f.Theta)/period)*period; theta <= to; theta += period {
				at := st.at(theta, f.Height)
				if !near(ringed, at, 2*ringOuter) {
					ringed = append(ringed, at)
					s.ring(d, at, st.tilt(theta, f.Height), g.Letter, math.Remainder(theta, s.plan.Pitch()) < -1e-9)
				}
			}
		}
	}
}

// ring draws a ring with its letter beside it, on whichever side other letters
// leave room: first to the left of a repeat's middle on the left, so that the
// rings of a pair leave each other room.
func (s *sheet) ring(d *drawing.Drawing, at geometry.Point, tilt float64, letter string, left bool) {
	text := drawing.Text{Words: letter, Size: 9, Bold: true, Turn: tilt}
	first := 1.0
	if left {
		first = -1
	}
	for _, side := range []geometry.Point{{X: first, Y: 1}, {X: -first, Y: 1}, {X: first, Y: -2}, {X: -first, Y: -2}} {
		text.At = geometry.Point{X: side.X * (ringOuter + 0.4), Y: side.Y * (ringOuter - 1.2)}
		text.At = r2.Add(at, r2.Rotate(text.At, tilt, geometry.Point{}))
		text.Align = drawing.Left
		if side.X < 0 {
			text.Align = drawing.Right
		}
		if s.free(*d, text) {
			break
		}
	}
	d.Add(drawing.Findings, drawing.Stroke{Points: drawing.Circle(at, ringOuter), Closed: true, Pen: ringPen()}, text)
}

// free reports whether a letter would stand clear of those that are there.
func (s *sheet) free(d drawing.Drawing, letter drawing.Text) bool {
	box := s.letters.Box(letter)
	for _, m := range d.On(drawing.Findings) {
		if other, ok := m.(drawing.Text); ok && s.letters.Box(other).Distance2(box) == 0 {
			return false
		}
	}
	return true
}

func near(places []geometry.Point, at geometry.Point, within float64) bool {
	for _, p := range places {
		if r2.Norm(r2.Sub(p, at)) < within {
			return true
		}
	}
	return false
}

func reversed(points []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[len(points)-1-i] = p
	}
	return out
}
