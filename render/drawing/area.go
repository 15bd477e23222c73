package drawing

import "roundlay/geometry"

// Area is the inside of several polygons in one mark, by the nonzero winding rule.
// Polygons that run the same way round add up, however they overlap, without a seam
// where they meet. One that runs the other way inside another is a hole.
type Area struct {
	Outlines [][]geometry.Point
	Ink      Ink
}

func (a Area) places() []geometry.Point {
	var all []geometry.Point
	for _, o := range a.Outlines {
		all = append(all, o...)
	}
	return all
}

func (a Area) placed(place func(geometry.Point) geometry.Point, _ float64) Mark {
	outlines := make([][]geometry.Point, len(a.Outlines))
	for i, o := range a.Outlines {
		outlines[i] = each(o, place)
	}
	a.Outlines = outlines
	return a
}

// clipped clips outline by outline: each stays one outline, and goes round the
// places that are left as often as it did.
func (a Area) clipped(w Window) []Mark {
	var kept [][]geometry.Point
	for _, o := range a.Outlines {
		for _, m := range (Fill{Points: o}).clipped(w) { // without an edge it stays one fill
			kept = append(kept, m.(Fill).Points)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	a.Outlines = kept
	return []Mark{a}
}
