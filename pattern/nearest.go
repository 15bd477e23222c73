package pattern

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
)

// closeLines is a quick test for a motif that is far too dense. Of its cuts that don't
// join, it cuts only the two whose centre lines come nearest, and reports whether they
// crowd. If they don't, others still may. The motif is drawn and placed.
func (p *Plan) closeLines(i int, drawn drawing, placed *figure) bool {
	const few = 12 // fewer cuts are soon cut: no test is needed
	if p.land(i, i) == 0 || len(drawn.cuts) < few {
		return false
	}
	pair, ok := drawn.nearest()
	if !ok {
		return false
	}
	lines, cutter := placed.shapes[0].lines, p.cutter()
	cut := func(n int) groove.Groove { return p.cut(cutter, i, placed, n, lines[n]) }
	land := p.landOf(partSide{i, drawn.cuts[pair[0]].Part}, partSide{i, drawn.cuts[pair[1]].Part})
	two := []groove.Groove{cut(pair[0]), cut(pair[1])}
	for _, joined := range rooted(drawn.motif.Kind.Name, []motifs.Cut{drawn.cuts[pair[0]], drawn.cuts[pair[1]]}, two) {
		if joined != nil {
			return false
		}
	}
	apart, _, _ := distance(&two[0], &two[1], land)
	return apart < land && Finding{Kind: Crowded, Measured: apart, Wanted: land}.counts()
}

// nearest returns the two cuts of a motif that don't join and whose lines come nearest; of
// several equally near pairs, the first. ok is false where all join.
func (d *drawing) nearest() (pair [2]int, ok bool) {
	looks := make([]sketch, len(d.cuts))
	for i, c := range d.cuts {
		looks[i] = d.sketch(c, i)
	}
	slices.SortFunc(looks, func(a, b sketch) int { return cmp.Or(cmp.Compare(a.box.Min.X, b.box.Min.X), a.cut-b.cut) })
	near := math.Inf(1)
	for i, a := range looks {
		for _, b := range looks[i+1:] {
			if aside := b.box.Min.X - a.box.Max.X; aside > 0 && aside*aside > near {
				break // all the rest begin further right
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

// sketch is a few points of a cut's line, for closeLines.
type sketch struct {
	cut    int
	points [spread]geometry.Point
	box    geometry.Box
}

func (s *setting) sketch(c motifs.Cut, i int) sketch {
	look := sketch{cut: i}
	for n := range spread {
		look.points[n] = s.local(c.At(float64(n) / (spread - 1)))
	}
	look.box = geometry.BoxOf(look.points[:]...)
	return look
}

// spread is the number of points in a sketch.
const spread = 7

// apart returns the least squared distance between points of two lists.
func apart(a, b [spread]geometry.Point) float64 {
	least := math.Inf(1)
	for _, p := range a {
		for _, q := range b {
			least = min(least, r2.Norm2(r2.Sub(p, q)))
		}
	}
	return least
}
