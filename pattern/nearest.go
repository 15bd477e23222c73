package pattern

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

// closeLines reports whether two cuts of one motif's copy crowd one another: of
// those that don't join, the two whose centre lines come nearest. It cuts these
// two only, so that a motif far too dense is known by them. That they clear
// says nothing of the others.
func (p *Plan) closeLines(i int) bool {
	land := p.land(i, i)
	if land == 0 {
		return false
	}
	const few = 12           // cuts are soon cut
	drawn, _ := p.drawing(i) // it can be: drawable has tried
	if len(drawn.cuts) < few {
		return false
	}
	pair, ok := drawn.nearest()
	if !ok {
		return false
	}
	lines, cutter := p.lines(drawn), p.cutter()
	found, _, _ := distance(p.cut(cutter, i, lines[pair[0]]), p.cut(cutter, i, lines[pair[1]]), land)
	return found < land
}

// nearest returns the two cuts of a motif, of those that don't join, whose lines
// come nearest; of several that come as near, the first. ok is false where all join.
func (d drawing) nearest() (pair [2]int, ok bool) {
	looks := make([]sketch, len(d.cuts))
	for i, c := range d.cuts {
		looks[i] = d.sketch(c, i)
	}
	slices.SortFunc(looks, func(a, b sketch) int { return cmp.Or(cmp.Compare(a.box.Min.X, b.box.Min.X), a.cut-b.cut) })
	near := math.Inf(1)
	for i, a := range looks {
		for _, b := range looks[i+1:] {
			if aside := b.box.Min.X - a.box.Max.X; aside > 0 && aside*aside > near {
				break // and so do all that begin further right
			}
			if a.box.Distance2(b.box) > near {
				continue
			}
			off := apart(a.points, b.points)
			two := [2]int{min(a.cut, b.cut), max(a.cut, b.cut)}
			first := off < near || off == near && slices.Compare(two[:], pair[:]) < 0
			if first && !slices.Contains(d.cuts[two[0]].Joins, two[1]) {
				near, pair, ok = off, two, true
			}
		}
	}
	return pair, ok
}

// sketch is a cut's line as closeLines looks at it: a few of its points.
type sketch struct {
	cut    int
	points [spread]geometry.Point
	box    geometry.Box
}

func (s setting) sketch(c motifs.Cut, i int) sketch {
	look := sketch{cut: i}
	for n := range spread {
		look.points[n] = s.local(c.Path.At(float64(n) / (spread - 1)))
	}
	look.box = geometry.BoxOf(look.points[:]...)
	return look
}

// spread is how many points of a line apart looks at.
const spread = 7

// apart returns the least squared distance between two lists of points.
func apart(a, b [spread]geometry.Point) float64 {
	least := math.Inf(1)
	for _, p := range a {
		for _, q := range b {
			least = min(least, r2.Norm2(r2.Sub(p, q)))
		}
	}
	return least
}
