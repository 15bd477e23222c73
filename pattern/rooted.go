package pattern

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
)

// rooted lists, for each of a drawing's grooves in one repeat, the others that it joins
// because an end of one lies in the other. Drawn by hand, a blade seldom ends on the line of
// its stem; where its end lies in the stem's groove there is no land to keep between them, nor
// between two blades whose ends lie in it less than its width apart: no glass stands there.
// The kinds of the program name their joins themselves: for them it returns nil.
func rooted(kind string, cuts []motifs.Cut, grooves []groove.Groove) [][]int {
	if kind != motifs.DrawingName {
		return nil
	}
	all := make([][]int, len(grooves))
	join := func(a, b int) {
		if !slices.Contains(all[a], b) {
			all[a], all[b] = append(all[a], b), append(all[b], a)
		}
	}
	roots := rootsIn(cuts, grooves)
	for i, r := range roots {
		join(r.cut, r.in)
		for _, other := range roots[:i] {
			if other.in == r.in && other.cut != r.cut && r2.Norm(r2.Sub(other.at, r.at)) < grooves[r.in].Width {
				join(other.cut, r.cut)
			}
		}
	}
	return all
}

// root is the end of a cut that lies in another's groove.
type root struct {
	cut, in int
	at      geometry.Point
}

// rootsIn lists the ends of cuts that lie in other grooves.
func rootsIn(cuts []motifs.Cut, grooves []groove.Groove) []root {
	boxes := make([]geometry.Box, len(grooves))
	for i, g := range grooves {
		boxes[i] = geometry.EmptyBox()
		for _, o := range g.Outlines {
			boxes[i] = boxes[i].Union(o.Box())
		}
	}
	var all []root
	for a, g := range grooves {
		for end, at := range g.Ends() {
			for b := range grooves {
				if a != b && !cuts[a].Closed && boxes[b].Contains(at) && rootedIn(g, end, grooves[b]) {
					all = append(all, root{a, b, at})
				}
			}
		}
	}
	return all
}

// rootedIn reports whether an end of a groove, 0 its start, lies in another and the groove
// leads out of that one: beyond a third of its length none of its line is in the other. So
// two that run side by side don't join, however near.
func rootedIn(g groove.Groove, end int, in groove.Groove) bool {
	if !covers(in, g.Ends()[end]) {
		return false
	}
	return !slices.ContainsFunc(g.Samples, func(s groove.Sample) bool {
		from := s.Along
		if end == 1 {
			from = g.Length - s.Along
		}
		return from > g.Length/3 && covers(in, s.At)
	})
}

// covers reports whether a place on the chart lies in a groove's footprint.
func covers(g groove.Groove, at geometry.Point) bool {
	return slices.ContainsFunc(g.Outlines, func(o geometry.Outline) bool { return o.Contains(at) })
}
