package groove

import "math"

// fine is how near the true crossing a root is found, in millimetres.
const fine = 1e-4

// root returns where f, which is positive at 0 and falls, crosses zero. The
// guess and the slope there, how fast f falls, are good to a few per cent: most
// often two steps from them are enough.
func root(f func(float64) float64, guess, slope float64) float64 {
	x, fx := guess, f(guess)
	if slope > 0 && !math.IsInf(fx, 0) {
		y := x + fx/slope
		for range 4 {
			if !(y > 0) {
				break
			}
			fy := f(y)
			if math.IsInf(fy, 0) {
				break // past a face of the wheel
			}
			// The secant through the last two points.
			next := y
			if fy != fx {
				next = y - fy*(y-x)/(fy-fx)
			}
			if math.Abs(next-y) < fine && math.Abs(fy) < 10*fine {
				return max(next, 0)
			}
			x, fx, y = y, fy, next
		}
	}
	return bracket(f, guess)
}

// bracket finds the root between a place where f is positive and one where it
// is not, however f falls: it may drop to minus infinity at a wheel's face.
func bracket(f func(float64) float64, guess float64) float64 {
	lo, hi := 0.0, max(guess, fine)
	flo := f(0)
	if !(flo > 0) {
		return 0
	}
	fhi := f(hi)
	for fhi > 0 {
		lo, flo = hi, fhi
		hi *= 1.5
		fhi = f(hi)
	}
	// Regula falsi, halving the weight of an end that stays (Illinois), or the
	// interval where f is infinite.
	kept := 0
	for hi-lo > fine {
		mid := (lo + hi) / 2
		if !math.IsInf(fhi, 0) {
			mid = lo + (hi-lo)*flo/(flo-fhi)
		}
		fmid := f(mid)
		switch {
		case math.Abs(fmid) < fine/1000:
			return mid
		case fmid > 0:
			lo, flo = mid, fmid
			if kept == 1 {
				fhi /= 2
			}
			kept = 1
		default:
			hi, fhi = mid, fmid
			if kept == -1 {
				flo /= 2
			}
			kept = -1
		}
	}
	return (lo + hi) / 2
}
