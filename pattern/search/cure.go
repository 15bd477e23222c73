package search

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Cures finds a cure for each trouble of some plans of one job, as pattern.Lay made
// them, and notes it on each of its findings. The error is the context's: then some
// have none.
func Cures(ctx context.Context, plans ...*pattern.Plan) error {
	known := newSurvey(ctx) // a cure is tried on all blanks: what is seen for one serves the next
	for _, p := range plans {
		known.cureAll(p)
	}
	if err := known.Err(); err != nil {
		return fmt.Errorf("looking for cures: %w", err)
	}
	return nil
}

// survey is what is known of all blanks of a job: what has been tried on them, and
// the cures that were told.
type survey struct {
	*pattern.Evaluator
	told []told // those that bring nothing, on any blank
}

func newSurvey(ctx context.Context) *survey {
	return &survey{Evaluator: pattern.NewEvaluator(ctx)}
}

// cureAll finds the cures of one plan.
func (s *survey) cureAll(p *pattern.Plan) {
	troubles := troubles(p)
	if len(troubles) == 0 {
		return
	}
	if heavy(p) {
		uncured(p)
		return
	}
	c := &curing{Plan: p, survey: s}
	var err error
	if c.before, err = s.Draft(p.Job, p.Blank); err != nil {
		uncured(p)
		return
	}
	c.had = c.before.Problems()
	for _, g := range troubles {
		cure := pattern.Cure{Text: unsought}
		if !c.Spent() {
			cure = c.cure(g)
		}
		if cure.Changes == nil && c.Spent() {
			cure = c.toldBefore(g, cure)
		}
		for i, f := range p.Findings {
			if about, _ := p.About(f); f.Kind == g.Kind && slices.Equal(about, g.Motifs) {
				p.Findings[i].Cure = cure
			}
		}
	}
}

// heavy reports whether a plan alone takes so much measuring that hardly a change
// could be tried on it.
func heavy(p *pattern.Plan) bool {
	const some = 8 // changes
	return p.Toil() > pattern.MostTried/some
}

// unsought is the cure of what none was looked for.
const unsought = "none was looked for: there are too many cuts to try changes on"

// uncured says of findings that no cure was looked for.
func uncured(p *pattern.Plan) {
	for i := range p.Findings {
		p.Findings[i].Cure = pattern.Cure{Text: unsought}
	}
}

// troubles returns the findings of one kind on the same motifs, whatever their
// parts: what one cure has to clear.
func troubles(p *pattern.Plan) []pattern.Group {
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

// curing looks for the cures of one plan's findings.
type curing struct {
	*pattern.Plan
	*survey
	before *pattern.Draft
	had    pattern.Problems
}

// proven is a remedy that clears, and what it brings with it.
type proven struct {
	remedy
	fresh, more []pattern.Problem
}

func (r proven) clean() bool { return len(r.fresh)+len(r.more) == 0 }

// cure returns what cures a group: where its wheel bridges a hollow, a smaller one
// too, for whatever follows from that.
func (c *curing) cure(g pattern.Group) pattern.Cure {
	cure := c.change(g)
	for _, f := range g.Findings {
		if g.Kind != pattern.Bridged && len(f.Cuts) > 0 && c.cut(f).Bridges() {
			return c.orWheel(g, cure)
		}
	}
	return cure
}

// change returns the smallest single change that clears a group and brings
// nothing with it. Each is tried on a copy of the job before it is offered; of
// those that do bring something, the one that brings least is told, and what.
func (c *curing) change(g pattern.Group) pattern.Cure {
	switch g.Kind {
	case pattern.Crowded:
		if len(g.Motifs) == 2 {
			return c.first(g, "", c.moves(g, 1, -1), c.sideways(g), c.fewer(g), c.lighter(g), c.fewerRepeats(), c.narrower(g), c.lower(g), c.wheels(g))
		}
		return c.first(g, "", c.closer(g), c.fewer(g), c.lighter(g), c.fewerRepeats(), c.narrower(g), c.larger(g), c.wheels(g))
	case pattern.Off:
		below, above := c.ends(g)
		return c.first(g, "", c.inwards(g, below, above), c.closer(g), c.smaller(g), c.fewerRepeats(), c.fewer(g), c.lighter(g))
	case pattern.Thin:
		return c.keepBelow(g, c.first(g, "", c.lighter(g), c.finer(g), c.wheels(g), c.moves(g, -1), c.lower(g)))
	case pattern.Rim, pattern.Foot:
		return c.first(g, "", c.inwards(g, g.Kind == pattern.Foot, g.Kind == pattern.Rim), c.shorterBand(g), c.lighter(g), c.finer(g), c.smaller(g))
	case pattern.Buried:
		return c.first(g, "", c.lighter(g), c.finer(g), c.wheels(g))
	case pattern.Tight:
		return c.orWheel(g, c.first(g, c.curve(g), c.straighter(g), c.wheels(g), c.fewer(g), c.larger(g)))
	case pattern.Uneven:
		return c.first(g, "", c.lighter(g), c.flatterBand())
	case pattern.Bridged:
		return c.orWheel(g, c.first(g, "", c.wheels(g), c.moves(g, 1, -1), c.lower(g)))
	case pattern.Shallow:
		needed := fmt.Sprintf("marks of %s would reach it", c.Job.Length.AtLeast(c.shortestMark(g)))
		return c.cheapest(g, needed, c.larger(g), c.lighter(g), c.fewer(g), c.wheels(g))
	}
	return pattern.Cure{Text: "no single change known"}
}

// first returns the first cure that the courses come to, in their order, that
// brings nothing with it; if each does, the one that brings least. Where none
// clears it says so, and what else there is to know.
func (c *curing) first(g pattern.Group, known string, courses ...[]course) pattern.Cure {
	var best *proven
	for _, all := range courses {
		found := c.mildest(g, all)
		for i, r := range found {
			if r.clean() {
				return c.told(g, found[i])
			}
			if best == nil || len(r.fresh)+len(r.more) < len(best.fresh)+len(best.more) {
				best = &found[i]
			}
		}
	}
	if best != nil {
		return c.told(g, *best)
	}
	text := "no single change was found that clears it (fit tries several together)"
	if c.Spent() {
		text = "no single change was found that clears it, among as many as are tried on so many cuts"
	}
	if known != "" {
		text += "; " + known
	}
	return pattern.Cure{Text: text}
}

// cheapest is first, but the order is that of what the cures cost.
func (c *curing) cheapest(g pattern.Group, known string, courses ...[]course) pattern.Cure {
	return c.first(g, known, slices.Concat(courses...))
}

// told returns a remedy as a cure, whose words name what it brings with it.
func (c *curing) told(g pattern.Group, r proven) pattern.Cure {
	if brings := c.brings(g, r); brings != "" {
		r.text += "; then " + brings
	} else {
		c.survey.told = append(c.survey.told, told{g.Kind, pattern.Two(g.Motifs), r.remedy})
	}
	return pattern.Cure{Text: r.text, Changes: r.changes}
}

// told is a cure that was told for a kind of finding on some motifs.
type told struct {
	kind   pattern.Kind
	motifs [2]int
	remedy
}

// toldBefore returns what cured the same trouble on another blank of the set, if it
// clears this one: it brings nothing on any. So a set whose cures can't all be
// looked for gets those that were found. Otherwise it returns the given cure.
func (c *curing) toldBefore(g pattern.Group, otherwise pattern.Cure) pattern.Cure {
	for _, known := range c.survey.told {
		if known.kind != g.Kind || known.motifs != pattern.Two(g.Motifs) {
			continue
		}
		d, err := c.Draft(c.Job.With(known.changes...), c.Blank)
		if err == nil && !d.Finds(g.Kind, g.Motifs) {
			return pattern.Cure{Text: known.text, Changes: known.changes}
		}
	}
	return otherwise
}

// brings says what a remedy brings with it, or "".
func (c *curing) brings(g pattern.Group, r proven) string {
	var all []string
	tell := func(some []pattern.Problem, new string) {
		for _, s := range some {
			who, what := "it is ", new+strings.ToUpper(s.Kind.String())
			switch {
			case s.Motifs == pattern.Two(g.Motifs):
			case s.Motifs[0] < 0:
				who = "the glass is "
			case s.Motifs[1] < 0:
				who = name(c.Job, s.Motifs[0]) + " is "
			default:
				who = name(c.Job, s.Motifs[0]) + " and " + name(c.Job, s.Motifs[1]) + " are "
			}
			if s.Blank != "" {
				what += fmt.Sprintf(" on blank %q", s.Blank)
			}
			if !slices.Contains(all, who+what) {
				all = append(all, who+what)
			}
		}
	}
	tell(r.fresh, "")
	tell(r.more, "more ")
	return strings.Join(all, ", and ")
}

// mildest returns from each course the mildest remedy that clears, the cheapest
// first.
func (c *curing) mildest(g pattern.Group, courses []course) []proven {
	var all []proven
	for _, one := range courses {
		if r, ok := c.least(g, one); ok {
			all = append(all, r)
		}
	}
	slices.SortStableFunc(all, func(a, b proven) int { return cmp.Compare(a.costs, b.costs) })
	return all
}

// least returns the mildest remedy of a course that clears a group, or where that
// brings something with it, one further on that doesn't.
func (c *curing) least(g pattern.Group, all course) (proven, bool) {
	high := gallop(len(all), func(n int) bool { return c.clears(g, all[n]) })
	if high == len(all) {
		return proven{}, false
	}
	best, found := c.prove(g, all[high])
	try := func(n int) bool {
		if c.clears(g, all[n]) {
			if r, ok := c.prove(g, all[n]); ok && (!found || r.clean()) {
				best, found = r, true
			}
		}
		return found && best.clean()
	}
	// In longer and longer strides, and then between the last two.
	last := high
	for _, further := range []int{1, 2, 3, 6, 12, 16, 24} {
		n := high + further
		if n >= len(all) || found && best.clean() {
			break
		}
		if try(n) {
			mildest := best
			for between := last + 1; between < n; between++ {
				if best, found = (proven{}), false; try(between) {
					return best, true
				}
			}
			return mildest, true
		}
		last = n
	}
	return best, found
}

// clears reports whether a remedy leaves nothing of a group's kind on its motifs.
func (c *curing) clears(g pattern.Group, r remedy) bool {
	d, err := c.Try(c.Job.With(r.changes...), c.Blank)
	return err == nil && !d.Finds(g.Kind, g.Motifs)
}

// prove finds what a remedy that clears a group brings with it. It is none where
// another blank of the set can't be laid out then.
func (c *curing) prove(g pattern.Group, r remedy) (proven, bool) {
	fresh, more, ok := c.effects(g, c.Evaluator, c.Job.With(r.changes...))
	return proven{r, fresh, more}, ok
}

// effects returns what is found on a changed job that isn't on this one, here and
// on the other blanks of the set: there, the group's own kind counts too.
func (c *curing) effects(g pattern.Group, e *pattern.Evaluator, after *job.Job) (fresh, more []pattern.Problem, ok bool) {
	others := slices.DeleteFunc(slices.Clone(c.Job.Blanks), func(b *glass.Blank) bool { return b == c.Blank })
	for _, b := range append([]*glass.Blank{c.Blank}, others...) {
		d, err := e.Try(after, b)
		if err != nil {
			return nil, nil, false
		}
		had, own, name := c.had, g, ""
		if b != c.Blank {
			had, own, name = pattern.Problems{}, pattern.Group{Kind: -1}, b.Name
			if before, err := c.Try(c.Job, b); err == nil {
				had = before.Problems()
			}
		}
		now, worse := d.Problems().Beyond(had, own.Kind, own.Motifs)
		for i := range now {
			now[i].Blank = name
		}
		for i := range worse {
			worse[i].Blank = name
		}
		fresh, more = append(fresh, now...), append(more, worse...)
	}
	return fresh, more, true
}
