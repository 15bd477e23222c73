package picture

import (
	"roundlay/pattern"
	"roundlay/pattern/groove"
)

// detail is how finely the walls of grooves are divided into facets. A picture of thousands of
// grooves has coarser ones: each is small on it, and what hides what is sought among all.
type detail struct {
	stray  float64 // mm, how far straight edges between ribs may be from the footprint's
	apart  float64 // mm, between cross-sections of a cut along which the wheel was rolled
	parts  int     // of such a cross-section
	panel  []float64
	hollow []float64 // the places of rungs on a flat wall and on a round one, as shares of the way to the edge
}

// details lists them, the finest first.
func details() []detail {
	return []detail{
		{0.01, 1, 12, []float64{1, 0.5, 0}, []float64{1, 0.7, 0.35, 0}},
		{0.04, 2, 6, []float64{1, 0.5, 0}, []float64{1, 0.5, 0}},
		{0.16, 4, 4, []float64{1, 0}, []float64{1, 0}},
	}
}

// What a picture may be made of: facets of a period, of which each is held against those it
// meets, and facets that are drawn, those of all periods in all views of all glasses.
const (
	maxFacets = 100e3
	maxDrawn  = 1e6
)

// detailOf returns the finest detail with which a plan stays within them, or else the coarsest.
// So many views are drawn of it, those of its sisters with them.
func detailOf(p *pattern.Plan, views int) detail {
	all := details()
	for _, d := range all[:len(all)-1] {
		if n := countFacets(p, d); n <= maxFacets && n*p.Periods()*views <= maxDrawn {
			return d
		}
	}
	return all[len(all)-1]
}

// countFacets returns how many facets the cuts of a period have, as far as they are needed to know
// that they are too many.
func countFacets(p *pattern.Plan, d detail) int {
	count := 0
	for _, c := range p.Cuts {
		wheel := p.Job.Rack[c.Wheel]
		ribs := len(ribs(c.Samples, d.stray))
		if rolledWide(*c.Groove, wheel) {
			ribs = int(c.Length/d.apart) + 2
		}
		count += 2 * (ribs - 1) * d.strips(*c.Groove, wheel)
		if count > maxFacets {
			break
		}
	}
	return count
}

// strips returns how many fields there are across a groove.
func (d detail) strips(g groove.Groove, w groove.Wheel) int {
	switch {
	case rolledWide(g, w):
		return d.parts * max(w.Mitres, 1)
	case w.Edge == groove.Gang:
		return 2 * w.Mitres
	case w.Edge == groove.Mitre:
		return 2
	case w.Edge == groove.Flat:
		return 2 * (len(d.panel) - 1)
	}
	return 2 * (len(d.hollow) - 1)
}
