package pattern

import "slices"

// Kind is the kind of a finding.
type Kind int

// The kinds of findings.
const (
	Crowded Kind = iota
	Thin
	Rim
	Foot
	Buried
	Tight
	Shallow
	Off
	Uneven
	Bridged
	Unseen
	AtEdge // of the base
)

// String returns the kind's name in reports.
func (k Kind) String() string {
	return [...]string{"crowded", "thin", "rim", "foot", "buried", "tight", "shallow", "off", "uneven", "bridged", "unseen", "edge"}[k]
}

// Finding is one thing the check reports, once for all the repeats it occurs in.
type Finding struct {
	Kind   Kind
	Cuts   []int // ids
	Repeat int
	Theta  float64
	Height float64
	// Measured and Wanted are in millimetres or, where Share is true, the clear shares of
	// two joined cuts.
	Measured, Wanted float64
	Share            bool
	Cure             *Cure // nil until package search has looked for one

	betweenCopies bool // between two copies of a motif
}

// BetweenCopies reports whether a finding is between two copies of a motif.
func (f Finding) BetweenCopies() bool { return f.betweenCopies }

// Group is the findings of one kind that concern the same motifs and parts, all
// measured alike: what a person reads as one trouble. Letter marks it on paper.
type Group struct {
	Letter   string
	Kind     Kind
	Motifs   []int    // numbers in the job, from 0, each once
	Parts    []string // each once
	Findings []Finding
}

// Worst returns the finding whose Measured is furthest from its Wanted.
func (g Group) Worst() Finding {
	return slices.MaxFunc(g.Findings, func(a, b Finding) int {
		miss := func(f Finding) float64 {
			if f.Measured > f.Wanted {
				return f.Measured - f.Wanted
			}
			return f.Wanted - f.Measured
		}
		switch x, y := miss(a), miss(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
}

// Groups returns the findings in groups, lettered A, B, … in their order: those of a base on
// from those of its side.
func (p *Plan) Groups() []Group { return p.grouped(p.Findings) }

func (p *Plan) grouped(findings []Finding) []Group {
	var groups []Group
	at := map[Problem]int{}
	for _, f := range findings {
		like := p.problem(f)
		i, known := at[like]
		if !known {
			i = len(groups)
			at[like] = i
			motifs, parts := p.About(f)
			groups = append(groups, Group{Letter: letter(p.letter + i), Kind: f.Kind, Motifs: motifs, Parts: parts})
		}
		groups[i].Findings = append(groups[i].Findings, f)
	}
	return groups
}

// About returns the motifs and the parts that a finding concerns.
func (p *Plan) About(f Finding) (motifs []int, parts []string) {
	for _, id := range f.Cuts {
		c := p.Cuts[p.inPeriod(id)]
		if !slices.Contains(motifs, c.Motif) {
			motifs = append(motifs, c.Motif)
		}
		if !slices.Contains(parts, c.Part) {
			parts = append(parts, c.Part)
		}
	}
	slices.Sort(motifs)
	slices.Sort(parts)
	return motifs, parts
}

// letter returns A to Z, then AA, AB and so on.
func letter(i int) string {
	s := string(rune('A' + i%26))
	if i >= 26 {
		return letter(i/26-1) + s
	}
	return s
}
