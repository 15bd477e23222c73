package pattern

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// New lays a job out on one of its blanks and checks it. The error says why nothing can
// be laid out, or is the context's.
func New(ctx context.Context, j *job.Job, blank *glass.Blank) (*Plan, error) {
	plans, err := Lay(ctx, j, blank)
	if err != nil {
		return nil, err
	}
	return plans[0], nil
}

// settled returns an error for a job that asks for the most that clears of something and
// doesn't yet say how many that is: package search finds it.
func settled(j *job.Job) error {
	for i, m := range j.Motifs {
		for _, name := range m.Most {
			if _, known := m.Values[name]; !known {
				return fmt.Errorf("motif %d: how many %s clear has not been found yet", i+1, name)
			}
		}
	}
	return nil
}

// checks lists the checks of every kind of finding but those between two cuts.
func (p *Plan) checks() []func() []Finding {
	return []func() []Finding{p.thin, p.margins, p.buried, p.tight, p.shallow, p.uneven, p.bridged}
}

// outcome is what a check comes to.
type outcome struct {
	found, slight []Finding // slight is what is noted alone
	// overfull says that so many cuts crowd that no list of them helps: then not all of
	// them are there.
	overfull bool
}

// check returns all findings, sorted by kind and cuts. All checks only read the plan, and
// they run in parallel. known may be nil. The error is the context's.
func (p *Plan) check(ctx context.Context, known *knownLands) (c outcome, err error) {
	crowded := func() []Finding {
		pairs, slight, overfull := p.crowded(ctx, known)
		c.overfull = overfull
		return append(p.once(pairs), p.once(slight)...)
	}
	finds := append([]func() []Finding{crowded}, p.checks()...)
	kinds := make([][]Finding, len(finds))
	if err := each(ctx, len(finds), func() func(int) { return func(i int) { kinds[i] = finds[i]() } }); err != nil {
		return outcome{}, err
	}
	all := slices.Concat(kinds...)
	slices.SortStableFunc(all, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), slices.Compare(a.Cuts, b.Cuts))
	})
	for _, f := range all {
		if f.slight() {
			c.slight = append(c.slight, f)
		} else {
			c.found = append(c.found, f)
		}
	}
	return c, nil
}

// findings is check without a context.
func (p *Plan) findings() []Finding {
	c, _ := p.check(context.Background(), nil)
	return c.found
}

// crowded lists the pairs of cuts that come too near one another, and apart from them
// those that miss by so little that it is a note. It stops once there are more than
// maxFound.
func (p *Plan) crowded(ctx context.Context, known *knownLands) (found, slight []Finding, overfull bool) {
	for f := range p.crowdKnown(ctx, known) {
		if f.slight() {
			slight = append(slight, f)
		} else if found = append(found, f); len(found) > maxFound {
			return found, slight, true
		}
	}
	return found, slight, false
}

// has reports whether a kind is found on exactly the given motifs. Land is slow to
// measure, so it is measured last, and only until the first finding.
func (p *Plan) has(kind Kind, motifs []int) bool {
	is := func(f Finding) bool {
		about, _ := p.About(f)
		return f.Kind == kind && f.counts() && slices.Equal(about, motifs)
	}
	for _, find := range p.checks() {
		if slices.ContainsFunc(find(), is) {
			return true
		}
	}
	if kind == Crowded || kind == Off {
		for f := range p.crowd(motifs...) {
			if is(f) {
				return true
			}
		}
	}
	return false
}
