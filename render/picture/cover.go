package picture

import (
	"cmp"
	"slices"

	"github.com/tidwall/rtree"

	"roundlay/geometry"
	"roundlay/pattern"
)

// visible returns the facets of one period of a plan's cuts, each with the parts
// of it that are left: where grooves meet or cross, the deepest is all there is.
func visible(p *pattern.Plan, fine detail) []facet {
	var own []facet
	all := geometry.EmptyBox()
	for i, c := range p.Cuts {
		for _, f := range facets(i, *c.Groove, p.Job.Rack[c.Wheel], &p.Surface, fine) {
			own = append(own, f)
			all = all.Union(geometry.BoxOf(f.outline...))
		}
	}
	near := neighbours(p, own, all)
	var seen []facet
	for _, f := range own {
		for _, part := range f.left(near) {
			if part.area() > minArea {
				f.outline = part
				seen = append(seen, f)
			}
		}
	}
	return seen
}

// left returns the parts of a facet that no other hides. Where many lie on it, the
// deepest are taken first, so that hidden facets are found early.
func (f facet) left(near *rtree.RTreeGN[float64, facet]) []polygon {
	const many = 24
	var all []facet
	box := geometry.BoxOf(f.outline...)
	near.Search(cornerOf(box.Min), cornerOf(box.Max), func(_, _ [2]float64, g facet) bool {
		if g.cut != f.cut {
			all = append(all, g)
		}
		return true
	})
	if len(all) > many {
		middle := f.outline.middle()
		slices.SortStableFunc(all, func(a, b facet) int { return cmp.Compare(b.depth.on(middle), a.depth.on(middle)) })
	}
	parts := []polygon{f.outline}
	for _, g := range all {
		if !g.reaches(parts) {
			continue // all of f that is left lies elsewhere
		}
		if gone := f.under(g); gone != nil {
			parts = cutAway(parts, gone)
		}
		if len(parts) == 0 {
			break
		}
	}
	return parts
}

// neighbours returns all facets round the glass that may reach one of a period.
func neighbours(p *pattern.Plan, own []facet, all geometry.Box) *rtree.RTreeGN[float64, facet] {
	var tree rtree.RTreeGN[float64, facet]
	// Two motifs of double pitch, a pitch aside, meet three pitches on.
	const most = 3
	last := most
	if p.Surface.Level() {
		last = 0 // the whole of a base is one period: see underside
	}
	for turns := -last; turns <= last; turns++ {
		m := p.Surface.Turned(float64(turns*p.Period) * p.PitchAngle())
		for _, f := range own {
			if turns != 0 {
				f = f.moved(m)
			}
			f.cut += turns * len(p.Cuts)
			if box := geometry.BoxOf(f.outline...); box.Distance2(all) == 0 {
				tree.Insert(cornerOf(box.Min), cornerOf(box.Max), f)
			}
		}
	}
	return &tree
}

func cornerOf(p geometry.Point) [2]float64 { return [2]float64{p.X, p.Y} }

// reaches reports whether a facet's box meets that of any part.
func (f facet) reaches(parts []polygon) bool {
	box := geometry.BoxOf(f.outline...)
	return slices.ContainsFunc(parts, func(part polygon) bool { return geometry.BoxOf(part...).Distance2(box) == 0 })
}

// deeper reports whether a facet may be deeper than another somewhere on the other, both
// taken as planes.
func (f facet) deeper(other facet) bool {
	const sure = 1e-9 // mm: more than rounding makes of such depths, and less than a hair
	return slices.ContainsFunc(other.outline, func(q geometry.Point) bool {
		return f.depth.on(q)-other.depth.on(q) > -hair-sure
	})
}

// hair is a difference of depths, in mm, below which two grooves count as equally deep.
const hair = 1e-7

// under returns the part of a facet that is gone because another is deeper
// there. Of two equally deep the one of the earlier cut counts as deeper.
func (f facet) under(g facet) polygon {
	if f.cut == g.cut || !g.deeper(f) {
		return nil
	}
	both := f.outline.common(g.outline)
	if both == nil {
		return nil
	}
	least := hair
	if g.cut < f.cut {
		least = -hair
	}
	gone, _ := both.split(func(q geometry.Point) float64 { return g.depth.on(q) - f.depth.on(q) - least })
	if gone.area() < minArea {
		return nil
	}
	return gone
}

// cutAway returns what of the parts lies outside another polygon.
func cutAway(parts []polygon, gone polygon) []polygon {
	var left []polygon
	for _, part := range parts {
		if part.common(gone) == nil {
			left = append(left, part)
		} else {
			left = append(left, part.without(gone)...)
		}
	}
	return left
}
