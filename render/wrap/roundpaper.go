package wrap

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/report"
)

// roundPaper is the paper for the base of one blank: a disc as large as the base, drawn as
// the base is seen from below, with its middle on the origin. It lies flat, so it is true
// however thick the paper is.
type roundPaper struct {
	plan    *pattern.Plan // of the base
	above   int           // how many repeats the side has
	letters *lettering.Letters
	mirror  bool
	rings   []ring
	left    []int // the numbers of cuts that found no room
}

func (s *roundPaper) radius() float64 { return s.plan.Blank.BaseRadius() }

// box returns the box of the paper as it is drawn.
func (s *roundPaper) box() geometry.Box {
	const air = 0.5 // for its outline
	r := s.radius() + air
	return geometry.Box{Min: geometry.Point{X: -r, Y: -r}, Max: geometry.Point{X: r, Y: r}}
}

// at returns a place on the paper: 0 is up, and angles run to the right of there.
func at(theta, radius float64) geometry.Point {
	sin, cos := math.Sincos(theta)
	return geometry.Point{X: radius * sin, Y: radius * cos}
}

// draw draws all of the paper.
func (s *roundPaper) draw() drawing.Drawing {
	var d drawing.Drawing
	s.circles(&d)
	s.sectors(&d)
	s.ticks(&d)
	s.cross(&d)
	s.cuts(&d)
	s.findings(&d)
	d = d.EdgesFirst(drawing.Footprints)
	s.words(&d)
	if s.mirror {
		d = d.Mirrored()
	}
	return d
}

// circles draws the paper's outline, the ends of the band, and the punty mark's hollow.
func (s *roundPaper) circles(d *drawing.Drawing) {
	round := func(layer drawing.Layer, radius float64, pen drawing.Pen) {
		d.Add(layer, drawing.Stroke{Points: drawing.Circle(geometry.Point{}, radius), Closed: true, Pen: pen})
	}
	round(drawing.Paper, s.radius(), edgePen())
	for _, radius := range []float64{s.plan.Band.Foot, s.plan.Band.Top} {
		round(drawing.Marks, radius, bandPen())
	}
	if across := s.plan.Blank.Hollow.Across; across > 0 {
		round(drawing.Marks, across/2, drawing.Pen{Width: 0.25, Ink: 70, Dash: []float64{0.5, 0.9}})
	}
}

// sectors draws the lines between the sectors, and the middle line of each.
func (s *roundPaper) sectors(d *drawing.Drawing) {
	ray := func(theta float64, pen drawing.Pen) {
		d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{at(theta, s.inner()), at(theta, s.radius())}, Pen: pen})
	}
	pitch := s.plan.PitchAngle()
	for i := range s.plan.Repeats {
		if s.plan.Repeats > 1 {
			ray((float64(i)+0.5)*pitch, repeatPen())
		}
		ray(float64(i)*pitch, centrePen())
	}
}

// inner returns how near to the middle the lines of the sectors come.
func (s *roundPaper) inner() float64 { return min(s.plan.Band.Foot, s.radius()/4) }

// edgeTick is how long the ticks at the paper's edge are.
const edgeTick = 5.0

// ticks draws a tick at the edge for the middle of each repeat of the side, to meet the mark
// that was stepped there.
func (s *roundPaper) ticks(d *drawing.Drawing) {
	r := s.radius()
	long := min(edgeTick, r/4)
	for i := range s.above {
		theta := 2 * math.Pi * float64(i) / float64(s.above)
		d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{at(theta, r), at(theta, r-long)}, Pen: drawing.Pen{Width: 0.5, Cap: drawing.FlatCap}})
		aside := min(1.4, 2.2*r*math.Sin(math.Pi/float64(max(s.above, 2)))/4) / r
		d.Add(drawing.Marks, drawing.Fill{Points: []geometry.Point{at(theta-aside, r), at(theta, r-2.2), at(theta+aside, r)}})
	}
}

// cross draws the cross that is set on the middle of the base.
func (s *roundPaper) cross(d *drawing.Drawing) {
	long := min(5, s.radius()/4)
	for _, arm := range []geometry.Point{{X: long}, {Y: long}} {
		d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{r2.Scale(-1, arm), arm}, Pen: drawing.Pen{Width: 0.25}})
	}
}

// cuts draws the footprints at their true width and the lines to trace.
func (s *roundPaper) cuts(d *drawing.Drawing) {
	var cuts drawing.Drawing
	for _, c := range s.plan.All() {
		for _, o := range c.Outlines {
			cuts.Add(drawing.Footprints, drawing.Fill{Points: o.Points, Ink: footprintInk, Edge: grooveEdge()})
		}
		cuts.Add(drawing.Cuts, drawing.Stroke{Points: lineOf(c), Pen: cutPen(), Name: drawing.Name{
			ID:    fmt.Sprintf("cut-%d", c.ID),
			Title: fmt.Sprintf("Cut %d, repeat %d of the base: %s, %s", c.ID, c.Repeat, s.plan.Job.Motifs[c.Motif].Called(), c.Part),
		}})
	}
	d.Append(cuts.Thinned(drawing.Footprints, footprintFlatness))
}

func lineOf(c pattern.Cut) []geometry.Point {
	line := make([]geometry.Point, len(c.Samples))
	for i, sample := range c.Samples {
		line[i] = sample.At
	}
	return line
}

// ring notes where findings are ringed, those near one another together: the first of those
// that report.Listed lists.
func (s *roundPaper) ring() {
	const most, within = 60, ringOuter - 0.3
	told, _ := report.Listed(s.plan)
	for _, g := range told {
		for _, f := range g.Findings {
			i := slices.IndexFunc(s.rings, func(r ring) bool {
				return r2.Norm(r2.Sub(at(r.theta, r.height), at(f.Theta, f.Height))) < within
			})
			if i < 0 && len(s.rings) < most {
				i = len(s.rings)
				s.rings = append(s.rings, ring{theta: f.Theta, height: f.Height})
			}
			if i >= 0 && !slices.Contains(s.rings[i].letters, g.Letter) {
				s.rings[i].letters = append(s.rings[i].letters, g.Letter)
			}
		}
	}
}

// findings draws the rings, in every period.
func (s *roundPaper) findings(d *drawing.Drawing) {
	paper := geometry.NewOutline(drawing.Circle(geometry.Point{}, s.radius()))
	for _, r := range s.rings {
		for turns := range s.plan.Periods() {
			d.Add(drawing.Findings, ringMark().On(paper, s.ringAt(r, turns))...)
		}
	}
}

func (s *roundPaper) ringAt(r ring, turns int) geometry.Point {
	return at(r.theta+float64(turns*s.plan.Period)*s.plan.PitchAngle(), r.height)
}

// words writes the numbers of the ticks, of the sectors and of the cuts, and the letters of the
// rings, where they hide nothing.
func (s *roundPaper) words(d *drawing.Drawing) {
	o := &obstacles{fonts: s.letters}
	o.avoid(*d)
	paper := geometry.NewOutline(drawing.Circle(geometry.Point{}, s.radius()-0.4))
	var lines []numbered
	for _, c := range s.plan.All() {
		line := lineOf(c)
		o.line(line, owner(c.ID))
		lines = append(lines, numbered{number: c.ID, whole: line, own: line, wide: widest(c), paper: paper})
	}
	for i := range s.above {
		theta := 2 * math.Pi * float64(i) / float64(s.above)
		o.near(d, paper, at(theta, s.radius()-edgeTick/2), drawing.Text{Words: fmt.Sprint(i + 1), Size: 7, Bold: true}, drawing.Notes, 1.8)
	}
	for _, r := range s.rings {
		for turns := range s.plan.Periods() {
			centre, text := s.ringAt(r, turns), drawing.Text{Words: strings.Join(r.letters, letterBreak), Size: 8, Bold: true}
			if o.near(d, paper, centre, text, drawing.Findings, ringOuter+1.6) {
				continue
			}
			// A letter on lines is better than none.
			text.At, text.Align = r2.Add(centre, geometry.Point{Y: -1}), drawing.Centre
			d.Add(drawing.Findings, text)
			o.text(text)
		}
	}
	for i := range s.plan.Repeats {
		theta := float64(i) * s.plan.PitchAngle()
		o.near(d, paper, at(theta, s.plan.Band.Top-1), drawing.Text{Words: fmt.Sprint(i + 1), Size: 6, Ink: 70}, drawing.Notes, 1.6)
	}
	o.near(d, paper, geometry.Point{Y: -s.radius() / 2}, drawing.Text{Words: s.plan.Blank.Name, Size: 6}, drawing.Notes, 1)
	s.left = o.numbers(d, lines).left
}

// near writes words beside a place, at the first distance from it and on the first side where
// they hide nothing. Where there is no room it reports that it didn't.
func (o *obstacles) near(d *drawing.Drawing, paper geometry.Outline, place geometry.Point, text drawing.Text, layer drawing.Layer, off float64) bool {
	const isFree = 0.3
	text.Align = drawing.Centre
	width, tall := o.size(text)
	c := clearance{own: isFree, cuts: isFree, ink: isFree, faint: 0.1, hatching: -1, outlines: 0.1}
	for _, faint := range []float64{0.1, -1} {
		c.faint = faint
		for _, far := range []float64{0, 0.8, 2, 3.5, 6} {
			for k := range 16 {
				way := at(float64(k)*math.Pi/8+math.Pi/16, 1)
				middle := r2.Add(place, r2.Scale(off+far+reach(way, 0, width, tall)-tall/2, way))
				text.At = r2.Sub(middle, geometry.Point{Y: tall / 2})
				if outline := o.figures(text); paper.Contains(middle) && o.clear(outline, otherInk, c) {
					d.Add(layer, text)
					o.text(text)
					return true
				}
			}
		}
	}
	return false
}
