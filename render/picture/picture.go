package picture

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

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

	glasses int // how many are drawn on the same picture
}

// Tilts, in radians.
const (
	DefaultTilt = 7 * math.Pi / 180
	MaxTilt     = 30 * math.Pi / 180
)

// Picture is a picture of a cut glass, ready to be written.
type Picture struct {
	Title string

	layouts []layout // of its glasses
	letters *lettering.Letters
}

// New draws a picture of a plan's glass. The error may be the context's.
func New(ctx context.Context, p *pattern.Plan, o Options) (*Picture, error) {
	return Beside(ctx, []Glass{{Plan: p}}, o)
}

// Glass is one of several glasses in a picture: its plan, and what its job's file is called.
type Glass struct {
	Plan *pattern.Plan
	File string
}

// Beside draws glasses beside each other on one table, all true to size, the first at the
// left, each with its own title. Where each is seen from four sides, they stand below each
// other. There is at least one. The error may be the context's.
func Beside(ctx context.Context, glasses []Glass, o Options) (*Picture, error) {
	letters, err := lettering.Load()
	if err != nil {
		return nil, err
	}
	picture := &Picture{letters: letters}
	var titles []string
	o.glasses = len(glasses)
	for _, g := range glasses {
		l, err := newLayout(ctx, g, o, letters)
		if err != nil {
			return nil, err
		}
		picture.layouts = append(picture.layouts, l)
		titles = append(titles, fmt.Sprintf("%s, picture of %s", g.Plan.Job.Title, g.Plan.Blank.Name+l.face()))
	}
	picture.Title = strings.Join(titles, "; ")
	return picture, nil
}

// newLayout draws the views of one glass.
func newLayout(ctx context.Context, g Glass, o Options, letters *lettering.Letters) (layout, error) {
	if o.Base {
		return newUnderside(ctx, g, o, letters)
	}
	turns := []float64{o.Turn}
	if o.Round {
		turns = []float64{o.Turn, o.Turn + math.Pi/2, o.Turn + math.Pi, o.Turn + 3*math.Pi/2}
	}
	l := layout{plan: g.Plan, file: g.File, options: o, letters: letters}
	glasses := max(o.glasses, len(g.Plan.Job.Blanks)) // a set's other pictures are drawn as finely
	walls := newWalls(g.Plan, detailOf(g.Plan, len(turns)*glasses))
	for _, turn := range turns {
		if err := ctx.Err(); err != nil {
			return l, err
		}
		l.views = append(l.views, newView(g.Plan, walls, stance{turn, math.Tan(o.Tilt)}, o.Findings))
	}
	return l, nil
}

// SVG writes the picture, one group a layer: the glass on paper, the far cuts on
// footprints, what lies over them on marks, and the near cuts on cuts.
func (p *Picture) SVG(to io.Writer) error {
	return printing.SVG(to, p.Title, p.board().page(false), p.letters)
}

// PDF writes the picture on a page of its own size, with bars to check it by.
func (p *Picture) PDF(to io.Writer) error {
	return printing.PDF(to, p.Title, []printing.Page{p.board().page(true)}, p.letters)
}

// PNG writes the picture in dots: 200 to the inch, or fewer for a very large picture.
func (p *Picture) PNG(to io.Writer) error {
	const fine, most = 200.0, 16e6
	page := p.board().page(false)
	inches2 := page.Width * page.Height / (geometry.MillimetresPerInch * geometry.MillimetresPerInch)
	return printing.PNG(to, page, min(fine, math.Sqrt(most/inches2)), p.letters)
}

// board sets out the glasses.
func (p *Picture) board() board {
	if p.layouts[0].options.Round {
		var rows board
		for i := range p.layouts {
			rows = append(rows, row{p.layouts[i : i+1]})
		}
		return rows
	}
	return board{row{p.layouts}}
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
