package wrap

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// callout is a number at a distance from its cut, and the line that leads to it.
type callout struct {
	text   drawing.Text
	leader []geometry.Point // from the cut
}

const (
	leaderWidth = 0.15
	leaderDot   = 0.45 // the radius of the dot on the cut, whose line is half as wide
)

// maxCallouts is how many numbers are tried as call-outs on one piece. Nobody could
// follow more, and each takes a search all round its cut.
const maxCallouts = 60

// callout finds room for the number of a cut that has none beside it: as near as
// possible, where each cut that the leader crosses counts as 5 mm.
func (o *obstacles) callout(l numbered) (found callout, ok bool) {
	const air = 0.3
	least := math.Inf(1)
	length := lengthOf(l.own)
	for _, size := range []float64{6, 5} {
		text := drawing.Text{Words: fmt.Sprint(l.number), Size: size, Align: drawing.Centre, Turn: l.tilt}
		width, tall := o.size(text)
		for _, far := range []float64{1.5, 2.5, 4, 6, 8, 10, 13} {
			if far >= least {
				return found, ok // all that is left is worse
			}
			for _, share := range []float64{0.5, 0.3, 0.7, 0.1, 0.9} {
				on, _ := along(l.own, share*length)
				for k := range 12 {
					way := r2.Rotate(geometry.Point{X: 1}, l.tilt+float64(k)*math.Pi/6, geometry.Point{})
					middle := r2.Add(on, r2.Scale(far+air+reach(way, l.tilt, width, tall), way))
					text.At = r2.Add(middle, r2.Rotate(geometry.Point{Y: -tall / 2}, l.tilt, geometry.Point{}))
					c := callout{text, []geometry.Point{on, r2.Add(on, r2.Scale(far, way))}}
					if !l.paper.Contains(middle) || !o.free(c) {
						continue
					}
					if score := far + 5*float64(o.crossed(c.leader, owner(l.number))); score < least {
						found, least, ok = c, score, true
					}
				}
			}
		}
	}
	return found, ok
}

// reach returns how far a number reaches from its middle, one way.
func reach(way geometry.Point, tilt, width, tall float64) float64 {
	level := r2.Rotate(way, -tilt, geometry.Point{})
	return (math.Abs(level.X)*width + math.Abs(level.Y)*tall) / 2
}

// free reports whether a call-out hides no cut, and runs into no other words.
func (o *obstacles) free(c callout) bool {
	const isFree = 0.35
	text := clearance{own: isFree, cuts: isFree, ink: isFree, faint: 0.2, hatching: -1, outlines: offOutline}
	leader := clearance{own: -1, cuts: -1, ink: 0.2, faint: -1, hatching: -1, outlines: -1}
	return o.clear(o.figures(c.text), otherInk, text) && o.clear(geometry.NewOutline(c.leader), otherInk, leader)
}

// crossed returns how many other cuts a leader meets.
func (o *obstacles) crossed(leader []geometry.Point, own owner) int {
	const touch = 0.1
	line := geometry.NewOutline(leader)
	box := line.Box().Grow(touch)
	met := map[owner]bool{}
	o.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, there obstacle) bool {
		if there.owner > 0 && there.owner != own {
			if off, _, _ := line.Distance(there.Outline, touch); off < touch {
				met[there.owner] = true
			}
		}
		return true
	})
	return len(met)
}

// draw adds a call-out to a drawing, and to what others keep clear of.
func (o *obstacles) draw(d *drawing.Drawing, c callout) {
	d.Add(drawing.Notes, drawing.Fill{Points: drawing.Circle(c.leader[0], leaderDot)},
		drawing.Stroke{Points: c.leader, Pen: drawing.Pen{Width: leaderWidth}}, c.text)
	o.line(c.leader, otherInk)
	o.text(c.text)
}
