package search

import (
	"context"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Cures seeks a cure for each of the findings of some plans of one job, as Lay made
// them, on the base too, and notes it on them. The error is the context's: the plans have
// then the cures that were found so far.
func Cures(ctx context.Context, plans ...*pattern.Plan) error {
	known := newCures(ctx) // a cure is tried on all blanks: what is seen for one serves the next
	for _, p := range plans {
		for _, face := range p.Faces() {
			if err := known.of(face); err != nil {
				return err
			}
		}
	}
	return ctx.Err()
}

// cures is what is known of all blanks of a job: what has been tried on them, and
// the cures that were found. It lasts as long as one call that a context was given to.
type cures struct {
	*pattern.Evaluator
	ctx   context.Context
	found []foundCure // that bring nothing, on any blank
	// reaches are the evaluators of the job with shorter marks accepted, by limits.reach:
	// the blanks of a set mostly ask for the same.
	reaches map[float64]*pattern.Evaluator
}

// foundCure is a cure that was found for a kind of finding on some motifs.
type foundCure struct {
	kind    pattern.Kind
	motifs  [2]int
	changes candidate
}

func newCures(ctx context.Context) *cures {
	return &cures{Evaluator: pattern.NewEvaluator(), ctx: ctx, reaches: map[float64]*pattern.Evaluator{}}
}

// reaching returns the evaluator of the job with a value of limits.reach.
func (known *cures) reaching(reach float64) *pattern.Evaluator {
	e, ok := known.reaches[reach]
	if !ok {
		e = known.Relimited()
		known.reaches[reach] = e
	}
	return e
}

// of seeks the cures of one plan.
func (known *cures) of(p *pattern.Plan) error {
	groups := mergedGroups(p)
	if len(groups) == 0 {
		return nil
	}
	s := &cureSearch{Plan: p, cures: known}
	if err := s.begin(); err != nil {
		if known.ctx.Err() == nil {
			note(p, nil, &pattern.Cure{Tried: pattern.TriedNone})
		}
		return known.ctx.Err()
	}
	for _, g := range groups {
		cure := pattern.Cure{Tried: pattern.TriedNone}
		if !s.Spent() {
			cure = s.cure(g)
		}
		if err := s.ctx.Err(); err != nil {
			return err
		}
		if cure.Changes == nil && s.Spent() {
			cure = s.foundBefore(g, cure)
		}
		note(p, &g, &cure)
	}
	return nil
}

// note notes a cure on a group's findings, or on all that there are.
func note(p *pattern.Plan, g *pattern.Group, cure *pattern.Cure) {
	for i, f := range p.Findings {
		if about, _ := p.About(f); g == nil || f.Kind == g.Kind && slices.Equal(about, g.Motifs) {
			p.Findings[i].Cure = cure
		}
	}
}

// heavy reports whether a plan alone takes so much measuring that hardly a change
// could be tried on it.
func heavy(p *pattern.Plan) bool {
	const some = 8 // changes
	return p.Work() > pattern.MaxTried/some
}

// mergedGroups returns the findings of one kind on the same motifs, whatever their
// parts: what one cure has to clear.
func mergedGroups(p *pattern.Plan) []pattern.Group {
	var all []pattern.Group
	for _, g := range p.Groups() {
		i := slices.IndexFunc(all, func(h pattern.Group) bool { return h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs) })
		if i < 0 {
			all = append(all, g)
		} else {
			all[i].Findings = slices.Concat(all[i].Findings, g.Findings)
		}
	}
	return all
}

// cureSearch looks for the cures of one plan's findings.
type cureSearch struct {
	*pattern.Plan
	*cures
	before *pattern.Draft
	had    pattern.Problems
}

// begin looks at the job as it is. The error says why nothing can be tried.
func (s *cureSearch) begin() (err error) {
	if heavy(s.Plan) {
		return pattern.ErrSpent
	}
	if s.before, err = s.DraftOn(s.ctx, s.Job, s.Blank, s.Face); err != nil {
		return err
	}
	s.had = s.before.Problems()
	return nil
}

// cure returns what cures a group: where its wheel bridges a hollow, a smaller one
// too, for whatever follows from that.
func (s *cureSearch) cure(g pattern.Group) pattern.Cure {
	cure := s.change(g)
	for _, f := range g.Findings {
		if g.Kind != pattern.Bridged && len(f.Cuts) > 0 && s.cut(f).Bridges() {
			return s.orWheel(g, cure)
		}
	}
	return cure
}

// change returns the smallest single change that clears a group and brings
// nothing with it. Each is tried on a copy of the job before it is offered; of
// those that do bring something it is the one that brings least.
func (s *cureSearch) change(g pattern.Group) pattern.Cure {
	switch g.Kind {
	case pattern.Crowded:
		if len(g.Motifs) == 2 {
			// On the other repeats it may clear where it would have to be moved far.
			away := slices.Concat(s.moves(g, 1, -1), s.sideways(g), s.each(g, otherRepeats))
			return s.first(g, nil, away, s.gentler(g), s.fewer(g), s.lighter(g), s.fewerRepeats(), s.narrower(g), s.lower(g), s.wheels(g), s.byPart(g))
		}
		var apart []series // where copies crowd, what keeps them from one another comes first
		if slices.ContainsFunc(g.Findings, pattern.Finding.BetweenCopies) {
			apart = slices.Concat(s.closer(g), s.narrower(g), s.each(g, tapered))
			if s.Face == job.Base {
				return s.first(g, nil, s.outwards(g), apart, s.gentler(g), s.fewer(g), s.lighter(g), s.fewerRepeats(), s.larger(g), s.wheels(g), s.byPart(g))
			}
		}
		return s.first(g, nil, apart, s.closer(g), s.gentler(g), s.fewer(g), s.lighter(g), s.fewerRepeats(), s.narrower(g), s.larger(g), s.wheels(g), s.byPart(g))
	case pattern.Off:
		below, above := ends(g)
		return s.first(g, nil, s.inwards(g, below, above), slices.Concat(s.closer(g), s.smaller(g), s.each(g, tapered)), s.fewerRepeats(), s.fewer(g), s.lighter(g))
	case pattern.Thin:
		return s.keepBelow(g, s.first(g, nil, s.gentler(g), s.lighter(g), s.finer(g), s.wheels(g), s.moves(g, -1), s.lower(g), s.byPart(g)))
	case pattern.Rim, pattern.Foot, pattern.AtEdge:
		return s.first(g, nil, s.inwards(g, g.Kind == pattern.Foot, g.Kind != pattern.Foot), s.shorterBand(g), s.gentler(g), s.lighter(g), s.finer(g), s.smaller(g), s.byPart(g))
	case pattern.Buried:
		return s.first(g, nil, s.gentler(g), s.lighter(g), s.finer(g), s.wheels(g), s.byPart(g))
	case pattern.Tight:
		cure := s.first(g, s.tightestCurve(g), s.straighter(g), s.wheels(g), s.fewer(g), s.larger(g), s.byPart(g))
		return s.orWheel(g, s.orOnRack(g, cure))
	case pattern.Uneven:
		return s.first(g, nil, s.lighter(g), s.flatterBand())
	case pattern.Bridged:
		return s.orWheel(g, s.first(g, nil, s.wheels(g), s.moves(g, 1, -1), s.lower(g), s.byPart(g)))
	case pattern.Shallow:
		// One list: the order is that of what the candidates cost.
		all := slices.Concat(s.larger(g), s.each(g, longer), s.lightest(g), s.fewer(g), s.wheels(g))
		return s.orAccept(g, s.first(g, s.shortestMark(g), all, s.byPart(g)))
	}
	return pattern.Cure{Tried: pattern.NothingToTry}
}

// first returns the first cure that the lists of series come to, in their order, that
// brings nothing with it; if each does, the one that brings least. Where none
// clears it says how far the search went, and what else there is to know.
func (s *cureSearch) first(g pattern.Group, known []pattern.Fact, lists ...[]series) pattern.Cure {
	var best *proven
	for _, list := range lists {
		found := s.mildest(g, list)
		for i, r := range found {
			if len(r.brings) == 0 {
				cure := s.found(g, found[i])
				if severalWays(g.Kind) || s.Face == job.Base && g.Kind == pattern.Crowded {
					cure.Or = others(found[i].candidate, found[i+1:])
				}
				return cure
			}
			if best == nil || len(r.brings) < len(best.brings) {
				best = &found[i]
			}
		}
	}
	if best != nil {
		return s.found(g, *best)
	}
	cure := pattern.Cure{Known: known}
	if s.Spent() {
		cure.Tried = pattern.TriedSome
	}
	return cure
}

// found returns what was proven as a cure, and remembers it for other blanks of the
// set where it brings nothing.
func (s *cureSearch) found(g pattern.Group, r proven) pattern.Cure {
	if len(r.brings) == 0 {
		s.cures.found = append(s.cures.found, foundCure{g.Kind, pattern.MotifPair(g.Motifs), r.candidate})
	}
	return pattern.Cure{Changes: r.candidate, Brings: r.brings}
}

// foundBefore returns what cured the same problem on another blank of the set, if it
// clears this one: it brings nothing on any. So a set whose cures can't all be
// looked for gets those that were found. Otherwise it returns the given cure.
func (s *cureSearch) foundBefore(g pattern.Group, otherwise pattern.Cure) pattern.Cure {
	for _, known := range s.cures.found {
		if known.kind != g.Kind || known.motifs != pattern.MotifPair(g.Motifs) {
			continue
		}
		d, err := s.DraftOn(s.ctx, s.Job.With(known.changes...), s.Blank, s.Face)
		if err == nil && !d.Finds(g.Kind, g.Motifs) {
			return pattern.Cure{Changes: known.changes}
		}
	}
	return otherwise
}

// cut returns the period's cut that stands for the first of a finding's.
func (s *cureSearch) cut(f pattern.Finding) *pattern.Cut {
	return s.CutOf(f.Cuts[0])
}

// clears reports whether a candidate leaves nothing of a group's kind on its motifs.
func (s *cureSearch) clears(g pattern.Group, c candidate) bool {
	d, err := s.TryOn(s.ctx, s.Job.With(c...), s.Blank, s.Face)
	return err == nil && !d.Finds(g.Kind, g.Motifs)
}
