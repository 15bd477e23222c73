package printing

import (
	"image/color"
	"math"

	"github.com/tdewolff/canvas"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// paint draws one layer's marks through canvas. It gives canvas polylines and
// words only: canvas's own arcs are not true to size.
func paint(to canvas.Renderer, marks []drawing.Mark, letters *lettering.Letters) error {
	ctx := canvas.NewContext(to)
	for i, m := range marks {
		switch m := m.(type) {
		case drawing.Stroke:
			stroke(ctx, m)
		case drawing.Fill:
			if i == 0 || !edged(marks[i-1]) {
				edges(ctx, marks[i:])
			}
			fill(ctx, m.Ink, m.Points)
		case drawing.Area:
			fill(ctx, m.Ink, m.Outlines...)
		case drawing.Text:
			words(ctx, m, letters)
		default:
			return drawing.Unknown(m)
		}
	}
	return nil
}

// edged reports whether a mark is a fill with an edge.
func edged(m drawing.Mark) bool {
	f, ok := m.(drawing.Fill)
	return ok && f.Edge.Width > 0
}

// edges draws the edges of the fills that marks begin with, which lie under all
// of them.
func edges(ctx *canvas.Context, marks []drawing.Mark) {
	for _, m := range marks {
		if !edged(m) {
			return
		}
		f := m.(drawing.Fill)
		stroke(ctx, drawing.Stroke{Points: f.Points, Closed: true, Pen: f.Edge})
	}
}

// fill fills the inside of outlines by canvas's own rule, nonzero winding.
func fill(ctx *canvas.Context, ink drawing.Ink, outlines ...[]geometry.Point) {
	ctx.SetFillColor(colour(ink))
	ctx.SetStrokeColor(canvas.Transparent)
	all := &canvas.Path{}
	for _, o := range outlines {
		all = all.Append(path(o, true))
	}
	ctx.DrawPath(0, 0, all)
}

func stroke(ctx *canvas.Context, s drawing.Stroke) {
	ctx.SetFillColor(canvas.Transparent)
	ctx.SetStrokeColor(colour(s.Pen.Ink))
	ctx.SetStrokeWidth(s.Pen.Width)
	ctx.SetStrokeJoiner(canvas.RoundJoin)
	ctx.SetStrokeCapper(canvas.RoundCap)
	if s.Pen.Cap == drawing.FlatCap {
		ctx.SetStrokeCapper(canvas.ButtCap)
	}
	// Dashes are lines of their own: canvas's leave out the gaps of a short line.
	if dashes := s.Dashes(); dashes != nil {
		ctx.SetStrokeCapper(canvas.ButtCap)
		all := &canvas.Path{}
		for _, d := range dashes {
			all = all.Append(path(d, false))
		}
		ctx.DrawPath(0, 0, all)
		return
	}
	ctx.DrawPath(0, 0, path(s.Points, s.Closed))
}

// words sets a text from its left end. When canvas centres or right-aligns a text in
// two scripts, it puts its parts on top of each other.
func words(ctx *canvas.Context, t drawing.Text, letters *lettering.Letters) {
	line := canvas.NewTextLine(letters.Face(t.Size, t.Bold, t.Ink), letters.Printable(t.Words), canvas.Left)
	start := letters.Start(t)
	ctx.Push()
	ctx.Translate(start.X, start.Y)
	if t.Turn != 0 {
		ctx.Rotate(t.Turn * 180 / math.Pi)
	}
	ctx.DrawText(0, 0, line)
	ctx.Pop()
}

// path gives canvas only the points that flatness needs, to a micrometre, which keeps
// files short: a circle stays true within 0.002 mm.
func path(points []geometry.Point, closed bool) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range drawing.Thinned(points, drawing.Flatness) {
		if i == 0 {
			p.MoveTo(micrometre(q.X), micrometre(q.Y))
		} else {
			p.LineTo(micrometre(q.X), micrometre(q.Y))
		}
	}
	if closed {
		p.Close()
	}
	return p
}

func colour(ink drawing.Ink) color.RGBA {
	red, green, blue := ink.RGB()
	return color.RGBA{red, green, blue, 255}
}

func micrometre(x float64) float64 { return math.Round(1000*x) / 1000 }
