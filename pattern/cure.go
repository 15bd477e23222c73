package pattern

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// cureAll finds a cure for each trouble, and notes it on each of its findings.
func (p *Plan) cureAll(known *survey) {
	troubles := p.troubles()
	if len(troubles) == 0 {
		return
	}
	c := &curing{Plan: p, survey: known}
	if c.before = c.with(p, nil); c.before == nil {
		return
	}
	c.had = c.sites(c.before)
	for _, g := range troubles {
		cure := c.cure(g)
		for i, f := range p.Findings {
			if about, _ := p.about(f); f.Kind == g.Kind && slices.Equal(about, g.Motifs) {
				p.Findings[i].Cure = cure
			}
		}
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

// remedy is changes that may cure, and what they take from the look: a share.
type remedy struct {
	changes []Change
	costs   float64
	text    string
}

// course is remedies of one sort, from the mildest on.
type course []remedy

// proven is a remedy that clears, and what it brings with it.
type proven struct {
	remedy
	fresh, more []site
}

func (r proven) clean() bool { return len(r.fresh)+len(r.more) == 0 }

// cure returns the smallest single change that clears a group and brings
// nothing with it. Each is tried on a copy of the job before it is offered; of
// those that do bring something, the one that brings least is told, and what.
func (c *curing) cure(g Group) Cure {
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

// moves returns the courses that move each of a group's motifs: up the glass
// for 1, and down for -1.
func (c *curing) moves(g Group, ways ...float64) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, way := range ways {
			all = append(all, c.course(i, moves(c.Job, i, 0, way, upTo(40))))
		}
	}
	return all
}

// sideways moves them round the glass: a motif that runs on goes all round it
// already.
func (c *curing) sideways(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		if !c.before.runsOn(i) {
			all = append(all, c.course(i, moves(c.Job, i, 1, 0, upTo(40))), c.course(i, moves(c.Job, i, -1, 0, upTo(40))))
		}
	}
	return all
}

// inwards moves a motif back into the band from the end it runs over, if it is one.
func (c *curing) inwards(g Group, below, above bool) []course {
	switch {
	case below == above:
		return nil
	case below:
		return c.moves(g, 1)
	}
	return c.moves(g, -1)
}

// ends reports which ends of the band the cuts of a group run over.
func (c *curing) ends(g Group) (below, above bool) {
	for _, f := range g.Findings {
		if len(f.Cuts) == 1 {
			below = below || f.Measured < f.Wanted
			above = above || f.Measured > f.Wanted
		}
	}
	return below, above
}

// course makes a course of a row that changes one motif.
func (c *curing) course(i int, r row) course {
	all := make(course, len(r))
	for n, changes := range r {
		after := changedBy(c.Job, changes...)
		words := make([]string, len(changes))
		for k, change := range changes {
			switch words[k] = change.Key + " = " + change.Says(after); change.Key {
			case "depth":
				words[k] = "depth " + c.Job.Length.Given(change.Value)
			case "wheel":
				words[k] = "wheel " + change.Says(after)
			}
		}
		all[n] = remedy{changes, c.costs(changes), c.name(i) + ": " + strings.Join(words, ", ")}
	}
	return all
}

// costs returns what changes take from the look: the sum of the shares they
// change, where a move is a share of the band or the repeat, and another wheel
// has a price of its own.
func (c *curing) costs(changes []Change) float64 {
	const wheel = 0.25
	total := 0.0
	share := func(was, is float64) { total += math.Abs(is-was) / max(was, 1e-9) }
	for _, change := range changes {
		if change.Motif < 0 {
			continue
		}
		switch m := c.Job.Motifs[change.Motif]; change.Key {
		case "at":
			to := c.sized[change.Motif]
			to.Across, to.Up = change.At[0], change.At[1]
			is, whole := c.middle(c.set(to))
			was, _ := c.middle(c.set(c.sized[change.Motif]))
			total += math.Abs(is.X-was.X)/whole.X + math.Abs(is.Y-was.Y)/whole.Y
		case "wheel":
			total += wheel
		case "depth":
			share(m.Depth, change.Value)
		case "width":
			share(m.Width.Value, change.Value)
		case "height":
			share(m.Height.Value, change.Value)
		default:
			share(m.Values[change.Key], change.Value)
		}
	}
	return total
}

// fewer takes the counts of the group's motifs down.
func (c *curing) fewer(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, r := range countsDown(c.Job, i) {
			all = append(all, c.course(i, r))
		}
	}
	return all
}

// lighter takes their depths down, a caliper's step at a time.
func (c *curing) lighter(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		all = append(all, c.course(i, depths(c.Job, i, c.Job.Length.Step(), math.MaxInt)))
	}
	return all
}

// finer takes them down in small steps, which no caliper shows and the bench sheet
// does: for where a caliper's step takes so much that it brings something.
func (c *curing) finer(g Group) []course {
	step := map[geometry.Unit]float64{geometry.Inch: geometry.MillimetresPerInch / 1000, geometry.Millimetre: 0.02}[c.Job.Length]
	var all []course
	for _, i := range g.Motifs {
		all = append(all, c.course(i, depths(c.Job, i, step, math.MaxInt)))
	}
	return all
}

// wheels tries the rack's other wheels on the group's motifs.
func (c *curing) wheels(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, r := range otherWheels(c.Job, i) {
			all = append(all, c.course(i, r))
		}
	}
	return all
}

// fewerRepeats tries a few repeats less.
func (c *curing) fewerRepeats() []course {
	var all course
	for n := c.Repeats - c.Period; n >= max(c.Period, c.Repeats-8); n -= c.Period {
		all = append(all, remedy{
			[]Change{{Motif: -1, Key: "repeats", Value: float64(n)}}, 1 - float64(n)/float64(c.Repeats), fmt.Sprintf("repeats = %d", n),
		})
	}
	return []course{all}
}

// narrower, lower and smaller draw a group's motifs in, each by itself, a
// fiftieth at a time; larger makes their marks longer.
func (c *curing) narrower(g Group) []course { return c.sizes(g, times(50, 10, 50), "width") }
func (c *curing) lower(g Group) []course    { return c.sizes(g, times(50, 10, 50), "height") }
func (c *curing) smaller(g Group) []course {
	return c.sizes(g, times(50, 10, 50), "width", "height", "width height")
}
func (c *curing) larger(g Group) []course {
	return c.sizes(g, times(50, 150, 50), "width", "height", "width height")
}

// sizes changes sizes. The width of a motif that is meant to run on from repeat
// to repeat stays: else it wouldn't run on.
func (c *curing) sizes(g Group, by []float64, sides ...string) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, side := range sides {
			if strings.Contains(side, "width") && c.before.runsOn(i) {
				continue
			}
			all = append(all, c.course(i, resized(c.Job, i, strings.Fields(side), by)))
		}
	}
	return all
}

// closer makes a motif that nearly meets its next copy meet it, and one that
// lies on it just reach it.
func (c *curing) closer(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		all = append(all, c.course(i, closed(c.Job, i)))
	}
	return all
}

// shorterBand draws the end of the band in from the margin it runs into, by up
// to half. Both its ends are told, on the steps of the calipers.
func (c *curing) shorterBand(g Group) []course {
	step, length := c.Job.Length.Step(), c.Job.Length
	foot, top := -floor(-c.Band.Foot, step), floor(c.Band.Top, step)
	var all course
	for n := 1.0; n < (top-foot)/2/step; n++ {
		band, text := job.Band{Foot: foot, Top: top - n*step}, ""
		if g.Kind == Rim {
			text = fmt.Sprintf("lower the band's top %s, to %s", length.Text(c.Band.Top-band.Top), length.Text(band.Top))
		} else {
			band = job.Band{Foot: foot + n*step, Top: top}
			text = fmt.Sprintf("raise the band's foot %s, to %s", length.Text(band.Foot-c.Band.Foot), length.Text(band.Foot))
		}
		all = append(all, c.banded(band, text))
	}
	return []course{all}
}

// banded is a remedy that states the band, as the job is to have it.
func (c *curing) banded(band job.Band, text string) remedy {
	change := Change{Motif: -1, Key: "band", Band: band}
	if text != "" {
		text += ": "
	}
	share := 1 - (band.Top-band.Foot)/(c.Band.Top-c.Band.Foot)
	return remedy{[]Change{change}, share, text + "band = " + change.Says(changedBy(c.Job, change))}
}

// keepBelow adds to a cure for thin glass how far up the band may reach, if that
// clears, and whether it brings anything; and puts it first where it alone brings
// nothing.
func (c *curing) keepBelow(g Group, cure Cure) Cure {
	depth := 0.0
	for _, i := range g.Motifs {
		depth = max(depth, c.Job.Motifs[i].Depth)
	}
	step := c.Job.Length.Step()
	top := floor(c.Blank.Carries(c.Job.Limits.Leave+depth, 0), step)
	if top < c.Band.Foot+leastBand {
		return cure
	}
	text := "keep it below " + c.Job.Length.Text(top)
	r := c.banded(job.Band{Foot: c.Band.Foot, Top: top}, text)
	if !c.clears(g, r) {
		return cure
	}
	below, ok := c.prove(g, r)
	if !ok {
		return cure
	}
	switch {
	case cure.Changes == nil, below.clean() && strings.Contains(cure.Text, "; then "):
		return c.told(g, below)
	case strings.Contains(cure.Text, "; then "):
		return cure
	case below.clean():
		cure.Text += ", or " + text
	default:
		cure.Text += ", or " + text + " (which brings other findings)"
	}
	return cure
}

// straighter bends the lines of the group's motifs less.
func (c *curing) straighter(g Group) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, r := range straighter(c.Job, i) {
			all = append(all, c.course(i, r))
		}
	}
	return all
}

// orWheel adds to a cure of lines too tight which wheel like the motif's own
// would do: one that a job may have, that clears it, and brings nothing with it.
func (c *curing) orWheel(g Group, cure Cure) Cure {
	u, most := c.Job.Length, math.Inf(1)
	for _, f := range g.Findings {
		cut := c.Cuts[(f.Cuts[0]-1)%len(c.Cuts)]
		if r := cut.WheelFor(c.Job.Rack[cut.Wheel], mostSweep); r > 0 {
			most = math.Min(most, r)
		}
	}
	across := floor(2*most, u.Step())
	i := g.Motifs[0]
	wheel := c.Job.Rack[c.Job.Motifs[i].Wheel]
	wheel.Radius = across / 2
	if math.IsInf(most, 1) || !job.TakesWheel(wheel) {
		return cure
	}
	// Other trials have another rack.
	j := c.Job.Clone()
	j.Rack = append(slices.Clone(j.Rack), wheel)
	j.Motifs[i].Wheel = len(j.Rack) - 1
	s := newSurvey()
	tr, err := s.on(j, c.Blank)
	if err != nil || s.finds(tr, g) {
		return cure
	}
	if fresh, more, ok := c.effects(g, s, j); !ok || len(fresh)+len(more) > 0 {
		return cure
	}
	text := fmt.Sprintf("a wheel up to %s across", u.Text(across))
	if cure.Changes == nil {
		return Cure{Text: text}
	}
	cure.Text += ", or " + text
	return cure
}

// curve says which curve the group's wheel would follow.
func (c *curing) curve(g Group) string {
	curve := 0.0
	for _, f := range g.Findings {
		curve = max(curve, c.Cuts[(f.Cuts[0]-1)%len(c.Cuts)].CurveFor(mostSweep))
	}
	return fmt.Sprintf("this wheel follows curves of radius %s and more", c.Job.Length.AtLeast(curve))
}

// flatterBand draws in either end of the band.
func (c *curing) flatterBand() []course {
	step := c.Job.Length.Step()
	foot, top := -floor(-c.Band.Foot, step), floor(c.Band.Top, step)
	var lower, higher course
	for n := 1.0; top-foot-n*step >= leastBand; n++ {
		lower = append(lower, c.banded(job.Band{Foot: foot, Top: top - n*step}, ""))
		higher = append(higher, c.banded(job.Band{Foot: foot + n*step, Top: top}, ""))
	}
	return []course{lower, higher}
}

// shortestMark returns the longest mark that any cut of the group needs to
// reach the depth it was asked for.
func (c *curing) shortestMark(g Group) float64 {
	longest := 0.0
	for _, f := range g.Findings {
		cut := c.Cuts[(f.Cuts[0]-1)%len(c.Cuts)]
		longest = max(longest, cut.LengthFor(c.Surface, c.Job.Rack[cut.Wheel], cut.Asked))
	}
	return longest
}

// name names a motif in a cure.
func (p *Plan) name(i int) string {
	return fmt.Sprintf("motif %d (%s)", i+1, p.Job.Motifs[i].Kind.Name)
}

// floor returns the greatest multiple of a step that is not above a length.
func floor(length, step float64) float64 { return math.Floor(length/step+1e-9) * step }
