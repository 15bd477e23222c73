package pattern

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// cureAll finds a cure for each trouble, and notes it on each of its findings.
func (p *Plan) cureAll(known *survey) {
	troubles := p.troubles()
	if len(troubles) == 0 {
		return
	}
	if p.heavy() {
		p.uncured()
		return
	}
	c := &curing{Plan: p, survey: known}
	if c.before = c.with(p, nil); c.before == nil {
		p.uncured()
		return
	}
	c.had = c.sites(c.before)
	for _, g := range troubles {
		cure := Cure{Text: unsought}
		if !c.spent() {
			cure = c.cure(g)
		}
		for i, f := range p.Findings {
			if about, _ := p.about(f); f.Kind == g.Kind && slices.Equal(about, g.Motifs) {
				p.Findings[i].Cure = cure
			}
		}
	}
}

// heavy reports whether a plan alone takes so much measuring that hardly a change
// could be tried on it.
func (p *Plan) heavy() bool {
	const some = 8 // changes
	return p.reckoned() > mostTried/some
}

// unsought is the cure of what none was looked for.
const unsought = "none was looked for: there are too many cuts to try changes on"

// uncured says of findings that no cure was looked for.
func (p *Plan) uncured() {
	for i := range p.Findings {
		p.Findings[i].Cure = Cure{Text: unsought}
	}
}

// troubles returns the findings of one kind on the same motifs, whatever their
// parts: what one cure has to clear.
func (p *Plan) troubles() []Group {
	var all []Group
	for _, g := range p.Groups() {
		i := slices.IndexFunc(all, func(h Group) bool { return h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs) })
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
	*Plan
	*survey
	before *trial
	had    sites
}

// proven is a remedy that clears, and what it brings with it.
type proven struct {
	remedy
	fresh, more []site
}

func (r proven) clean() bool { return len(r.fresh)+len(r.more) == 0 }

// cure returns what cures a group: where its wheel bridges a hollow, a smaller one
// too, for whatever follows from that.
func (c *curing) cure(g Group) Cure {
	cure := c.change(g)
	for _, f := range g.Findings {
		if g.Kind != Bridged && len(f.Cuts) > 0 && c.of(f, 0).Bridges() {
			return c.orWheel(g, cure)
		}
	}
	return cure
}

// change returns the smallest single change that clears a group and brings
// nothing with it. Each is tried on a copy of the job before it is offered; of
// those that do bring something, the one that brings least is told, and what.
func (c *curing) change(g Group) Cure {
	switch g.Kind {
	case Crowded:
		if len(g.Motifs) == 2 {
			return c.first(g, "", c.moves(g, 1, -1), c.sideways(g), c.fewer(g), c.lighter(g), c.fewerRepeats(), c.narrower(g), c.lower(g), c.wheels(g))
		}
		return c.first(g, "", c.closer(g), c.fewer(g), c.lighter(g), c.fewerRepeats(), c.narrower(g), c.larger(g), c.wheels(g))
	case Off:
		below, above := c.ends(g)
		return c.first(g, "", c.inwards(g, below, above), c.closer(g), c.smaller(g), c.fewerRepeats(), c.fewer(g), c.lighter(g))
	case Thin:
		return c.keepBelow(g, c.first(g, "", c.lighter(g), c.finer(g), c.wheels(g), c.moves(g, -1), c.lower(g)))
	case Rim, Foot:
		return c.first(g, "", c.inwards(g, g.Kind == Foot, g.Kind == Rim), c.shorterBand(g), c.lighter(g), c.finer(g), c.smaller(g))
	case Buried:
		return c.first(g, "", c.lighter(g), c.finer(g), c.wheels(g))
	case Tight:
		return c.orWheel(g, c.first(g, c.curve(g), c.straighter(g), c.wheels(g), c.fewer(g), c.larger(g)))
	case Uneven:
		return c.first(g, "", c.lighter(g), c.flatterBand())
	case Bridged:
		return c.orWheel(g, c.first(g, "", c.wheels(g), c.moves(g, 1, -1), c.lower(g)))
	case Shallow:
		needed := fmt.Sprintf("marks of %s would reach it", c.Job.Length.AtLeast(c.shortestMark(g)))
		return c.cheapest(g, needed, c.larger(g), c.lighter(g), c.fewer(g), c.wheels(g))
	}
	return Cure{Text: "no single change known"}
}

// first returns the first cure that the courses come to, in their order, that
// brings nothing with it; if each does, the one that brings least. Where none
// clears it says so, and what else there is to know.
func (c *curing) first(g Group, known string, courses ...[]course) Cure {
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
	if c.spent() {
		text = "no single change was found that clears it, among as many as are tried on so many cuts"
	}
	if known != "" {
		text += "; " + known
	}
	return Cure{Text: text}
}

// cheapest is first, but the order is that of what the cures cost.
func (c *curing) cheapest(g Group, known string, courses ...[]course) Cure {
	return c.first(g, known, slices.Concat(courses...))
}

// told returns a remedy as a cure, whose words name what it brings with it.
func (c *curing) told(g Group, r proven) Cure {
	if brings := c.brings(g, r); brings != "" {
		r.text += "; then " + brings
	}
	return Cure{r.text, r.changes}
}

// brings says what a remedy brings with it, or "".
func (c *curing) brings(g Group, r proven) string {
	var all []string
	tell := func(some []site, new string) {
		for _, s := range some {
			who, what := "it is ", new+strings.ToUpper(s.kind.String())
			switch {
			case s.motifs == both(g.Motifs):
			case s.motifs[0] < 0:
				who = "the glass is "
			case s.motifs[1] < 0:
				who = c.name(s.motifs[0]) + " is "
			default:
				who = c.name(s.motifs[0]) + " and " + c.name(s.motifs[1]) + " are "
			}
			if s.blank != "" {
				what += fmt.Sprintf(" on blank %q", s.blank)
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
func (c *curing) mildest(g Group, courses []course) []proven {
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
func (c *curing) least(g Group, all course) (proven, bool) {
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
func (c *curing) clears(g Group, r remedy) bool {
	tr := c.with(c.Plan, r.changes)
	return tr != nil && !c.finds(tr, g)
}

// prove finds what a remedy that clears a group brings with it. It is none where
// another blank of the set can't be laid out then.
func (c *curing) prove(g Group, r remedy) (proven, bool) {
	fresh, more, ok := c.effects(g, c.survey, changedBy(c.Job, r.changes...))
	return proven{r, fresh, more}, ok
}

// effects returns what is found on a changed job that isn't on this one, here and
// on the other blanks of the set: there, the group's own kind counts too.
func (c *curing) effects(g Group, s *survey, after *job.Job) (fresh, more []site, ok bool) {
	others := slices.DeleteFunc(slices.Clone(c.Job.Blanks), func(b *glass.Blank) bool { return b == c.Blank })
	for _, b := range append([]*glass.Blank{c.Blank}, others...) {
		tr, err := s.on(after, b)
		if err != nil {
			return nil, nil, false
		}
		had, own, name := c.had, g, ""
		if b != c.Blank {
			had, own, name = sites{}, Group{Kind: -1}, b.Name
			if before, err := c.on(c.Job, b); err == nil {
				had = c.sites(before)
			}
		}
		now, worse := s.sites(tr).beyond(had, own)
		for i := range now {
			now[i].blank = name
		}
		for i := range worse {
			worse[i].blank = name
		}
		fresh, more = append(fresh, now...), append(more, worse...)
	}
	return fresh, more, true
}
