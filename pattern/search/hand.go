package search

import (
	"math"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// gentler has less of a hand in the group's motifs.
func (s *cureSearch) gentler(g pattern.Group) []series { return s.each(g, gentler) }

// gentler returns what takes less of a hand to a motif: less of its kind's gesture, less rock,
// and finer ends of its swell, of the motif and of the parts that have their own. There is
// nothing for a motif that is even.
func gentler(j *job.Job, i int) []series {
	m := &j.Motifs[i]
	all := []series{lessHand(j, i)}
	for _, part := range append([]string{""}, m.Kind.Parts...) {
		own := m.Part(part)
		if own.Rock != nil || part == "" && m.Rock != nil {
			all = append(all, lessRock(j, owner{i, part}))
		}
		if own.Swell != nil || part == "" && m.Swell != nil {
			all = append(all, finerEnds(j, owner{i, part}))
		}
	}
	return all
}

// lessHand returns smaller values of a kind's hand, a twentieth apart.
func lessHand(j *job.Job, i int) series {
	const parts = 20
	var r series
	for n := math.Ceil(j.Motifs[i].Values[motifs.HandParam]*parts-1e-9) - 1; n >= 0; n-- {
		r = append(r, candidate{{Motif: i, Key: motifs.HandParam, Value: n / parts}})
	}
	return r
}

// lessRock returns smaller rolls, whole degrees apart on the side that is rolled farther. The
// other side's is taken down with it.
func lessRock(j *job.Job, o owner) series {
	rock := j.Motifs[o.motif].GestureOf(o.part).Rock
	most := max(rock[0], rock[1]).Degrees()
	var r series
	for n := math.Ceil(most-1e-9) - 1; n >= 0; n-- {
		var less [2]geometry.Angle
		for side := range less {
			less[side] = geometry.Degrees(math.Floor(rock[side].Degrees()*n/most + 1e-9))
		}
		r = append(r, candidate{job.NewRock(o.motif, o.part, less)})
	}
	return r
}

// finerEnds returns swells that are as deep where they are deepest and finer elsewhere, in
// steps of a tenth of what they have there.
func finerEnds(j *job.Job, o owner) series {
	shares := j.Motifs[o.motif].GestureOf(o.part).Swell
	deepest, even := 0.0, true
	for _, share := range shares {
		deepest = max(deepest, share)
		even = even && share == shares[0]
	}
	if even {
		return nil
	}
	var r series
	for n := 9; n >= 2; n-- {
		finer := make([]float64, len(shares))
		for i, share := range shares {
			finer[i] = share
			if share < deepest {
				finer[i] = math.Round(share*float64(n)*100) / 1000 // as it is written
			}
		}
		r = append(r, candidate{job.NewSwell(o.motif, o.part, finer)})
	}
	return r
}
