package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// straightVessel returns a cylinder or a cone of a radius at height 0.
func straightVessel(radius, slope, bottom, top float64) *vessel {
	return &vessel{fmt.Sprintf("straight, radius %.4f, slope %.5f", radius, slope), bottom, top,
		func(z float64) (float64, float64) { return radius + slope*z, slope }}
}

// ringVessel returns a torus: a profile that is a circle's arc of the given
// radius about a point so far from the axle. Bulge is 1 for the arc outside that
// point (a barrel; a sphere where it lies on the axis), -1 for the arc inside it (a waist).
func ringVessel(centre, middle, radius, bulge, reach float64) *vessel {
	return &vessel{fmt.Sprintf("ring of %.4f about (%.4f, %.3f), bulge %g", radius, centre, middle, bulge), middle - reach, middle + reach,
		func(z float64) (float64, float64) {
			up := z - middle
			out := math.Sqrt(radius*radius - up*up)
			return centre + bulge*out, -bulge * up / out
		}}
}

// waveVessel returns a profile of bellies and waists by turns, each of the given
// radius of curvature at its middle, on a taper.
func waveVessel(mean, slope, height, radius, length, bottom, top float64) *vessel {
	k := 2 * math.Pi / length
	high := 1 / (k * k * radius)
	return &vessel{fmt.Sprintf("wave of radius %.4f, %.4f long, crest at %.3f, on %.4f and %.5f", radius, length, height, mean, slope), bottom, top,
		func(z float64) (float64, float64) {
			sin, cos := math.Sincos(k * (z - height))
			return mean + slope*z + high*cos, slope - high*k*sin
		}}
}

// flareVessel returns an S-shaped profile: a foot (out above 0) or a rim that
// flares from a stem, and runs on straight from it. Its tightest curve is of
// the given radius, or wider where it stands steep.
func flareVessel(stem, out, height, radius, bottom, top float64) *vessel {
	// The second derivative of tanh is 4/(3√3) at the most.
	wide := math.Sqrt(math.Abs(out) / 2 * 4 / (3 * math.Sqrt(3)) * radius)
	return &vessel{fmt.Sprintf("flare by %.4f from %.4f at %.3f, radius %.4f", out, stem, height, radius), bottom, top,
		func(z float64) (float64, float64) {
			t := math.Tanh((z - height) / wide)
			return stem + math.Abs(out)/2 - out/2*t, -out / 2 * (1 - t*t) / wide
		}}
}

// logBetween returns a random number in a range, as often in each octave.
func logBetween(rnd *rand.Rand, from, to float64) float64 {
	return math.Exp(between(rnd, math.Log(from), math.Log(to)))
}

// chance picks a number, one in three from either end of its range.
func chance(rnd *rand.Rand, from, to float64) float64 {
	switch rnd.IntN(6) {
	case 0:
		return from
	case 1:
		return to
	}
	return between(rnd, from, to)
}

// tightest and loosest are the radii of profiles tried.
const tightest, loosest = 15, 400

// trimmed returns a vessel without what lies beyond the nearest heights below and
// above a middle where it is too thin.
func (v *vessel) trimmed(middle, radius float64) *vessel {
	for z := middle; z > v.bottom; z-- {
		if v.radius(z) < radius {
			v.bottom = z + 1
		}
	}
	for z := middle; z < v.top; z++ {
		if v.radius(z) < radius {
			v.top = z - 1
		}
	}
	return v
}

// randomVessel returns a vessel of one of the kinds that glasses have, whose
// radius is from 15 to 70 mm, and the height that a cut on it lies about.
func randomVessel(rnd *rand.Rand) (v *vessel, middle float64) {
	rho := logBetween(rnd, tightest, loosest)
	if rnd.IntN(6) == 0 {
		rho = tightest
	}
	kind := rnd.IntN(7)
	if kind == 0 {
		slope := 0.0
		if rnd.IntN(3) > 0 {
			slope = between(rnd, -0.5, 0.5)
		}
		return straightVessel(between(rnd, 20, 60), slope, -80, 80).trimmed(0, 12), 0
	}
	return curvedVessel(rnd, kind, rho)
}

// randomOfThree returns a straight vessel, a tapered one or one of some curve, each as often.
func randomOfThree(rnd *rand.Rand) (v *vessel, middle float64) {
	switch rnd.IntN(3) {
	case 0:
		return straightVessel(between(rnd, 20, 60), 0, -80, 80).trimmed(0, 12), 0
	case 1:
		return straightVessel(between(rnd, 20, 60), between(rnd, -0.5, 0.5), -80, 80).trimmed(0, 12), 0
	}
	return curvedVessel(rnd, 1+rnd.IntN(6), logBetween(rnd, tightest, loosest))
}

// curvedVessel returns a vessel of a kind from 1 to 6, whose profile curves by a radius.
func curvedVessel(rnd *rand.Rand, kind int, rho float64) (v *vessel, middle float64) {
	switch kind {
	case 1:
		return ringVessel(0, 0, between(rnd, 20, 60), 1, 18), between(rnd, -8, 8)
	case 2: // a barrel
		centre := between(rnd, 20, 60) - rho
		reach := math.Floor(min(0.9*rho, 80, math.Sqrt(rho*rho-math.Pow(min(max(12-centre, 0), 0.99*rho), 2))))
		return ringVessel(centre, 0, rho, 1, reach), between(rnd, -0.6, 0.6) * reach
	case 3: // a waist
		reach := math.Round(min(0.9*rho, 80))
		return ringVessel(between(rnd, 15, 50)+rho, 0, rho, -1, reach), between(rnd, -0.5, 0.5) * reach
	case 4, 5:
		// The crests stand no more than 25 mm over the troughs.
		length := min(between(rnd, 30, 160), 2*math.Pi*math.Sqrt(12*rho))
		return waveVessel(between(rnd, 35, 55), between(rnd, -0.2, 0.2), 0, rho, length, -80, 80), between(rnd, -length/2, length/2)
	}
	return flareVessel(between(rnd, 15, 40), math.Copysign(between(rnd, 4, 30), between(rnd, -1, 1)), 0, min(rho, 100), -80, 80), between(rnd, -30, 30)
}
