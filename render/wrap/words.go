package wrap

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/page"
	"roundlay/render/report"
)

// notes returns what is to be read beside the paper: divider settings, the key
// to its lines, how it fits, which wheel cuts what, what the check found, and
// what it can't show. Overlaps tells that it comes in pieces that show some of
// each other.
func (a composer) notes(overlaps bool) []page.Note {
	return append(a.setting(overlaps), a.found()...)
}

// setting returns the notes that are not about findings.
func (a composer) setting(overlaps bool) []page.Note {
	notes := a.settings(overlaps)
	for _, words := range append(a.readings(), a.fitWords()...) {
		notes = append(notes, page.Note{Words: words, Size: 9})
	}
	return append(notes, a.wheels()...)
}

// found returns the notes that letters stand for, in their order.
func (a composer) found() []page.Note { return append(a.findings(), a.unseen()...) }

// remarks returns what the command tells besides.
func (a composer) remarks() []string {
	remarks := capitals(report.PaperEnds(a.sheet.plan, a.sheet.face, "this paper"))
	if a.sheet.curved { // a small misfit is for the page alone
		remarks = a.fitWords()
	}
	remarks = append(a.readings(), remarks...)
	for _, n := range a.unseen() {
		remarks = append(remarks, n.Words)
	}
	if p := a.options.Printed; !p.True() {
		remarks = append(remarks, p.Corrected())
	}
	return remarks
}

func (a composer) settings(overlaps bool) []page.Note {
	p, u := a.sheet.plan, a.sheet.plan.Job.Length
	notes := []page.Note{{Words: a.dividing(), Size: 10, Bold: true}}
	for _, c := range p.Chords {
		if c.Name == pattern.PaperEdge && a.sheet.side == Inside {
			continue // the outside paper's
		}
		notes = append(notes, page.Note{Words: capital(dividers(u, c)), Size: 9, Item: true})
	}
	return append(notes, page.Note{Size: 9, Words: a.marking() +
		" Heavy: the cuts to trace. Grey: each groove at its true width. Dashed: the band's ends. " +
		"Hatched: too thin for the cuts there or, where none stand, for any of the job's. Chain lines: the repeats' middles. Small numbers: the cuts, as they are listed." + a.ends() + beyond(overlaps)})
}

// marking says where to step the marks, and how the paper meets them.
func (a composer) marking() string {
	if a.sheet.plan.Repeats == 1 {
		return a.markingOnce()
	}
	switch {
	case a.sheet.side == Inside:
		return "Step the mark round the foot first, then turn the paper until each middle line stands over its mark."
	case a.sheet.face.Lower.Why == pattern.Whole:
		return "Step the mark round the foot first, then stand each base tick on its mark."
	}
	return fmt.Sprintf("Draw a line round the glass %s above the table: hold the pencil on a block and turn the glass past it. "+
		"Step the marks along it with the dividers set for the paper edge, then stand the paper's lower edge on the line, each tick on its mark. "+
		"Marks round the foot stand plumb below the ticks: a square on the table carries them up.",
		a.sheet.plan.Job.Length.Text(a.sheet.face.Low))
}

// beyond says whose lines lie past a match line, where there are any.
func beyond(overlaps bool) string {
	if !overlaps {
		return ""
	}
	return " What lies beyond a match line is the neighbouring piece's, to lay the two together by."
}

// wheels says with which wheel each motif is cut and how deep, by the numbers
// its cuts have in the first repeat.
func (a composer) wheels() []page.Note {
	p := a.sheet.plan
	type line struct{ motif, wheel int }
	var lines []line
	cuts := map[line][]pattern.Cut{}
	for _, c := range p.Cuts {
		l := line{c.Motif, c.Wheel}
		if cuts[l] == nil {
			lines = append(lines, l)
		}
		cuts[l] = append(cuts[l], c)
	}
	which := "the first repeat"
	if p.Period > 1 {
		which = fmt.Sprintf("the first %d repeats", p.Period)
	}
	notes := make([]page.Note, 0, len(lines))
	for _, l := range lines {
		var ids []int
		least, most := math.Inf(1), 0.0
		for _, c := range cuts[l] {
			ids = append(ids, c.ID)
			least, most = min(least, c.Depth), max(most, c.Depth)
		}
		slices.Sort(ids)
		what := "Cuts"
		if len(ids) == 1 {
			what = "Cut"
		}
		notes = append(notes, page.Note{Size: 9, Item: true, Words: fmt.Sprintf("%s %s of %s: %s, %s, %s deep.",
			what, report.Numbers(ids), which, p.Job.Motifs[l.motif].Kind.Name, p.Job.Rack[l.wheel].Name, span(p.Job.Length, least, most))})
	}
	return notes
}

// span writes what two lengths lie between, or one where they read the same.
func span(u geometry.Unit, least, most float64) string {
	if u.Fine(least) == u.Fine(most) {
		return u.Fine(most)
	}
	return strings.TrimSuffix(u.Fine(least), " "+u.String()) + " to " + u.Fine(most)
}

// ends says how the paper's two ends meet, and where.
func (a composer) ends() string {
	if a.sheet.apart() {
		return ""
	}
	how := "are taped edge to edge"
	if a.sheet.tab {
		how = "meet on the tab"
	}
	return fmt.Sprintf(" The two ends %s, left of repeat %d. Drawn for paper %s thick.",
		how, a.sheet.at, a.sheet.plan.Job.Length.Fine(a.sheet.thickness))
}

// fitWords says how well the paper fits the glass, where it is not perfect.
func (a composer) fitWords() []string {
	s, u := a.sheet, a.sheet.plan.Job.Length
	misfit := fmt.Sprintf("%s in radius", u.Fine(s.face.Misfit))
	ends := report.PaperEnds(s.plan, s.face, "this paper")
	if s.curved {
		what := "The glass is curved"
		if s.side == Inside {
			what = "The inside is curved"
		}
		words := fmt.Sprintf("%s: on the %s it leaves the nearest cone by up to %s. So the paper is in %d gores, %d to a repeat%s. ",
			what, a.reaching(), misfit, s.parts, s.gores.PerRepeat, a.joined())
		words += "Round each gore and up its middle lengths are true; along its edges the paper is " + a.edgeError() +
			" the glass from end to end of the " + a.reaching() + ". Rub it down from the middle."
		return append([]string{words}, capitals(ends)...)
	}
	var words []string
	if !nothing(u, s.face.Misfit) {
		words = append(words, fmt.Sprintf("On the %s the glass leaves this paper's cone by up to %s, which is %s of girth.",
			a.reaching(), misfit, u.Fine(2*math.Pi*s.face.Misfit)))
	}
	return append(words, capitals(ends)...)
}

// capitals returns sentences that begin with one.
func capitals(sentences []string) []string {
	for i, words := range sentences {
		sentences[i] = capital(words)
	}
	return sentences
}

// reaching names what gores were made to lie on.
func (a composer) reaching() string {
	if a.sheet.plan.Blank.Paper != nil {
		return "paper"
	}
	return "band"
}

// readings says which readings are off a straight line, where that matters.
func (a composer) readings() []string {
	words := report.Readings(a.sheet.plan)
	for i := range words {
		words[i] = capital(words[i])
	}
	return words
}

// joined says what holds gores together.
func (a composer) joined() string {
	if !a.sheet.joined {
		return ", each a paper of its own: joined in a row they would lie on each other. Tape them edge to edge"
	}
	where := "at their widest"
	for z := a.sheet.low; z <= a.sheet.high; z++ {
		if a.sheet.gore.RadiusAt(z) > a.sheet.gore.RadiusAt(a.sheet.joint)+0.5 {
			where = a.sheet.plan.Job.Length.Text(a.sheet.joint) + " above the table"
		}
	}
	return ", joined " + where + ": cut between them, and leave what is not parted by a line"
}

// edgeError says how much a gore's edges are out.
func (a composer) edgeError() string {
	g, u := a.sheet.gores, a.sheet.plan.Job.Length
	switch {
	case nothing(u, g.Worst()):
		return fmt.Sprintf("within %s of", finest(u))
	case nothing(u, g.Gain):
		return fmt.Sprintf("up to %s shorter than", u.Fine(g.Loss))
	case nothing(u, g.Loss):
		return fmt.Sprintf("up to %s longer than", u.Fine(g.Gain))
	}
	return fmt.Sprintf("up to %s longer or %s shorter than", u.Fine(g.Gain), u.Fine(g.Loss))
}

// nothing reports whether a length is written as a row of noughts.
func nothing(u geometry.Unit, mm float64) bool { return u.Fine(mm) == u.Fine(0) }

// finest writes the least length that is not.
func finest(u geometry.Unit) string {
	noughts := u.Fine(0)
	i := strings.LastIndexByte(noughts, '0')
	return noughts[:i] + "1" + noughts[i+1:]
}

// unseen lists the cuts that the paper can't carry.
func (a composer) unseen() []page.Note {
	p, face := a.sheet.plan, a.sheet.face
	groups := p.UnseenGroups(face)
	if len(groups) == 0 {
		return nil
	}
	u := p.Job.Length
	low, high := face.Carries()
	floor := u.Text(p.Blank.Floor) + " above the table"
	if opposite := u.Text(low); opposite != u.Text(p.Blank.Floor) {
		floor += " and opposite " + opposite + " outside"
	}
	heading := fmt.Sprintf("Below the inside floor, %s, this paper carries nothing. Print what lies there as patches (--side patches):", floor)
	if a.sheet.side != Inside || face.Lower.Why != pattern.Whole || face.Upper.Why != pattern.Whole {
		heading = fmt.Sprintf("This paper carries what lies between %s and %s above the table. Not on it:", u.Text(low), u.Text(high))
	}
	notes := []page.Note{{Size: 9, Bold: true, Words: heading}}
	for _, g := range groups {
		notes = append(notes, page.Note{Size: 9, Mark: g.Letter, Words: a.unseenWords(g)})
	}
	return notes
}

// unseenWords names the cuts of a group, those that lie off the paper wholly and
// those that do partly.
func (a composer) unseenWords(g pattern.Group) string {
	p := a.sheet.plan
	var wholly, partly []int
	lowest, highest := math.Inf(1), math.Inf(-1)
	for _, f := range g.Findings {
		if f.Measured < f.Wanted {
			lowest = min(lowest, f.Measured)
		} else {
			highest = max(highest, f.Measured)
		}
		if p.Hidden(f) {
			wholly = append(wholly, f.Cuts[0])
		} else {
			partly = append(partly, f.Cuts[0])
		}
	}
	var which []string
	if len(wholly) > 0 {
		which = append(which, "wholly cuts "+report.Numbers(wholly))
	}
	if len(partly) > 0 {
		which = append(which, "partly cuts "+report.Numbers(partly))
	}
	var reach []string
	if !math.IsInf(lowest, 0) {
		reach = append(reach, "down to "+p.Job.Length.Text(lowest))
	}
	if !math.IsInf(highest, 0) {
		reach = append(reach, "up to "+p.Job.Length.Text(highest))
	}
	m := g.Motifs[0]
	words := fmt.Sprintf("unseen: motif %d (%s), %s: %s, %s above the table",
		m+1, p.Job.Motifs[m].Kind.Name, strings.Join(g.Parts, " and "), strings.Join(which, ", "), strings.Join(reach, " and "))
	if p.Turns() > 1 {
		words += fmt.Sprintf("; the same %d times round the glass", p.Turns())
	}
	return words + "."
}

func (a composer) findings() []page.Note {
	p := a.sheet.plan
	if len(p.Findings) == 0 {
		return []page.Note{{Words: "Checked: nothing is crowded, thin, shallow or out of place.", Size: 9, Bold: true}}
	}
	var notes []page.Note
	ringed := 0
	told, more := report.Told(p)
	for _, g := range told {
		words := fmt.Sprintf("%s: %s.", g.Kind, report.Measured(p, g.Worst()))
		if cure := report.Cure(p, g.Worst()); cure != "" {
			words += " Cure: " + cure + "."
		}
		if why := a.sheet.unringed(g); why == "" {
			ringed++
		} else {
			words += " Not ringed: " + why + "."
		}
		notes = append(notes, page.Note{Mark: g.Letter, Size: 9, Words: words})
	}
	heading := "Findings, ringed on the paper"
	switch {
	case ringed == 0:
		heading = "Findings"
	case ringed < len(notes):
		heading = "Findings, ringed on the paper where they have a place on it"
	}
	if more != "" {
		notes = append(notes, page.Note{Size: 9, Words: more})
	}
	return append([]page.Note{{Words: heading, Size: 10, Bold: true}}, notes...)
}

// unringed says why a group of findings has no ring on the paper, if it has none.
func (s *sheet) unringed(g pattern.Group) string {
	for _, r := range s.rings {
		if slices.Contains(r.letters, g.Letter) {
			return ""
		}
	}
	if !placed(g.Worst()) {
		return "it is of the glass as a whole"
	}
	return "it lies off this paper"
}

// letterRuns writes letters of findings, runs of them by their ends.
func letterRuns(groups []pattern.Group, on func(letter string) bool) string {
	var which []int
	for i, g := range groups {
		if on(g.Letter) {
			which = append(which, i)
		}
	}
	return report.Runs(which, func(i, before int) bool { return i == before+1 }, func(i int) string { return groups[i].Letter })
}

// dividers says how to set dividers for a circle, and where the last step falls.
func dividers(u geometry.Unit, c pattern.Chord) string {
	where := c.Name
	if c.Height > 0 {
		where += fmt.Sprintf(", %s above the table", u.Text(c.Height))
	}
	set := min(u.Setting(c.Chord).Length, 2*c.Radius)
	return fmt.Sprintf("%s, %s across: set %s; the last step will %s.", where, u.Text(2*c.Radius), u.Text(c.Chord),
		report.Closing(u, geometry.Division{Radius: c.Radius, Parts: c.Parts}.ClosingGap(set)))
}
