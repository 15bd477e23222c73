package wrap

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// way is how a number may be set: its size in points, and its distances from other
// cuts in millimetres, the best first.
type way struct {
	size float64
	gaps []float64
}

// ways returns how a number may be set, the best first.
func ways() []way {
	return []way{{6, []float64{5, 3, 1.5, 0.8, 0.35}}, {5, []float64{0.35, 0.2}}}
}

// Distances from a number to its own line, and to the outlines of footprints.
const (
	besideOwn  = 0.45
	clearOfOwn = 0.3 // a bent line comes nearer than where it is nearest to the middle
	offOutline = 0.2
)

// numbers writes beside each cut the number it has in the lists. A number stands
// close to its own line and clear of the others, so that nobody has to guess whose
// it is. One that finds no room there is called out where there is some.
func (o *obstacles) numbers(d *drawing.Drawing, lines []numbered) (n numbering) {
	var crowded []numbered
	for _, l := range lines {
		if len(l.own) < 2 {
			continue
		}
		if text, ok := o.number(l); ok {
			d.Add(drawing.Notes, text)
			o.text(text)
			n.set = append(n.set, l.number)
		} else {
			crowded = append(crowded, l)
		}
	}
	tried := 0
	for _, l := range crowded {
		if slices.Contains(n.set, l.number) {
			continue // on another gore: one is enough
		}
		if tried++; tried <= maxCallouts {
			if c, ok := o.callout(l); ok {
				o.draw(d, c)
				n.set = append(n.set, l.number)
				continue
			}
		}
		n.left = append(n.left, l.number)
	}
	return n
}

// numbered is a cut's line as it lies on a strip.
type numbered struct {
	number int
	tilt   float64
	whole  []geometry.Point // with what lies beyond the strip's edges
	own    []geometry.Point // the part that is the strip's own, if it is large enough to bear the number
	wide   float64          // how far its footprint reaches to either side, at most
	paper  geometry.Outline // the strip
}

// numbered returns the lines of the cuts that a strip shows.
func (s *facePaper) numbered(st strip) []numbered {
	const worth = 4.0 // mm of a line that bears its number, or else half of it
	from, to, low, high := s.shown(st)
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	var all []numbered
	for i, t := range s.traces {
		if t.box.Min.Y > high || t.box.Max.Y < low {
			continue
		}
		around := s.plan.Around(s.plan.Cuts[i].ID)
		for turns := math.Ceil((from - t.box.Max.X) / period); t.box.Min.X+turns*period <= to; turns++ {
			l := numbered{number: around[modulo(int(turns), len(around))], wide: widest(s.plan.Cuts[i])}
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

// widest returns how far a cut's footprint reaches to either side of its line.
func widest(c pattern.Cut) (wide float64) {
	for _, at := range c.Samples {
		wide = max(wide, at.Left, at.Right)
	}
	return wide
}

// number finds where a cut's number stands: the first way that is clear, beside
// the footprint if it can and on its grey otherwise, at the first of the places
// along its line. An outline runs through a number only where nothing else is
// left.
func (o *obstacles) number(l numbered) (drawing.Text, bool) {
	isFree := max(besideOwn, l.wide+2*offOutline)
	for _, off := range []struct{ line, outline, cuts float64 }{
		{isFree, offOutline, isFree}, // no nearer to another's line than to its own
		{besideOwn, offOutline, 0}, {besideOwn, -1, 0},
	} {
		for _, way := range ways() {
			isClear := func(at numberPlace, gap float64) bool {
				cuts := max(gap, off.cuts)
				near := min(clearOfOwn, cuts)
				c := clearance{own: near, cuts: cuts, ink: near, faint: near, hatching: -1, outlines: off.outline}
				return o.clear(at.outline, owner(l.number), c)
			}
			if text, ok := roomiest(o.numberPlaces(l, way.size, off.line), way.gaps, isClear); ok {
				return text, true
			}
		}
	}
	return drawing.Text{}, false
}

// numberPlace is a place for a cut's number.
type numberPlace struct {
	text    drawing.Text
	outline geometry.Outline // of its figures
}

// numberPlaces returns the places on the paper for a cut's number of a size, at a
// distance from its line.
func (o *obstacles) numberPlaces(l numbered, size, line float64) []numberPlace {
	text := drawing.Text{Words: fmt.Sprint(l.number), Size: size, Align: drawing.Centre, Turn: l.tilt}
	width, tall := o.size(text)
	down := r2.Rotate(geometry.Point{Y: -tall / 2}, l.tilt, geometry.Point{}) // words stand on their baseline
	var places []numberPlace
	for _, middle := range beside(l.own, l.tilt, width, tall, line) {
		if l.paper.Contains(middle) {
			text.At = r2.Add(middle, down)
			places = append(places, numberPlace{text, o.figures(text)})
		}
	}
	return places
}

// roomiest returns the first place that is clear at the first of some gaps at which
// one is; each gap is less than the one before. What isn't clear at the last is
// clear at none, so most places of a crowded cut are looked at once.
func roomiest(places []numberPlace, gaps []float64, isClear func(at numberPlace, gap float64) bool) (drawing.Text, bool) {
	last := len(gaps) - 1
	places = slices.DeleteFunc(places, func(at numberPlace) bool { return !isClear(at, gaps[last]) })
	if len(places) == 0 {
		return drawing.Text{}, false
	}
	for _, gap := range gaps[:last] {
		if i := slices.IndexFunc(places, func(at numberPlace) bool { return isClear(at, gap) }); i >= 0 {
			return places[i].text, true
		}
	}
	return places[0].text, true
}

// beside returns the places beside a line for the middle of a number of a size at a
// distance off: first on both sides of the line's middle, last beyond its two ends.
func beside(line []geometry.Point, tilt, width, tall, off float64) []geometry.Point {
	length := lengthOf(line)
	var places []geometry.Point
	step := func(on, way geometry.Point) {
		places = append(places, r2.Add(on, r2.Scale(reach(way, tilt, width, tall)+off, way)))
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
