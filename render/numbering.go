package render

import (
	"fmt"
	"math"

	"github.com/tidwall/rtree"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// numbering writes beside each cut on a piece of paper the number it has in the
// lists. A number stands close to its own line and clear of the others, so that
// nobody has to guess whose it is.
type numbering struct {
	letters *lettering.Letters
	taken   rtree.RTreeGN[float64, obstacle]
}

// obstacle is something on the paper that a number must not stand on.
type obstacle struct {
	geometry.Outline
	owner owner
}

// owner is whose line an obstacle is a part of: the number of a cut, or none's.
type owner int

// otherInk is words, ticks, rings and the paper's edges.
const otherInk owner = 0

// ways are how a number may stand, the best first: its size in points, and how
// far it keeps from other cuts, in millimetres.
func ways() []struct{ size, clear float64 } {
	return []struct{ size, clear float64 }{{6, 5}, {6, 3}, {6, 1.5}, {6, 0.8}, {6, 0.35}, {5, 0.35}, {4, 0.2}}
}

// Distances from a number to its own line, and the height of its figures as a
// share of their size.
const (
	besideOwn   = 0.45
	clearOfOwn  = 0.3 // a bent line comes nearer than where it is nearest to the middle
	figureShare = 0.72
)

// numbers writes the numbers of the cuts that lie on a piece's strips. One that
// finds no room is left out.
func (s *sheet) numbers(d *drawing.Drawing, strips []strip) {
	n := numbering{letters: s.letters}
	n.avoid(*d)
	var lines []numbered
	for _, st := range strips {
		own := s.numbered(st)
		for _, l := range own {
			n.line(l.whole, owner(l.number))
		}
		region := st.region(st.from, st.to, st.low, st.high)
		n.line(append(region, region[0]), otherInk)
		paper := geometry.NewOutline(drawing.Thinned(region, 0.02))
		for i := range own {
			own[i].paper = paper
		}
		lines = append(lines, own...)
	}
	for _, l := range lines {
		if len(l.own) < 2 {
			continue
		}
		if text, ok := n.place(l); ok {
			d.Add(drawing.Notes, text)
			n.text(text)
		}
	}
}

// numbered is a cut's line as it lies on a strip.
type numbered struct {
	number int
	tilt   float64
	whole  []geometry.Point // with what lies beyond the strip's edges
	own    []geometry.Point // the part that is the strip's own, if it is large enough to bear the number
	paper  geometry.Outline // the strip
}

// numbered returns the lines of the cuts that a strip shows.
func (s *sheet) numbered(st strip) []numbered {
	const worth = 4.0 // mm of a line that bears its number, or else half of it
	from, to, low, high := s.shown(st)
	period := float64(s.plan.Period) * s.plan.Pitch()
	var all []numbered
	for i, t := range s.traces {
		if t.box.Min.Y > high || t.box.Max.Y < low {
			continue
		}
		around := s.plan.Around(s.plan.Cuts[i].ID)
		for turns := math.Ceil((from - t.box.Max.X) / period); t.box.Min.X+turns*period <= to; turns++ {
			l := numbered{number: around[modulo(int(turns), len(around))]}
			var own []geometry.Point
			for _, q := range t.line {
				q.X += turns * period
				at := st.at(q.X, q.Y)
				l.whole = append(l.whole, at)
				if q.X >= st.from && q.X <= st.to && q.Y >= st.low && q.Y <= st.high {
					if own == nil {
						l.tilt = st.tilt(q.X, q.Y)
					}
					own = append(own, at)
				}
			}
			if length := lengthOf(own); length > min(worth, 0.49*lengthOf(l.whole)) {
				l.own = own
			}
			all = append(all, l)
		}
	}
	return all
}

func modulo(i, n int) int { return (i%n + n) % n }

func lengthOf(line []geometry.Point) float64 {
	length := 0.0
	for i := 1; i < len(line); i++ {
		length += r2.Norm(r2.Sub(line[i], line[i-1]))
	}
	return length
}

// avoid takes in what is drawn already: words, findings, edges, and all marks
// but hatching.
func (n *numbering) avoid(d drawing.Drawing) {
	for _, layer := range drawing.Layers() {
		for _, m := range d.On(layer) {
			switch m := m.(type) {
			case drawing.Text:
				n.text(m)
			case drawing.Fill:
				if layer == drawing.Marks {
					n.add(geometry.NewOutline(m.Points), otherInk)
				}
			case drawing.Stroke:
				if layer == drawing.Findings || layer == drawing.Paper || layer == drawing.Marks && !m.Pen.Same(hatchPen()) {
					n.line(m.Points, otherInk)
				}
			}
		}
	}
}

func (n *numbering) add(o geometry.Outline, whose owner) {
	box := o.Box()
	n.taken.Insert([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, obstacle{o, whose})
}

func (n *numbering) text(t drawing.Text) { n.add(n.ground(t), otherInk) }

// line takes in a line, a part at a time.
func (n *numbering) line(points []geometry.Point, whose owner) {
	const stray = 0.05
	points = drawing.Thinned(points, stray)
	for i := 1; i < len(points); i++ {
		n.add(geometry.NewOutline([]geometry.Point{points[i-1], points[i]}), whose)
	}
}

// ground returns the outline of the paper that a text stands on.
func (n *numbering) ground(t drawing.Text) geometry.Outline {
	width, tall := n.size(t)
	start := n.letters.Start(t)
	corners := drawing.Rectangle(geometry.Box{Max: geometry.Point{X: width, Y: tall}})
	for i, q := range corners {
		corners[i] = r2.Add(start, r2.Rotate(q, t.Turn, geometry.Point{}))
	}
	return geometry.NewOutline(corners)
}

func (n *numbering) size(t drawing.Text) (width, tall float64) {
	return n.letters.Width(t.Words, t.Size, t.Bold), figureShare * t.Size * lettering.MillimetresPerPoint
}

// place finds where a cut's number stands: the first way that is clear, at the
// first of the places beside its line.
func (n *numbering) place(l numbered) (drawing.Text, bool) {
	for _, way := range ways() {
		text := drawing.Text{Words: fmt.Sprint(l.number), Size: way.size, Align: drawing.Centre, Turn: l.tilt}
		width, tall := n.size(text)
		for _, middle := range beside(l.own, l.tilt, width, tall) {
			// Words stand on their baseline.
			text.At = r2.Add(middle, r2.Rotate(geometry.Point{Y: -tall / 2}, l.tilt, geometry.Point{}))
			if l.paper.Contains(middle) && n.clear(text, owner(l.number), way.clear) {
				return text, true
			}
		}
	}
	return drawing.Text{}, false
}

// beside returns the places beside a line for the middle of a number of a size:
// to both sides of the line's middle first, and beyond its two ends last.
func beside(line []geometry.Point, tilt, width, tall float64) []geometry.Point {
	length := lengthOf(line)
	var places []geometry.Point
	step := func(on, way geometry.Point) {
		// How far the number reaches towards the line.
		level := r2.Rotate(way, -tilt, geometry.Point{})
		reach := (math.Abs(level.X)*width+math.Abs(level.Y)*tall)/2 + besideOwn
		places = append(places, r2.Add(on, r2.Scale(reach, way)))
	}
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		on, ahead := along(line, share*length)
		side := geometry.Point{X: -ahead.Y, Y: ahead.X}
		step(on, side)
		step(on, r2.Scale(-1, side))
	}
	on, ahead := along(line, length)
	step(on, ahead)
	on, ahead = along(line, 0)
	step(on, r2.Scale(-1, ahead))
	return places
}

// along returns the place some way along a line, and the direction there.
func along(line []geometry.Point, way float64) (at, ahead geometry.Point) {
	for i := 1; ; i++ {
		part := r2.Sub(line[i], line[i-1])
		length := r2.Norm(part)
		if length >= way && length > 0 || i+1 == len(line) {
			if length == 0 {
				return line[i], geometry.Point{X: 1}
			}
			return r2.Add(line[i-1], r2.Scale(min(way/length, 1), part)), r2.Scale(1/length, part)
		}
		way -= length
	}
}

// clear reports whether a number would stand clear of all that is there: of its
// own line and of the other cuts by their own distances.
func (n *numbering) clear(t drawing.Text, own owner, others float64) bool {
	ground := n.ground(t)
	box := ground.Box().Grow(others)
	clear := true
	n.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, o obstacle) bool {
		least := others
		if o.owner == own || o.owner == otherInk {
			least = min(clearOfOwn, others)
		}
		off, _, _ := ground.Distance(o.Outline, least)
		clear = off >= least
		return clear
	})
	return clear
}
