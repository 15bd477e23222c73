package wrap

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
)

// tile is a rectangle of round paper that goes on a page.
type tile struct {
	box           geometry.Box
	row, column   int // from the upper left, from 0
	rows, columns int
	number        int
}

// shown returns the part of the paper that a tile shows: a little of its neighbours too.
func (t tile) shown() geometry.Box {
	box := t.box
	if t.column > 0 {
		box.Min.X -= overlap
	}
	if t.column < t.columns-1 {
		box.Max.X += overlap
	}
	if t.row > 0 {
		box.Max.Y += overlap
	}
	if t.row < t.rows-1 {
		box.Min.Y -= overlap
	}
	return box
}

// tiled cuts the paper into the fewest tiles that each go on a page, portrait or landscape.
func (a roundComposer) tiled() (tiles []tile, f page.Format, ok bool) {
	for n := 1; n <= maxPieces; n++ {
		for rows := 1; rows <= min(n, maxRows); rows++ {
			if n%rows != 0 {
				continue
			}
			tiles := cutUp(a.paper.box(), rows, n/rows)
			for _, f := range []page.Format{a.options.Portrait(), a.options.Landscape()} {
				f = a.Fit(f, a.head("page 88 of 88", tiles[0]))
				if fitAll(tiles, f) {
					return tiles, f, true
				}
			}
		}
	}
	return nil, f, false
}

func fitAll(tiles []tile, f page.Format) bool {
	for _, t := range tiles {
		if _, ok := f.Place(t.shown()); !ok {
			return false
		}
	}
	return true
}

// cutUp divides a box into rows and columns of tiles, numbered in reading order.
func cutUp(box geometry.Box, rows, columns int) []tile {
	width, height := box.Size()
	width, height = width/float64(columns), height/float64(rows)
	var all []tile
	for row := range rows {
		for column := range columns {
			corner := geometry.Point{X: box.Min.X + float64(column)*width, Y: box.Max.Y - float64(row+1)*height}
			all = append(all, tile{
				geometry.Box{Min: corner, Max: r2.Add(corner, geometry.Point{X: width, Y: height})}, row, column, rows, columns, len(all) + 1,
			})
		}
	}
	return all
}

// of returns what a tile shows of the paper, with the match lines at which it meets others.
func (t tile) of(drawn drawing.Drawing) drawing.Drawing {
	if t.rows*t.columns == 1 {
		return drawn
	}
	d := drawn.Clipped(drawing.BoxWindow(t.shown()))
	for _, side := range []struct {
		there      bool
		from, to   geometry.Point
		one, other int
	}{
		{t.column > 0, t.box.Min, geometry.Point{X: t.box.Min.X, Y: t.box.Max.Y}, t.number - 1, t.number},
		{t.column < t.columns-1, geometry.Point{X: t.box.Max.X, Y: t.box.Min.Y}, t.box.Max, t.number, t.number + 1},
		{t.row > 0, geometry.Point{X: t.box.Min.X, Y: t.box.Max.Y}, t.box.Max, t.number - t.columns, t.number},
		{t.row < t.rows-1, t.box.Min, geometry.Point{X: t.box.Max.X, Y: t.box.Min.Y}, t.number, t.number + t.columns},
	} {
		if side.there {
			meets(&d, side.from, side.to, meet(side.one, side.other))
		}
	}
	return d
}

// meets draws a match line, with the crosses by which two pieces are laid together, the same
// on both.
func meets(d *drawing.Drawing, from, to geometry.Point, words string) {
	pen := drawing.Pen{Width: 0.25}
	line := r2.Sub(to, from)
	d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{from, to}, Pen: matchPen()})
	for _, share := range []float64{0.2, 0.8} {
		at := r2.Add(from, r2.Scale(share, line))
		for _, arm := range []geometry.Point{{X: crossArm}, {Y: crossArm}} {
			d.Add(drawing.Marks, drawing.Stroke{Points: []geometry.Point{r2.Sub(at, arm), r2.Add(at, arm)}, Pen: pen})
		}
	}
	text := drawing.Text{At: r2.Add(from, r2.Scale(0.5, line)), Words: words, Size: 6, Align: drawing.Centre}
	if math.Abs(line.Y) > math.Abs(line.X) {
		text.Turn = math.Pi / 2
	}
	d.Add(drawing.Notes, text)
}
