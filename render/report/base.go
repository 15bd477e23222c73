package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// baseJSON is how the base is divided. Its cuts, findings, lines and entries of order stand
// with those of the side, and have a face.
type baseJSON struct {
	Across  number      `json:"across" unit:"mm"` // the diameter of the flat underside
	Hollow  *hollowJSON `json:"hollow,omitempty"` // the punty mark's hollow; left out where the job gives none
	Edge    number      `json:"edge" unit:"mm"`   // kept clear of cuts inside its edge
	Repeats int         `json:"repeats"`          // in how many sectors
	Free    []int       `json:"free"`             // the numbers of the sectors that carry nothing
	Band    [2]number   `json:"band" unit:"mm"`   // from which distance from the middle to which the design goes
	Chords  []chordJSON `json:"chords"`           // divider settings; empty for one repeat
	Totals  totalsJSON  `json:"totals"`           // what there is to cut on the base alone
}

// hollowJSON is the hollow that the punty mark left.
type hollowJSON struct {
	Across number `json:"across" unit:"mm"` // its diameter
	Depth  number `json:"depth" unit:"mm"`  // how deep it is
}

// base returns the base of a plan, nil where it has none.
func base(p *pattern.Plan) *baseJSON {
	b := p.Base
	if b == nil {
		return nil
	}
	t, hollow := b.Totals(), b.Blank.Hollow
	out := &baseJSON{
		Across: number(2 * b.Blank.BaseRadius()), Edge: number(b.Job.Limits.Edge), Repeats: b.Repeats, Free: append([]int{}, b.Free()...),
		Band: [2]number{number(b.Band.Foot), number(b.Band.Top)}, Chords: chords(b),
		Totals: totalsJSON{Cuts: t.Cuts, Length: number(t.Length), Volume: number(b.Volume())},
	}
	times := b.Times()
	out.Totals.Minutes = where(Rates(b, times) != "", times.Cutting)
	if hollow.Across > 0 {
		out.Hollow = &hollowJSON{number(hollow.Across), number(hollow.Depth)}
	}
	return out
}

// faceName is the face of a plan in JSON, "" on the side.
func faceName(p *pattern.Plan) string {
	if p.Face == job.Side {
		return ""
	}
	return p.Face.String()
}

// ofFace goes behind a repeat of the base.
func ofFace(p *pattern.Plan) string {
	if p.Face == job.Side {
		return ""
	}
	return " of the base"
}

// baseHeading writes how the base is laid out.
func baseHeading(b *strings.Builder, p *pattern.Plan) {
	fmt.Fprintf(b, "%s.\n", BaseLayout(p))
	fmt.Fprintf(b, "%s; flat, %s across.\n", band(p), p.Job.Length.Format(2*p.Blank.BaseRadius()))
	for _, n := range baseNotes(p) {
		fmt.Fprintf(b, "%s\n", wrap(upper(n), 79, ""))
	}
}

// BaseLayout says how the base is divided, and how many cuts it has.
func BaseLayout(p *pattern.Plan) string {
	words := fmt.Sprintf("Base: %s, %s", count(p.Repeats, "repeat"), count(p.Totals().Cuts, "cut"))
	if p.OnlyMiddle() {
		words = fmt.Sprintf("Base: %s, all over its middle", count(p.Totals().Cuts, "cut"))
	}
	if free := Free(p); free != "" {
		words += "; " + free
	}
	return words
}

// baseLines is baseHeading without the notes, and the marks there that are too short, as lines
// of a set.
func baseLines(p *pattern.Plan) []string {
	if p.Base == nil {
		return nil
	}
	return append([]string{BaseLayout(p.Base) + ".", "Base: " + band(p.Base) + "."}, shortMarks(p.Base)...)
}

// baseNotes returns the remarks on a base that are not findings.
func baseNotes(p *pattern.Plan) []string {
	return append(append(hollowed(p), slight(p)...), heightsOf(p)...)
}

// hollowed says what is assumed of the punty mark's hollow.
func hollowed(p *pattern.Plan) []string {
	u, hollow := p.Job.Length, p.Blank.Hollow
	if hollow.Across == 0 {
		return nil
	}
	return []string{fmt.Sprintf("the punty mark's hollow, %s across and %s deep: cuts that reach into it come out shallower there, or not at all, "+
		"and glass left is worked out as if it were that deep all over.", u.Format(hollow.Across), u.FormatChosen(hollow.Depth))}
}

// allNotes returns the notes on a plan, with those on its base.
func allNotes(p *pattern.Plan) []string {
	all := notes(p)
	if p.Base != nil {
		for _, words := range baseNotes(p.Base) {
			all = append(all, "base: "+words)
		}
	}
	return all
}

// undivided is said of a plan with one repeat, in place of divider settings.
func undivided(p *pattern.Plan) string {
	if p.Face == job.Base {
		return "One repeat of the base: there is nothing to divide. One mark at its edge, under repeat 1 of the side, is the middle of the design."
	}
	return Undivided
}
