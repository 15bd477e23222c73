package drawing

import (
	"cmp"
	"slices"
)

// EdgesFirst returns the drawing with the marks of one layer in another order:
// strokes lowest, then the fills that have an edge, then all others. So an edge
// shows only round all that is filled, and not where fills overlap.
func (d Drawing) EdgesFirst(layer Layer) Drawing {
	out := d
	out.layers[layer] = slices.Clone(d.layers[layer])
	slices.SortStableFunc(out.layers[layer], func(a, b Mark) int { return cmp.Compare(height(a), height(b)) })
	return out
}

// height returns the rank of a mark in that order, the lowest first.
func height(m Mark) int {
	switch m := m.(type) {
	case Stroke:
		return 0
	case Fill:
		if m.Edge.Width > 0 {
			return 1
		}
	}
	return 2
}
