package groove_test

import "math"

// bisect returns where ok changes from true, at in, to false, at out. A broad
// flat touch may leave the glass at a slope of a thousandth, so it goes on to a
// thousandth of what would do for a length.
func bisect(in, out float64, ok func(float64) bool) float64 { return bisectTo(1e-7, in, out, ok) }

// bisectTo is bisect, come so near.
func bisectTo(near, in, out float64, ok func(float64) bool) float64 {
	for math.Abs(out-in) > near {
		if mid := (in + out) / 2; ok(mid) {
			in = mid
		} else {
			out = mid
		}
	}
	return (in + out) / 2
}

// zero returns where f changes from 0 or more, at in, to less, at out: by the rule of
// secants with the weight of an end that stays halved (the Illinois rule, from memory),
// and every third time by bisection, as f may jump.
func zero(in, out float64, f func(float64) float64) float64 {
	const near, flat = 1e-7, 1e-9 // how close it comes, and what f is where it is there
	a, b := f(in), f(out)
	switch {
	case !(a >= 0):
		return in
	case !(b < 0):
		return out
	}
	for i := 1; math.Abs(out-in) > near; i++ {
		x := (in + out) / 2
		if i%3 != 0 {
			x = out - b*(out-in)/(b-a)
		}
		y := f(x)
		switch {
		case math.Abs(y) < flat:
			return x
		case y >= 0:
			in, a, b = x, y, b/2
		default:
			out, b, a = x, y, a/2
		}
	}
	return (in + out) / 2
}
