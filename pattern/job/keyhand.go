package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
)

// NewSwell and NewRock return the change that gives a motif, or a part of it, a swell or a
// rock.
func NewSwell(motif int, part string, shares []float64) Change {
	return Change{Motif: motif, Part: part, Key: "swell", Swell: newShares(shares), Value: mean(shares)}
}

func NewRock(motif int, part string, rock [2]geometry.Angle) Change {
	return Change{Motif: motif, Part: part, Key: "rock", Rock: rock, Value: rock[0].Degrees() + rock[1].Degrees()}
}

// Shares is the shares of a swell in a form that can be compared.
type Shares struct {
	n  int
	of [maxShares]float64
}

func newShares(list []float64) Shares {
	s := Shares{n: min(len(list), maxShares)}
	copy(s.of[:], list)
	return s
}

// List returns the shares, from root to tip.
func (s Shares) List() []float64 { return slices.Clone(s.of[:s.n]) }

// mean returns the mean share of a swell: 1 of an even cut.
func mean(shares []float64) float64 {
	if len(shares) == 0 {
		return 1
	}
	sum := 0.0
	for _, share := range shares {
		sum += share
	}
	return sum / float64(len(shares))
}

// swellKey and rockKey are the keys of what the hand does along the cuts of a motif or of a
// part. What a kind does by hand is a value too, but one that the job doesn't say.
func swellKey() key {
	return key{
		name: "swell", part: true,
		get: func(j *Job, c *Change) bool {
			m := &j.Motifs[c.Motif]
			*c = NewSwell(c.Motif, c.Part, m.GestureOf(c.Part).Swell)
			return m.Swell != nil || m.Part(c.Part).Swell != nil
		},
		set: func(j *Job, c Change) {
			m, shares := &j.Motifs[c.Motif], c.Swell.List()
			if c.Part == "" {
				m.Swell = shares
				return
			}
			m.Parts = m.change(c.Part, func(p *Part) { p.Swell = shares })
		},
		format: func(_ *Job, c Change) string {
			words := make([]string, c.Swell.n)
			for i, share := range c.Swell.List() {
				words[i] = fmt.Sprintf("%g", share)
			}
			return "[" + strings.Join(words, ", ") + "]"
		},
		may: func(_ *Job, c Change) bool { return c.Swell.n > 0 && slices.Max(c.Swell.List()) > 0 },
	}
}

func rockKey() key {
	return key{
		name: "rock", part: true,
		get: func(j *Job, c *Change) bool {
			m := &j.Motifs[c.Motif]
			*c = NewRock(c.Motif, c.Part, m.GestureOf(c.Part).Rock)
			return m.Rock != nil || m.Part(c.Part).Rock != nil
		},
		set: func(j *Job, c Change) {
			m, rock := &j.Motifs[c.Motif], c.Rock
			if c.Part == "" {
				m.Rock = &rock
				return
			}
			m.Parts = m.change(c.Part, func(p *Part) { p.Rock = &rock })
		},
		format: func(_ *Job, c Change) string { return pair(InDegrees(c.Rock[0]), InDegrees(c.Rock[1])) },
		may: func(_ *Job, c Change) bool {
			most := geometry.Degrees(MaxRock)
			return min(c.Rock[0], c.Rock[1]) >= 0 && max(c.Rock[0], c.Rock[1]) <= most
		},
	}
}

// InDegrees writes an angle in degrees as a job file has it.
func InDegrees(a geometry.Angle) string {
	const exact = 1e6 // the rounding of a number that came as degrees
	return fmt.Sprintf("%g", math.Round(a.Degrees()*exact)/exact)
}

// ByHand reports whether any cut of the job's is not as a machine makes it.
func (j *Job) ByHand() bool {
	return slices.ContainsFunc(j.Motifs, func(m Motif) bool {
		return slices.ContainsFunc(m.Kind.Parts, func(part string) bool { return !m.GestureOf(part).Even() })
	})
}
