package pattern

import (
	"cmp"
	"math"
	"slices"
)

// Standing is how much one blank differs from the rest of its set. Practise on the blank
// that differs most: it is the least loss.
type Standing struct {
	Member *Member
	// The differences from the median of the set, in millimetres: positive where the blank
	// is taller, wider, thicker, or further out of round. Width and wall are compared at
	// the same shares of the blanks' heights, the wall from the band's foot up; these are
	// the largest differences.
	Height, Width, Wall, OutOfRound float64
	// WidthAt and WallAt are the heights of those on the blank, -1 where it differs by
	// about as much all the way up.
	WidthAt, WallAt float64
	// Apart combines them, each as a share of a difference that shows.
	Apart float64
}

// Differences between two glasses that show when they stand side by side, or are felt at
// the wheel. From common practice, without a source.
const (
	showsHeight = 1.0 // mm
	showsWidth  = 1.0 // of diameter
	showsWall   = 0.25
	showsRound  = 0.5 // between one diameter and another
)

// Rank ranks the plans that Lay made of a job's blanks. The one to practise on comes first.
func Rank(plans []*Plan) []Standing { return compare(plans).Standings() }

// Standings ranks the blanks of the set. The one to practise on comes first; of two that
// differ equally, the one with the thinner wall.
func (s *Set) Standings() []Standing {
	middle := func(of func(Member) float64) float64 {
		values := make([]float64, len(s.Members))
		for i, m := range s.Members {
			values[i] = of(m)
		}
		return median(values)
	}
	height := middle(func(m Member) float64 { return m.Blank.Height() })
	round := middle(func(m Member) float64 { return m.OutOfRound })
	widths := s.along(0, func(m Member, z float64) float64 { return 2 * m.Blank.Profile().Radius(z) })
	walls := s.along(s.Band.Foot/height, func(m Member, z float64) float64 { return m.Blank.Wall(z) })

	all := make([]Standing, len(s.Members))
	for i := range s.Members {
		m := &s.Members[i]
		d := Standing{Member: m, Height: m.Blank.Height() - height, OutOfRound: m.OutOfRound - round}
		d.Width, d.WidthAt = widths.largest(i)
		d.Wall, d.WallAt = walls.largest(i)
		// A blank that is rounder than the rest is no worse for it.
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

// differences holds, for each blank of a set, its differences from the median at steps up
// the glass, and the heights of those steps.
type differences struct{ by, at [][]float64 }

// along compares the blanks of the set at steps up the glass, from a share of their heights
// up to the rim.
func (s *Set) along(from float64, of func(m Member, z float64) float64) differences {
	const places = 49
	n := len(s.Members)
	d := differences{make([][]float64, n), make([][]float64, n)}
	values := make([]float64, n)
	for k := range places {
		share := from + (1-from)*float64(k)/(places-1)
		for i, m := range s.Members {
			d.at[i] = append(d.at[i], share*m.Blank.Height())
			values[i] = of(m, share*m.Blank.Height())
		}
		middle := median(values)
		for i, v := range values {
			d.by[i] = append(d.by[i], v-middle)
		}
	}
	return d
}

// largest returns a blank's largest difference and its height. The height is -1 where the
// difference is at least half as much nearly everywhere.
func (d differences) largest(blank int) (by, at float64) {
	const nearly = 0.9
	for k, x := range d.by[blank] {
		if math.Abs(x) > math.Abs(by) {
			by, at = x, d.at[blank][k]
		}
	}
	alike := 0
	for _, x := range d.by[blank] {
		if x*by >= by*by/2 {
			alike++
		}
	}
	if float64(alike) >= nearly*float64(len(d.by[blank])) {
		at = -1
	}
	return by, at
}

// Shows reports which of a blank's differences are at least half of one that shows.
func (d Standing) Shows() (height, width, wall, round bool) {
	const share = 0.5
	return math.Abs(d.Height) >= share*showsHeight, math.Abs(d.Width) >= share*showsWidth,
		math.Abs(d.Wall) >= share*showsWall, d.OutOfRound >= share*showsRound
}

// median returns the middle one of some numbers, or the mean of the middle two.
func median(of []float64) float64 {
	sorted := slices.Sorted(slices.Values(of))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}
