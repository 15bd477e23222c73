package picture

import (
	"context"
	"fmt"
	"io"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// Options is how a glass is to be looked at.
type Options struct {
	// Turn is the angle on the glass that faces the eye, in radians: 0 is the
	// middle of repeat 1.
	Turn float64
	// Tilt is the angle the eye looks down at, from 0, straight from the side, to
	// MaxTilt.
	Tilt float64
	// Round sets four views side by side, each turned on by a quarter.
	Round bool
	// Findings rings what the check found.
	Findings bool
	// Base looks at the underside from straight below, with Turn at the top.
	Base bool
}

// Tilts, in radians.
const (
	DefaultTilt = 7 * math.Pi / 180
	MaxTilt     = 30 * math.Pi / 180
)

// Picture is a picture of a cut glass, ready to be written.
type Picture struct {
	Title string

	layout  layout
	letters *lettering.Letters
}

// New draws a picture of a plan's glass. The error may be the context's.
func New(ctx context.Context, p *pattern.Plan, o Options) (*Picture, error) {
	letters, err := lettering.Load()
	if err != nil {
		return nil, err
	}
	if o.Base {
		return newUnderside(ctx, p, o, letters)
	}
	turns := []float64{o.Turn}
	if o.Round {
		turns = []float64{o.Turn, o.Turn + math.Pi/2, o.Turn + math.Pi, o.Turn + 3*math.Pi/2}
	}
	l := layout{plan: p, options: o, letters: letters}
	walls := newWalls(p)
	for _, turn := range turns {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l.views = append(l.views, newView(p, walls, stance{turn, math.Tan(o.Tilt)}, o.Findings))
	}
	return &Picture{fmt.Sprintf("%s, picture of %s", p.Job.Title, p.Blank.Name), l, letters}, nil
}

// SVG writes the picture, one group a layer: the glass on paper, the far cuts on
// footprints, what lies over them on marks, and the near cuts on cuts.
func (p *Picture) SVG(to io.Writer) error {
	return printing.SVG(to, p.Title, p.layout.page(false), p.letters)
}

// PDF writes the picture on a page of its own size, with bars to check it by.
func (p *Picture) PDF(to io.Writer) error {
	return printing.PDF(to, p.Title, []printing.Page{p.layout.page(true)}, p.letters)
}

// PNG writes the picture in dots: 200 to the inch, or fewer for a very large picture.
func (p *Picture) PNG(to io.Writer) error {
	const fine, most = 200.0, 16e6
	page := p.layout.page(false)
	inches2 := page.Width * page.Height / (geometry.MillimetresPerInch * geometry.MillimetresPerInch)
	return printing.PNG(to, page, min(fine, math.Sqrt(most/inches2)), p.letters)
}

// view is the glass from one side.
type view struct {
	turn    float64
	drawing drawing.Drawing // its axis at x = 0, the middle of its foot at y = 0
	box     geometry.Box    // round the glass
}

func newView(p *pattern.Plan, w walls, s stance, findings bool) view {
	v := view{turn: s.turn}
	glass := newVessel(p.Blank, s)
	c := cuts{p, w, glass}
	glass.behind(&v.drawing)
	c.far(&v.drawing)
	glass.before(&v.drawing)
	c.near(&v.drawing)
	if findings {
		rings{p, s}.draw(&v.drawing)
	}
	v.box = geometry.BoxOf(glass.outside.outline()...)
	return v
}
