package wrap

import (
	"github.com/tidwall/rtree"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// obstacles is what lies on a piece of paper already, and what words and numbers
// that are still to come keep clear of.
type obstacles struct {
	fonts *lettering.Letters
	taken rtree.RTreeGN[float64, obstacle]
}

type obstacle struct {
	geometry.Outline
	owner owner
}

// owner is the number of the cut that an obstacle belongs to, or one of the kinds
// below.
type owner int

// What belongs to no cut: words, ticks, rings and the paper's edges; the lines of the
// band and of the repeats; hatching; and the outlines of footprints.
const (
	otherInk owner = -iota
	faintInk
	hatching
	outlines
)

// clearance is the distance that words keep from what is there, in millimetres; below
// zero they may lie on it.
type clearance struct{ own, cuts, ink, faint, hatching, outlines float64 }

func (c clearance) from(whose, own owner) float64 {
	switch {
	case whose == otherInk:
		return c.ink
	case whose == faintInk:
		return c.faint
	case whose == hatching:
		return c.hatching
	case whose == outlines:
		return c.outlines
	case whose == own:
		return c.own
	}
	return c.cuts
}

// avoid adds what is drawn already, except cuts, which are added with their
// numbers.
func (o *obstacles) avoid(d drawing.Drawing) {
	for _, layer := range drawing.Layers() {
		for _, m := range d.On(layer) {
			switch m := m.(type) {
			case drawing.Text:
				o.text(m)
			case drawing.Fill:
				switch layer {
				case drawing.Marks:
					o.add(geometry.NewOutline(m.Points), otherInk)
				case drawing.Footprints:
					o.line(append(m.Points[:len(m.Points):len(m.Points)], m.Points[0]), outlines)
				}
			case drawing.Stroke:
				switch {
				case layer == drawing.Footprints:
					o.line(m.Points, outlines)
				case layer == drawing.Findings || layer == drawing.Paper || layer == drawing.Marks && m.Pen.Ink == drawing.Black:
					o.line(m.Points, otherInk)
				case layer == drawing.Marks && m.Pen.Same(hatchPen()):
					o.line(m.Points, hatching)
				case layer == drawing.Marks:
					o.line(m.Points, faintInk)
				}
			default: // words keep off all of it
				var all drawing.Drawing
				all.Add(layer, m)
				o.add(geometry.NewOutline(drawing.Rectangle(all.Box())), otherInk)
			}
		}
	}
}

func (o *obstacles) add(outline geometry.Outline, whose owner) {
	box := outline.Box()
	o.taken.Insert([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, obstacle{outline, whose})
}

func (o *obstacles) text(t drawing.Text) { o.add(o.figures(t), otherInk) }

// line takes in a line, a part at a time.
func (o *obstacles) line(points []geometry.Point, whose owner) {
	const stray = 0.05
	points = drawing.Thinned(points, stray)
	for i := 1; i < len(points); i++ {
		o.add(geometry.NewOutline([]geometry.Point{points[i-1], points[i]}), whose)
	}
}

// Heights of letters, as shares of their size: that of figures and capitals
// above the line they stand on, and that of tails below it.
const figureShare, tailShare = 0.72, 0.22

// figures returns the outline of a text's figures, or of its words without their
// tails.
func (o *obstacles) figures(t drawing.Text) geometry.Outline {
	width, tall := o.size(t)
	return o.turned(t, geometry.Box{Max: geometry.Point{X: width, Y: tall}})
}

// ground returns the outline of the paper that words stand on, with those of
// other lines up to some way above them: tails and a little air included.
func (o *obstacles) ground(t drawing.Text, above float64) geometry.Outline {
	const air = 0.3
	width, tall := o.size(t)
	tails := tailShare * t.Size * lettering.MillimetresPerPoint
	return o.turned(t, geometry.Box{Min: geometry.Point{Y: -tails}, Max: geometry.Point{X: width, Y: tall + above}}.Grow(air))
}

func (o *obstacles) turned(t drawing.Text, box geometry.Box) geometry.Outline {
	start := o.fonts.Start(t)
	corners, turn := drawing.Rectangle(box), r2.NewRotation(t.Turn, geometry.Point{})
	for i, q := range corners {
		corners[i] = r2.Add(start, turn.Rotate(q))
	}
	return geometry.NewOutline(corners)
}

func (o *obstacles) size(t drawing.Text) (width, tall float64) {
	return o.fonts.Width(t.Words, t.Size, t.Bold), figureShare * t.Size * lettering.MillimetresPerPoint
}

// clear reports whether an outline would stay clear of all that is there.
func (o *obstacles) clear(outline geometry.Outline, own owner, c clearance) bool {
	box := outline.Box().Grow(max(c.own, c.cuts, c.ink, c.faint, c.hatching, c.outlines))
	isFree := true
	o.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, there obstacle) bool {
		if least := c.from(there.owner, own); least >= 0 {
			off, _, _ := outline.Distance(there.Outline, least)
			isFree = off >= least
		}
		return isFree
	})
	return isFree
}
