package report

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Cure says how to clear a finding: the change, the findings that it causes, and
// the alternatives. It is "" where no cure was sought.
func Cure(p *pattern.Plan, f pattern.Finding) string {
	cure := f.Cure
	if cure == nil {
		return ""
	}
	if advice := advised(cure.Advice); advice != "" {
		return advice
	}
	var ways []string
	for _, way := range Ways(p, f) {
		words := way.Words
		if named, rest, ok := strings.Cut(words, ": "); ok && len(ways) > 0 && strings.HasPrefix(ways[0], named+": ") {
			words = rest // of the motif that was just named
		}
		ways = append(ways, words)
	}
	if len(ways) == 0 {
		return uncured(p, cure)
	}
	words := strings.Join(ways, ", or ")
	if brings := brought(p, f, cure.Brings); brings != "" {
		words = ways[0] + "; then " + strings.Join(append([]string{brings}, ways[1:]...), ", or ")
	}
	return words
}

// Way is one way to clear a finding.
type Way struct {
	Words   string
	Page    string       // what it changes, for a person who has controls before them and no file
	Changes []job.Change // of the job; none where it is a wheel to buy
	Brings  string       // what else is found then; "" for nothing, or where Words says it
}

// Ways lists the ways to clear a finding, the one that Cure says first first. There are
// none where no cure was sought or found.
func Ways(p *pattern.Plan, f pattern.Finding) []Way {
	cure := f.Cure
	if cure == nil {
		return nil
	}
	var ways []Way
	if len(cure.Changes) > 0 {
		ways = append(ways, Way{changed(p, f, cure.Changes), ChangeWords(p, cure.Changes), cure.Changes, brought(p, f, cure.Brings)})
	}
	for _, or := range cure.Or {
		ways = append(ways, Way{Words: alternative(p, f, or), Page: pageAlternative(p, or), Changes: or.Changes})
	}
	if len(cure.Brings) == 0 { // what keeps the edge comes first
		slices.SortStableFunc(ways, func(a, b Way) int { return keeps(p, b) - keeps(p, a) })
	}
	return ways
}

// keeps is 1 for a way that leaves the wheel its edge, else 0.
func keeps(p *pattern.Plan, way Way) int {
	if pattern.OtherEdge(p.Job, way.Changes) {
		return 0
	}
	return 1
}

// advised says what to do where no change of the job is wanted.
func advised(a pattern.Advice) string {
	return [...]string{
		pattern.NoAdvice: "", pattern.MorePaper: "ask for more paper (blank.paper)",
		pattern.Patches: "print them as patches", pattern.ByHand: "mark them by hand",
	}[a]
}

// uncured says that no change was found, and what is known of the limit.
func uncured(p *pattern.Plan, cure *pattern.Cure) string {
	words := [...]string{
		pattern.TriedAll:     "no single change was found that clears it (fit tries several together)",
		pattern.TriedSome:    "no single change was found that clears it, and with so many cuts not all were tried",
		pattern.TriedNone:    "none was looked for: there are too many cuts to try changes on",
		pattern.NothingToTry: "no single change known",
	}[cure.Tried]
	for _, fact := range cure.Known {
		length := p.Job.Length.FormatUp(fact.Length)
		switch fact.Kind {
		case pattern.MarkLength:
			words += fmt.Sprintf("; marks of %s would reach it", length)
		case pattern.CurveRadius:
			words += fmt.Sprintf("; this wheel follows curves of radius %s and more", length)
		}
	}
	return words
}

// changed writes changes of a job, those of a motif after its name.
func changed(p *pattern.Plan, f pattern.Finding, changes []job.Change) string {
	after := p.Job.With(changes...)
	words := make([]string, len(changes))
	for i, c := range changes {
		words[i] = c.Key + " = " + c.Says(after)
		switch c.Key {
		case "depth":
			words[i] = "depth " + p.Job.Length.FormatChosen(c.Value)
		case "wheel":
			words[i] = "wheel " + c.Says(after) + looksDifferent(p.Job, c)
		case "band":
			words[i] = shorterBand(p, f.Kind, c.Band) + words[i]
		}
	}
	return strings.Join(byMotif(func(c job.Change) string { return c.Name(p.Job) }, changes, words), "; ")
}

// looksDifferent warns of a wheel with another edge than the one it takes the place of.
func looksDifferent(j *job.Job, c job.Change) string {
	if !pattern.OtherEdge(j, []job.Change{c}) {
		return ""
	}
	return " (another edge: the cut will look different)"
}

// byMotif puts what is said of changes after the names of their motifs: those together
// of which all the same is said.
func byMotif(called func(job.Change) string, changes []job.Change, words []string) []string {
	var names, said []string
	for i, c := range changes {
		name := ""
		if c.Motif >= 0 || c.Motif == job.OfBase {
			name = called(c)
		}
		if n := len(names); i > 0 && names[n-1] == name {
			and := " and "
			if strings.Contains(said[n-1], ", now ") {
				and = ", and "
			}
			said[n-1] += and + words[i]
		} else {
			names, said = append(names, name), append(said, words[i])
		}
	}
	var all []string
	for i := 0; i < len(names); {
		who, same := names[i], i+1
		for ; same < len(names) && said[same] == said[i]; same++ {
			who += " and " + names[same]
		}
		if who != "" {
			who += ": "
		}
		all = append(all, who+said[i])
		i = same
	}
	return all
}

// shorterBand says by how much a band's end is drawn in for a finding of a kind.
func shorterBand(p *pattern.Plan, kind pattern.Kind, band job.Band) string {
	u := p.Job.Length
	lower, higher := p.Band.Top-band.Top, band.Foot-p.Band.Foot
	switch {
	case kind == pattern.AtEdge && lower > 0:
		return fmt.Sprintf("end the band %s further in, %s from the middle: ", u.Format(lower), u.Format(band.Top))
	case kind == pattern.Rim && lower > 0:
		return fmt.Sprintf("lower the band's top %s, to %s: ", u.Format(lower), u.Format(band.Top))
	case kind == pattern.Foot && higher > 0:
		return fmt.Sprintf("raise the band's foot %s, to %s: ", u.Format(higher), u.Format(band.Foot))
	case kind == pattern.Thin:
		return below(u.Format(band.Top)) + ": "
	}
	return ""
}

func below(top string) string { return "keep it below " + top }

// alternative writes another way to clear a finding.
func alternative(p *pattern.Plan, f pattern.Finding, a pattern.Alternative) string {
	u := p.Job.Length
	switch {
	case ofWheel(a):
		return fmt.Sprintf("a wheel up to %s across", u.FormatDown(a.Diameter))
	case a.Changes[0].Motif == job.OfLimits:
		return accepted(p, a)
	case a.Changes[0].Key != "band":
		return changed(p, f, a.Changes)
	}
	return below(u.Format(a.Changes[0].Band.Top)) + bringing(a)
}

// bringing says of an alternative that it brings other findings, "" where it doesn't.
func bringing(a pattern.Alternative) string {
	if a.Brings {
		return " (which brings other findings)"
	}
	return ""
}

// accepted writes the limit that accepts marks shallower than asked, and their depth.
func accepted(p *pattern.Plan, a pattern.Alternative) string {
	c := a.Changes[0]
	return fmt.Sprintf("accept it: %s.%s = %s", c.Name(p.Job), c.Key, c.Says(p.Job.With(c))) + staying(p.Job.Length, a)
}

// staying says how deep the marks stay that an alternative accepts.
func staying(u geometry.Unit, a pattern.Alternative) string {
	deep := u.FormatDecimal(a.Depths[0])
	if most := u.FormatDecimal(a.Depths[1]); most != deep {
		deep += " to " + most
	}
	return fmt.Sprintf(" (they stay %s deep)", deep)
}

// brought lists the findings that a cure causes, "" if there are none.
func brought(p *pattern.Plan, f pattern.Finding, brings []pattern.Brought) string {
	about, _ := p.About(f)
	name := func(i int) string { return job.Change{Motif: i}.Name(p.Job) }
	var all []string
	for _, b := range brings {
		who := "it is "
		switch {
		case b.Motifs == pattern.MotifPair(about):
		case b.Motifs[0] < 0:
			who = "the glass is "
		case b.Motifs[1] < 0:
			who = name(b.Motifs[0]) + " is "
		default:
			who = name(b.Motifs[0]) + " and " + name(b.Motifs[1]) + " are "
		}
		if b.More {
			who += "more "
		}
		words := who + strings.ToUpper(b.Kind.String())
		if b.Blank != "" {
			words += fmt.Sprintf(" on blank %q", b.Blank)
		}
		if !slices.Contains(all, words) {
			all = append(all, words)
		}
	}
	return strings.Join(all, ", and ")
}
