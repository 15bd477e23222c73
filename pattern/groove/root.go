package groove

import "math"

// root returns where f, positive at 0 and falling, crosses zero, from a guess of
// the place and of how steeply f falls there: by the rule of secants, within
// what it has found so far, and every third time by halves, as f may turn a corner.
func root(f func(float64) float64, guess, fall float64) float64 {
	const (
		near    = 1e-3 // mm: a step as short as this ends well within it
		far     = 1e6  // mm: beyond any place that is asked for
		shallow = 0.1  // a fall as gentle as this may be badly guessed
		wide    = 0.1  // mm: so far apart two places tell little of the fall between
	)
	lo, hi, step := 0.0, far, 0.0
	x := min(max(guess, 0), far)
	y := f(x)
	if !(fall > 0) {
		fall = shallow
	}
	if fall < shallow {
		step = wide
	}
	for i := 1; i < 60; i++ {
		if y > 0 {
			lo = x
		} else {
			hi = x
		}
		next := x + y/fall
		switch {
		case i%3 == 0 && hi < far, !(next > lo && next < hi) && hi < far:
			next = (lo + hi) / 2
		case !(next > lo && next < far):
			next = 2*lo + near
		}
		last := step
		if step = math.Abs(next - x); step < near && last < wide || hi-lo < near {
			return next
		}
		z := f(next)
		fall = (y - z) / (next - x)
		x, y = next, z
	}
	return x
}
