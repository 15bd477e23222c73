package groove

import "math"

// unwind makes the angles of samples on a disc run on without a jump: a place there knows
// its angle only up to a full turn. Where a cut passes over the middle its angle changes by
// half a turn at once.
func unwind(samples []Sample) {
	for i := 1; i < len(samples); i++ {
		last := samples[i-1].Theta
		samples[i].Theta = last + math.Remainder(samples[i].Theta-last, 2*math.Pi)
	}
}
