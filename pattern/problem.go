package pattern

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// Problem is what a letter stands for: a kind of finding on certain motifs and
// parts of them, all measured alike.
type Problem struct {
	Kind   Kind
	Motifs [2]int // the job's; -1 where there is none
	Parts  string
	Share  bool
	Cuts   int    // of each finding: the glass, one cut or two
	Blank  string // where it is another of the set than the one it is told of
}

// Is reports whether the problem is of a kind and on just the given motifs.
func (p Problem) Is(kind Kind, motifs []int) bool { return p.Kind == kind && p.Motifs == Two(motifs) }

// Two returns a list of up to two motifs as a problem has it.
func Two(motifs []int) [2]int {
	two := [2]int{-1, -1}
	copy(two[:], motifs)
	return two
}

// Extent is how much of a problem there is: how often it is found in a period, and
// by how much the worst misses what is wanted.
type Extent struct {
	Times int
	Miss  float64
}

// Problems is all that is found on a blank.
type Problems map[Problem]Extent

// count adds findings on a plan's cuts.
func (all Problems) count(p *Plan, found []Finding) {
	for _, f := range found {
		at := p.problem(f)
		e := all[at]
		all[at] = Extent{e.Times + 1, max(e.Miss, math.Abs(f.Measured-f.Wanted))}
	}
}

// add takes up what is found elsewhere: of each problem the greater extent.
func (all Problems) add(some Problems) {
	for at, e := range some {
		all[at] = Extent{max(all[at].Times, e.Times), max(all[at].Miss, e.Miss)}
	}
}

// problem returns the problem that a finding is one of.
func (p *Plan) problem(f Finding) Problem {
	motifs, parts := p.About(f)
	return Problem{Kind: f.Kind, Motifs: Two(motifs), Parts: strings.Join(parts, " "), Share: f.Share, Cuts: len(f.Cuts)}
}

// Beyond returns the problems that were not there before, and after them those of
// which there is more than there was, but for what is of a kind on the given motifs.
func (all Problems) Beyond(before Problems, kind Kind, motifs []int) []Brought {
	const worse = 1.1 // what misses by so many times as much is worse
	var brought []Brought
	for at, now := range all {
		was, known := before[at]
		switch {
		case at.Is(kind, motifs):
		case !known:
			brought = append(brought, Brought{at, false})
		case now.Times > was.Times || now.Miss > worse*was.Miss+1e-6:
			brought = append(brought, Brought{at, true})
		}
	}
	slices.SortFunc(brought, compareBrought)
	return brought
}

// compareBrought orders what is new before what there is more of, each by kind and
// motifs.
func compareBrought(a, b Brought) int {
	order := func(b Brought) []int { return []int{int(b.Kind), b.Motifs[0], b.Motifs[1], b.Cuts} }
	if a.More != b.More {
		if b.More {
			return -1
		}
		return 1
	}
	return cmp.Or(slices.Compare(order(a), order(b)), cmp.Compare(a.Parts, b.Parts))
}
