package render

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Sizes of what is drawn on a wrap, in millimetres, and greys that a laser
// printer keeps apart.
const (
	tabWidth  = 8.0
	overlap   = 6.0 // what a piece shows of its neighbour beyond a match line
	ringOuter = 2.6 // the radius of a ring round a finding

	footprintInk drawing.Ink = 205
	hatchInk     drawing.Ink = 120
)

func edgePen() drawing.Pen { return drawing.Pen{Width: 0.3} }
func cutPen() drawing.Pen  { return drawing.Pen{Width: 0.45} }
func matchPen() drawing.Pen {
	return drawing.Pen{Width: 0.35, Dash: []float64{5, 1.5, 1, 1.5}}
}
func centrePen() drawing.Pen {
	return drawing.Pen{Width: 0.2, Ink: 90, Dash: []float64{6, 1.5, 1, 1.5}}
}
func repeatPen() drawing.Pen { return drawing.Pen{Width: 0.15, Ink: 130, Dash: []float64{0.8, 1.6}} }
func bandPen() drawing.Pen   { return drawing.Pen{Width: 0.2, Ink: 70, Dash: []float64{2, 1.2}} }
func hatchPen() drawing.Pen  { return drawing.Pen{Width: 0.15, Ink: hatchInk} }
func ringPen() drawing.Pen   { return drawing.Pen{Width: 0.4} }

// piece is one part of a wrap that is printed in one: all of it, or some of its
// repeats. Its angles and distances along the profile are those of its own
// paper; beyond them it shows a little of its neighbours.
type piece struct {
	column          int     // from 1, left to right
	from, to        float64 // angles
	low, high       float64 // heights
	first, last     bool    // whether its left and its right edge are the paper's own
	lowest, highest bool    // likewise its lower and its upper edge
}

// sheet draws the pieces of a plan's wrap on the flat map of its paper.
type sheet struct {
	plan  *pattern.Plan
	paper geometry.Cone
	seam  float64 // the angle at which the paper's left edge lies

	letters *lettering.Letters
}

// whole returns the piece that is all of the wrap.
func (s sheet) whole() piece {
	return piece{
		column: 1, from: s.seam, to: s.seam + 2*math.Pi, high: s.plan.Blank.Height(),
		first: true, last: true, lowest: true, highest: true,
	}
}

// draw returns a piece with its middle line upright, and the box of its paper.
func (s sheet) draw(p piece) (drawing.Drawing, geometry.Box) {
	turn := s.paper.Turned(-(p.from + p.to) / 2)
	d := s.content(p)
	if reach := (p.to - p.from) * math.Abs(math.Sin(s.paper.HalfAngle)); reach < 3 {
		d = d.Clipped(s.window(p))
	}
	s.edges(&d, p)
	d = d.Moved(turn)
	return d, d.Box()
}

// window is the part of the map that a piece shows: between two lines up the
// slant, a little outside its edges.
func (s sheet) window(p piece) drawing.Window {
	at := func(theta, aside float64) (low, high geometry.Point) {
		theta += aside / s.paper.RadiusAt((p.low+p.high)/2)
		return s.paper.Forward(theta, p.low-1), s.paper.Forward(theta, p.high+1)
	}
	left, right := overlap, overlap
	if p.first {
		left = 0
	}
	if p.last {
		right = tabWidth - 1.5 // what the other end shows goes on under it, to meet it by
	}
	leftLow, leftHigh := at(p.from, -left)
	rightLow, rightHigh := at(p.to, right)
	return drawing.Window{drawing.LeftOf(leftHigh, leftLow), drawing.LeftOf(rightLow, rightHigh)}
}

// content draws what lies on the paper, whatever piece of it is printed; it
// leaves out what the piece does not reach.
func (s sheet) content(p piece) drawing.Drawing {
	var d drawing.Drawing
	s.tooThin(&d, p)
	s.bands(&d, p)
	s.repeats(&d, p)
	s.grooves(&d, p)
	s.findings(&d, p)
	return d
}

// level returns a line round the paper at a height, over a piece and its surroundings.
func (s sheet) level(p piece, z float64) []geometry.Point {
	beyond := (overlap + 2) / s.paper.RadiusAt(z)
	from, to := p.from-beyond, p.to+beyond
	if p.first {
		from = p.from
	}
	if p.last {
		to = p.to
	}
	return s.arc(from, to, z)
}

// arc returns a line round the paper at a height, between two angles, within
// drawing.Flatness of the true arc.
func (s sheet) arc(from, to, z float64) []geometry.Point {
	n := 1
	if bend := math.Abs(math.Sin(s.paper.HalfAngle)) / s.paper.RadiusAt(z); bend > 1e-9 {
		length := (to - from) * s.paper.RadiusAt(z)
		n = max(1, int(math.Ceil(length*math.Sqrt(bend/(8*drawing.Flatness)))))
	}
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = s.paper.Forward(from+(to-from)*float64(i)/float64(n), z)
	}
	return points
}

// tooThin hatches off the glass whose wall does not carry the deepest cut.
func (s sheet) tooThin(d *drawing.Drawing, p piece) {
	from, thin := s.plan.TooThin()
	if !thin {
		return
	}
	top := s.plan.Blank.Height()
	region := append(s.level(p, from), reversed(s.level(p, top))...)
	for _, line := range drawing.Hatch(region, math.Pi/4, 2.5) {
		d.Add(drawing.Marks, drawing.Stroke{Points: line, Pen: hatchPen()})
	}
	d.Add(drawing.Marks, drawing.Stroke{Points: s.level(p, from), Pen: drawing.Pen{Width: 0.25, Ink: 70}})
	s.word(d, p, from+1.2, "too thin for the deepest cut")
}

// bands draws the limits of the band.
func (s sheet) bands(d *drawing.Drawing, p piece) {
	u := s.plan.Job.Length
	for _, b := range []struct {
		name   string
		height float64
		above  bool
	}{{"band foot", s.plan.Band.Foot, false}, {"band top", s.plan.Band.Top, true}} {
		d.Add(drawing.Marks, drawing.Stroke{Points: s.level(p, b.height), Pen: bandPen()})
		at := b.height - 2.6
		if b.above {
			at = b.height + 0.8
		}
		if from, thin := s.plan.TooThin(); b.above && thin && from-b.height < 3 {
			at = b.height - 2.6
		}
		s.word(d, p, at, b.name+" "+u.Text(b.height))
	}
}

// word sets small words along the left edge of a piece, at a height.
func (s sheet) word(d *drawing.Drawing, p piece, z float64, words string) {
	theta := p.from + 2/s.paper.RadiusAt(z)
	s.label(d, drawing.Text{At: s.paper.Forward(theta, z), Words: words, Size: 6, Turn: s.tilt(theta)})
}

// repeats draws a centre line and a base tick for every repeat, and the lines
// between them.
func (s sheet) repeats(d *drawing.Drawing, p piece) {
	top := s.plan.Blank.Height()
	pitch := s.plan.Pitch()
	for i := -2; i <= s.plan.Repeats+1; i++ {
		theta := float64(i) * pitch
		if s.shows(p, theta) {
			s.centre(d, theta, top, (i+2*s.plan.Repeats)%s.plan.Repeats+1)
		}
		if edge := theta + pitch/2; s.shows(p, edge) {
			d.Add(drawing.Marks, drawing.Stroke{
				Points: []geometry.Point{s.paper.Forward(edge, 0), s.paper.Forward(edge, top)}, Pen: repeatPen(),
			})
		}
	}
}

// centre draws one repeat's middle line, with a tick at its base to stand on
// the mark stepped off at the foot, and its number.
func (s sheet) centre(d *drawing.Drawing, theta, top float64, number int) {
	const tick = 5.0
	radius := s.paper.RadiusAt(0)
	foot, head := s.paper.Forward(theta, 0), s.paper.Forward(theta, top)
	d.Add(drawing.Marks,
		drawing.Stroke{Points: []geometry.Point{foot, head}, Pen: centrePen()},
		drawing.Stroke{Points: []geometry.Point{foot, s.paper.Forward(theta, tick)}, Pen: drawing.Pen{Width: 0.5}},
		drawing.Fill{Points: []geometry.Point{
			s.paper.Forward(theta-1.4/radius, 0), s.paper.Forward(theta+1.4/radius, 0), s.paper.Forward(theta, 2.2),
		}},
	)
	d.Add(drawing.Notes, drawing.Text{
		At: s.paper.Forward(theta+1.8/radius, 1.2), Words: fmt.Sprint(number), Size: 9, Bold: true,
		Turn: s.tilt(theta),
	})
}

// shows reports whether a piece shows the line up the slant at an angle.
func (s sheet) shows(p piece, theta float64) bool {
	beyond := overlap / s.paper.RadiusAt(0)
	from, to := p.from-beyond, p.to+beyond
	if p.first {
		from = p.from - 1e-9
	}
	if p.last {
		to = p.to + 1e-9
	}
	return theta >= from && theta <= to
}

// grooves draws the footprints at their true width and the lines to trace.
func (s sheet) grooves(d *drawing.Drawing, p piece) {
	for turns := -1; turns <= s.plan.Turns(); turns++ {
		for _, c := range s.plan.Turned(turns) {
			if !s.reaches(p, c) {
				continue
			}
			for _, o := range c.Outlines {
				d.Add(drawing.Footprints, drawing.Fill{Points: s.onPaper(o.Points), Ink: footprintInk})
			}
			line := make([]geometry.Point, len(c.Samples))
			for i, at := range c.Samples {
				line[i] = s.paper.Forward(at.Theta, at.Height)
			}
			d.Add(drawing.Cuts, drawing.Stroke{Points: line, Pen: cutPen()})
		}
	}
}

// reaches reports whether any of a cut lies on a piece.
func (s sheet) reaches(p piece, c pattern.Cut) bool {
	for _, at := range c.Samples {
		beyond := (overlap + c.Width) / s.paper.RadiusAt(at.Height)
		if at.Theta > p.from-beyond && at.Theta < p.to+beyond {
			return true
		}
	}
	return false
}

// onPaper takes places on the flat map of the glass to the paper.
func (s sheet) onPaper(points []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, q := range points {
		theta, z := s.plan.Surface.Reverse(q)
		out[i] = s.paper.Forward(theta, z)
	}
	return out
}

// findings rings each finding, in every repeat it recurs in, with its letter.
func (s sheet) findings(d *drawing.Drawing, p piece) {
	for _, g := range s.plan.Groups() {
		var ringed []geometry.Point
		for _, f := range g.Findings {
			for turns := -1; turns <= s.plan.Turns(); turns++ {
				theta := f.Theta + float64(turns*s.plan.Period)*s.plan.Pitch()
				at := s.paper.Forward(theta, f.Height)
				if s.shows(p, theta) && !near(ringed, at, 2*ringOuter) {
					ringed = append(ringed, at)
					s.ring(d, at, theta, g.Letter)
				}
			}
		}
	}
}

func (s sheet) ring(d *drawing.Drawing, at geometry.Point, theta float64, letter string) {
	d.Add(drawing.Findings, drawing.Stroke{Points: drawing.Circle(at, ringOuter), Closed: true, Pen: ringPen()})
	d.Add(drawing.Findings, drawing.Text{
		At: r2.Add(at, geometry.Point{X: ringOuter + 0.4, Y: ringOuter - 1.2}), Words: letter, Size: 9, Bold: true,
		Turn: s.tilt(theta),
	})
}

func near(places []geometry.Point, at geometry.Point, within float64) bool {
	for _, p := range places {
		if r2.Norm(r2.Sub(p, at)) < within {
			return true
		}
	}
	return false
}

// edges draws a piece's own edges: the paper's, to be cut along, or the line at
// which it meets its neighbour.
func (s sheet) edges(d *drawing.Drawing, p piece) {
	level := func(z float64, own bool) {
		d.Add(layerOf(own), drawing.Stroke{Points: s.arc(p.from, p.to, z), Pen: penOf(own)})
	}
	upright := func(theta float64, own bool) {
		d.Add(layerOf(own), drawing.Stroke{
			Points: []geometry.Point{s.paper.Forward(theta, p.low), s.paper.Forward(theta, p.high)}, Pen: penOf(own),
		})
	}
	level(p.low, p.lowest)
	level(p.high, p.highest)
	upright(p.from, p.first)
	upright(p.to, p.last)
	if !p.first {
		s.matchMarks(d, p, p.from, p.column-1)
	}
	if !p.last {
		s.matchMarks(d, p, p.to, p.column)
	}
	if p.last {
		s.tab(d, p)
	}
	s.rimArrow(d, p)
}

// matchMarks draws the crosses on a match line that two pieces are laid
// together by, and which pieces it joins.
func (s sheet) matchMarks(d *drawing.Drawing, p piece, theta float64, left int) {
	const arm, inset = 2.0, 4.0
	words := fmt.Sprintf("%d|%d", left, left+1)
	for _, z := range []float64{p.low + inset, p.high - inset} {
		aside := arm / s.paper.RadiusAt(z)
		d.Add(drawing.Marks,
			drawing.Stroke{Points: s.arc(theta-aside, theta+aside, z), Pen: drawing.Pen{Width: 0.25}},
			drawing.Stroke{Points: []geometry.Point{s.paper.Forward(theta, z-arm), s.paper.Forward(theta, z+arm)}, Pen: drawing.Pen{Width: 0.25}},
		)
		s.label(d, drawing.Text{
			At: s.paper.Forward(theta+0.8/s.paper.RadiusAt(z), z+0.8), Words: words, Size: 6, Turn: s.tilt(theta),
		})
	}
}

// tilt returns how far upright words lean at an angle round the paper.
func (s sheet) tilt(theta float64) float64 { return -theta * math.Sin(s.paper.HalfAngle) }

// label sets words on a white ground, legible over lines and hatching.
func (s sheet) label(d *drawing.Drawing, t drawing.Text) {
	const air = 0.4
	upright := t
	upright.At, upright.Turn = geometry.Point{}, 0
	ground := drawing.Rectangle(s.letters.Box(upright).Grow(air))
	sin, cos := math.Sincos(t.Turn)
	place := geometry.Motion{Cos: cos, Sin: sin, X: t.At.X, Y: t.At.Y}
	for i, q := range ground {
		ground[i] = place.Apply(q)
	}
	d.Add(drawing.Notes, drawing.Fill{Points: ground, Ink: drawing.White}, t)
}

func layerOf(own bool) drawing.Layer {
	if own {
		return drawing.Paper
	}
	return drawing.Marks
}

func penOf(own bool) drawing.Pen {
	if own {
		return edgePen()
	}
	return matchPen()
}

// tab draws the strip by which the paper's right edge is taped under its left.
func (s sheet) tab(d *drawing.Drawing, p piece) {
	const slope = 4.0
	low, high := p.low+slope, p.high-slope
	at := func(z float64) geometry.Point { return s.paper.Forward(p.to+tabWidth/s.paper.RadiusAt(z), z) }
	d.Add(drawing.Paper, drawing.Stroke{
		Points: []geometry.Point{s.paper.Forward(p.to, p.low), at(low), at(high), s.paper.Forward(p.to, p.high)},
		Pen:    edgePen(),
	})
	middle := (p.low + p.high) / 2
	theta := p.to + tabWidth/2/s.paper.RadiusAt(middle)
	d.Add(drawing.Notes, drawing.Text{
		At: s.paper.Forward(theta+0.8/s.paper.RadiusAt(middle), middle), Words: "tape under the other end", Size: 7,
		Align: drawing.Centre, Turn: math.Pi/2 + s.tilt(theta),
	})
}

// rimArrow draws an arrow to the rim beside the piece's first centre line.
func (s sheet) rimArrow(d *drawing.Drawing, p piece) {
	if !p.highest {
		return
	}
	z := p.high - 2
	theta := p.to - 5/s.paper.RadiusAt(z)
	aside := func(mm, down float64) geometry.Point {
		return s.paper.Forward(theta+mm/s.paper.RadiusAt(z), z-down)
	}
	d.Add(drawing.Marks,
		drawing.Stroke{Points: []geometry.Point{aside(0, 6.5), aside(0, 2)}, Pen: drawing.Pen{Width: 0.6}},
		drawing.Fill{Points: []geometry.Point{aside(-1.3, 3), aside(1.3, 3), aside(0, 0)}},
	)
	s.label(d, drawing.Text{
		At: aside(-1.8, 5.5), Words: "rim", Size: 9, Bold: true, Align: drawing.Right, Turn: s.tilt(theta),
	})
}

func reversed(points []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[len(points)-1-i] = p
	}
	return out
}
