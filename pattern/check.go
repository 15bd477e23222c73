package pattern

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// New lays a job out on one of its blanks and checks it. The error says why
// nothing can be laid out at all, or that the context ended it.
func New(ctx context.Context, j *job.Job, blank *glass.Blank) (*Plan, error) {
	plans, err := Lay(ctx, j, blank)
	if err != nil {
		return nil, err
	}
	return plans[0], nil
}

// settled refuses a job with counts that are to be the most that clears and that
// nobody has found yet: package search finds them.
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

// checks lists what finds each kind of finding, but for those of two cuts.
func (p *Plan) checks() []func() []Finding {
	return []func() []Finding{p.thin, p.margins, p.buried, p.tight, p.shallow, p.uneven, p.bridged}
}

// check returns all findings, kind by kind and each in the order of its cuts, and
// whether so many cuts crowd that no list of them helps: then not all of them are
// there. It only reads the plan, as all checks do, and the kinds are looked for at
// once. What is known of lands may be nil. The error is the context's.
func (p *Plan) check(ctx context.Context, known *knownLands) (found []Finding, overfull bool, err error) {
	crowded := func() []Finding {
		var pairs []Finding
		pairs, overfull = p.crowded(ctx, known)
		return p.once(pairs)
	}
	finds := append([]func() []Finding{crowded}, p.checks()...)
	kinds := make([][]Finding, len(finds))
	if err := each(ctx, len(finds), func() func(int) { return func(i int) { kinds[i] = finds[i]() } }); err != nil {
		return nil, false, err
	}
	found = slices.Concat(kinds...)
	slices.SortStableFunc(found, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), slices.Compare(a.Cuts, b.Cuts))
	})
	return found, overfull, nil
}

// findings is check without an end from outside.
func (p *Plan) findings() []Finding {
	found, _, _ := p.check(context.Background(), nil)
	return found
}

// crowded lists the pairs of cuts that come too near one another, but no more than
// is enough to refuse them all.
func (p *Plan) crowded(ctx context.Context, known *knownLands) (found []Finding, overfull bool) {
	for f := range p.crowdKnown(ctx, known) {
		if found = append(found, f); len(found) > maxFound {
			return found, true
		}
	}
	return found, false
}

// has reports whether a kind is found on just the given motifs. Land takes long
// to measure: it is where it matters, until the first finding.
func (p *Plan) has(kind Kind, motifs []int) bool {
	is := func(f Finding) bool {
		about, _ := p.About(f)
		return f.Kind == kind && slices.Equal(about, motifs)
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
