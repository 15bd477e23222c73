package groove

import "math"

// root returns where f, positive at 0 and falling, crosses zero. It starts from a guess of
// the place and of how steeply f falls there. It uses the secant method within the bracket
// found so far, and bisection every third time, as f may have a corner.
func root(f func(float64) float64, guess, fall float64) float64 {
	const far = 1e3 // mm: beyond any place that is looked for
	return rootWithin(f, guess, fall, far)
}

// rootWithin is root for an f that crosses zero before far.
func rootWithin(f func(float64) float64, guess, fall, far float64) float64 {
	const (
		near    = 1e-3 // mm: after a step this short the error is much smaller
		shallow = 0.1  // a fall gentler than this may be a bad guess
		wide    = 0.1  // mm: two places further apart than this give a poor estimate of the fall
	)
	lo, hi, step := 0.0, far, 0.0
	x := min(max(guess, 0), far)
	y := f(x)
	if x == 0 && !(y > 0) {
		return 0
	}
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
			next = min(2*lo+near, (lo+far)/2)
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

// leaves returns where f, positive at 0, first crosses zero within a length, searched in
// steps; the length itself where it doesn't.
func leaves(f func(float64) float64, length float64) float64 {
	const step = 0.5 // mm
	for x := step; x < length+step; x += step {
		if to := min(x, length); f(to) <= 0 {
			return bisected(f, x-step, to, 1)
		}
	}
	return length
}

// crossing returns the place between 0 and a length, nearest to the middle, where f crosses
// zero either way; the middle where it doesn't.
func crossing(f func(float64) float64, length float64) float64 {
	const parts = 64
	best, middle := length/2, length/2
	least, before := math.Inf(1), f(0)
	for i := 1; i <= parts; i++ {
		from, to := length*float64(i-1)/parts, length*float64(i)/parts
		after := f(to)
		if off := math.Abs((from+to)/2 - middle); before*after <= 0 && off < least {
			best, least = bisected(f, from, to, before), off
		}
		before = after
	}
	return best
}

// bisected returns where f crosses zero between two places, by bisection. at is its value at
// the first.
func bisected(f func(float64) float64, from, to, at float64) float64 {
	for range 40 {
		half := (from + to) / 2
		if y := f(half); y*at > 0 {
			from = half
		} else {
			to = half
		}
	}
	return (from + to) / 2
}
