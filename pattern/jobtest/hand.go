package jobtest

import (
	"math/rand/v2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
)

// ByHand gives each motif of a job, or some of its parts, a hand drawn at random: the kind's
// own, a swell, a rock. None of the rack's wheels is rolled onto its flank by it.
func ByHand(random *rand.Rand, j *job.Job) {
	for i := range j.Motifs {
		m := &j.Motifs[i]
		if _, has := m.Kind.Param(motifs.HandParam); has && random.IntN(3) == 0 {
			m.Values[motifs.HandParam] = random.Float64()
		}
		if random.IntN(2) == 0 {
			m.Swell = swell(random)
		}
		if random.IntN(2) == 0 {
			m.Rock = rock(random)
		}
		if part := m.Kind.Parts[random.IntN(len(m.Kind.Parts))]; random.IntN(3) == 0 {
			*j = *j.With(job.NewSwell(i, part, swell(random)), job.NewRock(i, part, *rock(random)))
		}
	}
}

// swell draws shares of which the ends may be 0.
func swell(random *rand.Rand) []float64 {
	shares := make([]float64, 1+random.IntN(5))
	for i := range shares {
		shares[i] = 0.1 + 0.9*random.Float64()
	}
	if n := len(shares); n > 2 {
		shares[1+random.IntN(n-2)] = 1
		shares[(n-1)*random.IntN(2)] *= float64(random.IntN(2))
	}
	return shares
}

// rock draws rolls of which one may be 0, up to 25 degrees.
func rock(random *rand.Rand) *[2]geometry.Angle {
	r := [2]geometry.Angle{geometry.Degrees(25 * random.Float64()), geometry.Degrees(25 * random.Float64())}
	if side := random.IntN(3); side < 2 {
		r[side] = 0
	}
	return &r
}
