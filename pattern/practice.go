package pattern

import (
	"cmp"
	"math"
	"slices"
)

// Standing is how far one blank stands from the rest of its set. A new method is
// tried on the blank that stands furthest: its loss is the least.
type Standing struct {
	Member *Member
	// By how much it differs from the middle of the set, in millimetres: positive
	// where it is taller, wider, thicker, or further out of round.
	Height, Width, Wall, OutOfRound float64
	// Apart sums them up, each as a share of a difference that shows.
	Apart float64
}

// Differences between two glasses that show when they stand side by side, or are
// felt at the wheel: common practice, no source.
const (
	showsHeight = 1.0  // mm
	showsWidth  = 1.0  // of diameter
	showsWall   = 0.25 // at its thinnest in the band
	showsRound  = 0.5  // between one diameter and another
)

// Rank ranks the plans that Lay made of a job's blanks, the one to practise on
// first.
func Rank(plans []*Plan) []Standing { return compare(plans).Standings() }

// Standings ranks the blanks of the set, the one to practise on first. Of two
// that stand as far, the one with the thinner wall comes first.
func (s *Set) Standings() []Standing {
	middle := func(of func(Member) float64) float64 {
		values := make([]float64, len(s.Members))
		for i, m := range s.Members {
			values[i] = of(m)
		}
		return median(values)
	}
	height := middle(func(m Member) float64 { return m.Blank.Height() })
	width := middle(func(m Member) float64 { return m.Across })
	wall := middle(func(m Member) float64 { return m.Wall })
	round := middle(func(m Member) float64 { return m.OutOfRound })

	all := make([]Standing, len(s.Members))
	for i := range s.Members {
		m := &s.Members[i]
		d := Standing{
			Member: m, Height: m.Blank.Height() - height, Width: m.Across - width,
			Wall: m.Wall - wall, OutOfRound: m.OutOfRound - round,
		}
		// A blank that is rounder than the rest is none the worse for it.
		d.Apart = math.Hypot(
			math.Hypot(d.Height/showsHeight, d.Width/showsWidth),
			math.Hypot(d.Wall/showsWall, max(0, d.OutOfRound)/showsRound),
		)
		all[i] = d
	}
	slices.SortStableFunc(all, func(a, b Standing) int {
		const same = 1e-6
		if math.Abs(a.Apart-b.Apart) > same {
			return cmp.Compare(b.Apart, a.Apart)
		}
		return cmp.Compare(a.Wall, b.Wall)
	})
	return all
}

// Shows reports which of a blank's differences show by themselves, or would
// with another half as large.
func (d Standing) Shows() (height, width, wall, round bool) {
	const share = 0.5
	return math.Abs(d.Height) >= share*showsHeight, math.Abs(d.Width) >= share*showsWidth,
		math.Abs(d.Wall) >= share*showsWall, d.OutOfRound >= share*showsRound
}

// median returns the middle one of some numbers, or half way between the middle two.
func median(of []float64) float64 {
	sorted := slices.Sorted(slices.Values(of))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}
