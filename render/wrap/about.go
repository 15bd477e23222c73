package wrap

import (
	"fmt"
	"math"
	"strings"

	"roundlay/pattern"
	"roundlay/render/report"
)

// title is what the pages are headed with.
func (a composer) title() string { return a.sheet.plan.Job.Title + a.of() }

// of says what the paper is, and which blank's.
func (a composer) of() string {
	return fmt.Sprintf(", %s for %s", [...]string{"wrap", "inside wrap", "patches", "base paper"}[a.sheet.side], a.sheet.plan.Blank.Name)
}

// what names the paper as a whole.
func (a composer) what() string {
	return [...]string{"outside wrap", "inside wrap", "set of patches", "base paper"}[a.sheet.side]
}

// about says what a page's piece is, and how it goes on the glass.
func (a composer) about(p piece) string {
	s := a.sheet
	if s.apart() {
		what := capital(fmt.Sprintf("%s %d of %d", s.paperName(), p.paper, s.sheets))
		if p.rows*p.columns > 1 {
			what += fmt.Sprintf(", piece %d; join it to its neighbours on the match lines", p.number)
		}
		return what + ". " + a.placing()
	}
	what := capital(a.what()) + ", " + a.extent(p)
	if p.rows*p.columns > 1 {
		what += "; join it to its neighbours on the match lines"
	}
	return what + ". " + a.placing()
}

// aboutSome says what the papers on a page are, from first up to but not including
// last.
func (a composer) aboutSome(first, last int) string {
	name := a.sheet.paperName()
	if last > first+1 {
		name = plural(name)
	}
	what := fmt.Sprintf("%s %s of %d", name, a.sheet.paperNumbers(first, last, " to "), a.sheet.sheets)
	return capital(what) + ". " + a.placing()
}

// aboutAll says what the picture of all the paper shows.
func (a composer) aboutAll() string {
	papers := a.sheet.papers()
	if a.sheet.apart() {
		return a.aboutSome(0, len(papers))
	}
	return a.about(papers[0])
}

// longestAbout returns words at least as long as those of any page.
func (a composer) longestAbout() string {
	p := a.sheet.papers()[0]
	p.rows, p.columns = 2, 2
	return a.about(p) + " and 8 to 88 of 8" + continues([]int{88}, []int{88})
}

// extent says which repeats, or which gores, a piece of a wrap holds.
func (a composer) extent(p piece) string {
	s := a.sheet
	if s.curved {
		first := int(math.Round((p.from-s.seam)/s.part())) + 1
		last := int(math.Round((p.to - s.seam) / s.part()))
		what := "gores"
		if first == last {
			what = "gore"
		}
		return fmt.Sprintf("%s %s of %d", what, report.FromTo(first, last), s.parts)
	}
	// A repeat is on the piece that holds its middle.
	n := s.plan.Repeats
	first, last := int(math.Ceil(p.from/s.plan.PitchAngle())), int(math.Ceil(p.to/s.plan.PitchAngle()))-1
	name := func(i int) int { return (i%n+n)%n + 1 }
	switch {
	case last < first:
		return fmt.Sprintf("a part of repeat %d", name(first))
	case first == last:
		return fmt.Sprintf("repeat %d", name(first))
	case name(first) < name(last):
		return "repeats " + report.FromTo(name(first), name(last))
	}
	return "repeats " + report.FromTo(name(first), n) + " and " + report.FromTo(1, name(last))
}

// placing says how the paper goes on the glass.
func (a composer) placing() string {
	s := a.sheet
	switch {
	case s.side == Inside && s.mirror:
		return "Mirrored: its back goes to the glass, and is traced through. " + a.placingInside()
	case s.side == Inside:
		return "Not mirrored: its printed face goes to the glass and is read through the wall. " + a.placingInside()
	}
	edge, on := "base edge", "on the table"
	if s.face.Lower.Why != pattern.WholeGlass {
		edge, on = "lower edge", fmt.Sprintf("on a line drawn round %s above the table", s.plan.Job.Length.Format(s.low))
	}
	how := fmt.Sprintf("The %s stands %s, the arrow points to the rim.", edge, on)
	if s.apart() {
		how = fmt.Sprintf("Each %s stands %s, its tick on the mark stepped off there.", edge, on)
	}
	if s.mirror {
		how = "Mirrored: lay the printed face on the glass and trace through from the back. " + how
	}
	return how
}

// placingInside says by which edge to set an inside paper: the one on the floor, or
// else the one at or below the rim.
func (a composer) placingInside() string {
	s := a.sheet
	const arrow = ", the arrow points to the rim."
	switch {
	case s.face.Lower.Why == pattern.WholeGlass:
		return "The lower edge stands on the inside floor" + arrow
	case s.face.Upper.Why == pattern.WholeGlass:
		return "The upper edge is level with the rim" + arrow
	}
	return fmt.Sprintf("The upper edge lies %s below the rim%s", s.plan.Job.Length.Format(s.face.Upper.Own-s.high), arrow)
}

func capital(words string) string { return strings.ToUpper(words[:1]) + words[1:] }

func plural(word string) string {
	if strings.HasSuffix(word, "ch") {
		return word + "es"
	}
	return word + "s"
}
