package groove_test

import (
	"testing"

	"roundlay/pattern/groove"
)

// kind names what a cut by hand belongs to.
func (s *handed) kind(k handwork) string {
	kind := s.wheel.Edge.String()
	if s.bend != 0 {
		kind += " bent"
	}
	if k.touch {
		return kind + " touch "
	}
	return kind + " drawn "
}

// compareBridged compares the bite, and the glass left, of a wheel that rests elsewhere than in
// its mark. Pressed in it is taken to stand in the middle of its line, as deep as it is asked to.
func compareBridged(t *testing.T, w *worst, s *handed, g groove.Groove, which string) {
	w.note("bridged", 0)
	k := s.works()
	if k.touch && (k.unclear != "" || s.spans(s.line.at(k.first), k.at[0].depth)) {
		middle := s.line.length() / 2
		k = handwork{touch: true, first: middle, last: middle, at: []gripped{s.grip(middle, s.peak())}}
	}
	k.reach = s.wheel.Radius
	depth, left := s.bites(k)
	safe := func(what string, got, want, better float64) {
		over := better * (got - want)
		kind := s.wheel.Edge.String() + " bridged "
		w.note(kind+what+", safer than it is by", over)
		w.note(kind+what+", worse than it is by", -over)
		if !(over <= safeTolerance) {
			t.Errorf("%s: %s%s is %.4f, searched %.4f: %v", which, kind, what, got, want, s)
		}
	}
	safe("bite", g.Depth, depth, -1)
	safe("glass left", max(g.Remains.Min, 0), max(left, 0), 1)
}
