package wrap

import (
	"fmt"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/page"
	"roundlay/render/report"
)

// notes returns what is to be read beside the paper: divider settings, the key to
// its lines, how it fits, which wheel cuts what, what the check found, and what it
// can't show. overlaps says that its pieces show a little of each other.
func (a composer) notes(overlaps bool, pieces []piece) []page.Note {
	return append(a.setting(overlaps, pieces), a.found()...)
}

// setting returns the notes that are not about findings, for pieces that are drawn.
func (a composer) setting(overlaps bool, pieces []piece) []page.Note {
	notes := a.settings(overlaps)
	for _, words := range append(a.readings(), a.fitWords()...) {
		notes = append(notes, page.Note{Words: words, Size: 9})
	}
	return append(append(notes, a.wheels()...), a.sheet.unnumbered(pieces)...)
}

// found returns the notes that letters stand for, in their order.
func (a composer) found() []page.Note { return append(a.findings(), a.unseen()...) }

// remarks returns what the command prints besides.
func (a composer) remarks() []string {
	remarks := capitals(report.PaperEnds(a.sheet.plan, a.sheet.face, "this paper"))
	if a.sheet.curved { // a small misfit is for the page alone
		remarks = a.fitWords()
	}
	remarks = append(a.readings(), remarks...)
	if out := a.sheet.leftOut(); len(out) > 0 {
		remarks = append(remarks, without(a.sheet.paperName(), out))
	}
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
		notes = append(notes, page.Note{Words: capital(dividers(u, c, p.From())), Size: 9, Item: true})
	}
	return append(notes, page.Note{Size: 9, Words: a.marking() +
		" Heavy: the cuts to trace. Grey: each groove at its true width. Dashed: the band's ends. " +
		"Hatched: too thin for the cuts there or, where none stand, for any of the job's. Chain lines: the repeats' middles. Small numbers: the cuts, as they are listed." + a.free() + a.ends() + beyond(overlaps)})
}

// free says which repeats carry nothing, and which patches are left out for that.
func (a composer) free() string {
	words := ""
	if free := report.Free(a.sheet.plan); free != "" {
		words = " " + capital(free) + "."
	}
	if out := a.sheet.leftOut(); len(out) > 0 {
		words += " " + without(a.sheet.paperName(), out)
	}
	return words
}

// without says which of several papers are not printed.
func without(name string, out []int) string {
	if len(out) > 1 {
		name = plural(name)
	}
	return fmt.Sprintf("Nothing is cut on %s %s: not printed.", name, report.Numbers(out))
}

// marking says where to step the marks, and how the paper meets them.
func (a composer) marking() string {
	if a.sheet.plan.Repeats == 1 {
		return a.markingOnce()
	}
	switch {
	case a.sheet.side == Inside:
		return "Step the mark round the foot first, then turn the paper until each middle line stands over its mark."
	case a.sheet.face.Lower.Why == pattern.WholeGlass:
		return "Step the mark round the foot first, then stand each base tick on its mark."
	}
	return fmt.Sprintf("Draw a line round the glass %s above the table: hold the pencil on a block and turn the glass past it. "+
		"Step the marks along it with the dividers set for the paper edge, then stand the paper's lower edge on the line, each tick on its mark. "+
		"Marks round the foot stand plumb below the ticks: a square on the table carries them up.",
		a.sheet.plan.Job.Length.Format(a.sheet.face.Low))
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
	type line struct {
		motif, wheel int
		part         string // where the job says something of the motif's parts
	}
	var lines []line
	cuts := map[line][]pattern.Cut{}
	for _, c := range p.Cuts {
		l := line{motif: c.Motif, wheel: c.Wheel}
		if len(p.Job.Motifs[c.Motif].Parts) > 0 {
			l.part = " " + c.Part
		}
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
		for _, c := range cuts[l] {
			ids = append(ids, c.ID)
		}
		slices.Sort(ids)
		what := "Cuts"
		if len(ids) == 1 {
			what = "Cut"
		}
		of := which
		if p.Period > 2 && p.Periods() == 1 {
			of = standingIn(cuts[l], p.Period)
		}
		deep, set := report.Deep(p.Job.Length, cuts[l])
		if set != "" {
			set = " Set the wheel " + set + " deep: where it is rolled it comes deeper at one side."
		}
		notes = append(notes, page.Note{Size: 9, Item: true, Words: fmt.Sprintf("%s %s of %s: %s, %s, %s deep.%s",
			what, report.Numbers(ids), of, p.Job.Motifs[l.motif].Called()+l.part, p.Job.Rack[l.wheel].Name, deep, set)})
	}
	return notes
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
		how, a.sheet.at, a.sheet.plan.Job.Length.FormatDecimal(a.sheet.thickness))
}

// capitals returns sentences that begin with one.
func capitals(sentences []string) []string {
	for i, words := range sentences {
		sentences[i] = capital(words)
	}
	return sentences
}

// dividers says how to set dividers for a circle, and where the last step falls. Its height is
// counted from somewhere.
func dividers(u geometry.Unit, c pattern.Chord, from string) string {
	where := c.Name
	if c.Height > 0 {
		where += fmt.Sprintf(", %s %s", u.Format(c.Height), from)
	}
	where += fmt.Sprintf(", %s across", u.Format(2*c.Radius))
	if words := report.TooShort(u, c.Chord); words != "" {
		return where + ": " + words + "."
	}
	set := min(u.Setting(c.Chord).Length, 2*c.Radius)
	return fmt.Sprintf("%s: set %s; the last step will %s.", where, u.Format(c.Chord),
		report.Closing(u, geometry.Division{Radius: c.Radius, Parts: c.Parts}.ClosingGap(set)))
}

// standingIn names the repeats that some cuts stand in, of so many.
func standingIn(cuts []pattern.Cut, repeats int) string {
	var in []int
	for _, c := range cuts {
		in = append(in, c.Repeat)
	}
	slices.Sort(in)
	switch in = slices.Compact(in); len(in) {
	case repeats:
		return "all repeats"
	case 1:
		return fmt.Sprintf("repeat %d", in[0])
	}
	return "repeats " + report.Numbers(in)
}
