package pattern

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// Problem is what findings of one group have in common: their kind, the motifs and parts
// they are on, and how they are measured.
type Problem struct {
	Kind   Kind
	Motifs [2]int // numbers in the job, from 0; -1 for none
	Parts  string
	Share  bool
	Cuts   int    // how many cuts a finding has: 0 for the glass itself, 1 or 2
	Blank  string // the blank's name, where it isn't the one being reported on
}

// Is reports whether the problem is of a kind and on exactly the given motifs.
func (p Problem) Is(kind Kind, motifs []int) bool {
	return p.Kind == kind && p.Motifs == MotifPair(motifs)
}

// MotifPair returns up to two motifs in the form of Problem.Motifs.
func MotifPair(motifs []int) [2]int {
	two := [2]int{-1, -1}
	copy(two[:], motifs)
	return two
}

// Severity is how bad a problem is: the number of findings in a period, and the largest
// difference between measured and wanted.
type Severity struct {
	Times int
	Miss  float64
}

// Problems is the problems of a blank.
type Problems map[Problem]Severity

// count adds a plan's findings.
func (all Problems) count(p *Plan, found []Finding) {
	for _, f := range found {
		at := p.problem(f)
		e := all[at]
		all[at] = Severity{e.Times + 1, max(e.Miss, math.Abs(f.Measured-f.Wanted))}
	}
}

// add adds other problems. Of a problem that is in both, the greater extent holds.
func (all Problems) add(some Problems) {
	for at, e := range some {
		all[at] = Severity{max(all[at].Times, e.Times), max(all[at].Miss, e.Miss)}
	}
}

// problem returns the problem that a finding belongs to.
func (p *Plan) problem(f Finding) Problem {
	motifs, parts := p.About(f)
	return Problem{Kind: f.Kind, Motifs: MotifPair(motifs), Parts: strings.Join(parts, " "), Share: f.Share, Cuts: len(f.Cuts)}
}

// Beyond returns the problems that are new since before, and after them those that got
// worse. It leaves out the problems of a kind on the given motifs.
func (all Problems) Beyond(before Problems, kind Kind, motifs []int) []Brought {
	const worse = 1.1 // times the miss before
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

// compareBrought orders new problems before those that got worse, each by kind and motifs.
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
