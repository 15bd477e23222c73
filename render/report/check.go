package report

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// checkJSON is what was found on one blank.
type checkJSON struct {
	Schema   int           `json:"schema"`   // the version of this form, 1
	Title    string        `json:"title"`    // the job's title
	Blank    string        `json:"blank"`    // the blank's name
	Clear    bool          `json:"clear"`    // whether there are no findings
	OnlyIf   []string      `json:"only_if"`  // the readings in doubt on which clear depends, in words; empty where none is in doubt, or where it is not clear
	Cuts     int           `json:"cuts"`     // how many cuts there are
	Findings []findingJSON `json:"findings"` // what is wrong
	Notes    []string      `json:"notes"`    // remarks that are not findings
}

// checkSetJSON is what was found on each blank of a set, and how the blanks compare.
type checkSetJSON struct {
	Schema int         `json:"schema"`  // the version of this form, 1
	Title  string      `json:"title"`   // the job's title
	Clear  bool        `json:"clear"`   // whether all blanks are clear
	OnlyIf []string    `json:"only_if"` // the readings in doubt on which clear depends, in words; empty where none is in doubt, or where it is not clear
	Blanks []checkJSON `json:"blanks"`  // blank by blank
	Set    setJSON     `json:"set"`     // the blanks compared
}

// CheckJSON writes the findings of one plan, or of a set blank by blank with a
// comparison of its blanks.
func CheckJSON(w io.Writer, plans []*pattern.Plan, s *pattern.Set) error {
	out := checkSetJSON{Schema: schema, Title: plans[0].Job.Title, Clear: true, OnlyIf: hangsOn(plans...), Blanks: []checkJSON{}}
	for _, p := range plans {
		allClear := p.Clear()
		out.Clear = out.Clear && allClear
		out.Blanks = append(out.Blanks, checkJSON{
			schema, p.Job.Title, p.Blank.Name, allClear, hangsOn(p), p.Whole().Cuts, findings(p), append([]string{}, allNotes(p)...),
		})
	}
	if s == nil {
		return write(w, out.Blanks[0])
	}
	out.Set = *set(s)
	return write(w, out)
}

// Check writes the findings as text, group by group.
func Check(w io.Writer, p *pattern.Plan) error {
	var b strings.Builder
	Heading(&b, p)
	if words := Calibrated(p); words != "" {
		fmt.Fprintf(&b, "%s\n", wrap(words, 100, ""))
	}
	for _, face := range p.Faces() {
		if face.Face == job.Base {
			b.WriteByte('\n')
			baseHeading(&b, face)
		}
		for _, short := range shortMarks(face) {
			fmt.Fprintln(&b, short)
		}
		for _, g := range face.Groups() {
			group(&b, face, g)
		}
	}
	if p.Clear() {
		if p.Base != nil {
			b.WriteByte('\n')
		}
		b.WriteString(wrap(Verdict("Clear", p), 79, "") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// Heading writes what is laid out on which glass.
func Heading(b *strings.Builder, p *pattern.Plan) {
	fmt.Fprintf(b, "%s, blank %q: %s, %s", p.Job.Title, p.Blank.Name,
		count(p.Repeats, "repeat"), count(p.Totals().Cuts, "cut"))
	if free := Free(p); free != "" && !Bare(p) {
		b.WriteString("; " + free)
	}
	b.WriteString(".\n")
	if Bare(p) {
		b.WriteString("Nothing is cut on its side.\n")
	} else {
		fmt.Fprintf(b, "%s; %s.\n", band(p), shape(p))
	}
	for _, n := range notes(p) {
		fmt.Fprintf(b, "%s\n", wrap(upper(n), 79, ""))
	}
	for _, c := range counted(p) {
		fmt.Fprintln(b, c)
	}
}

// band says which glass the decoration is given.
func band(p *pattern.Plan) string {
	u := p.Job.Length
	return fmt.Sprintf("Band from %s to %s %s", u.Format(p.Band.Foot), u.Format(p.Band.Top), p.From())
}

// upper returns one of our own sentences with a capital at its beginning.
func upper(words string) string { return strings.ToUpper(words[:1]) + words[1:] }

// slightOff is how far in radius, in mm, a glass may deviate from its band's cone
// before that is reported.
const slightOff = 0.005

// shape says what surface the band is drawn on.
func shape(p *pattern.Plan) string {
	words := fmt.Sprintf("it widens upwards by %.2f° a side", p.Cone.HalfAngle.Degrees())
	if p.Cone.HalfAngle < 0 {
		words = fmt.Sprintf("it narrows upwards by %.2f° a side", -p.Cone.HalfAngle.Degrees())
	}
	if p.Straight() {
		words = "straight sides"
	}
	if u := p.Job.Length; p.WorstRadiusError > slightOff {
		words += fmt.Sprintf(", which the glass leaves by up to %s in radius within the band", u.FormatDecimal(p.WorstRadiusError))
	}
	return words
}

// notes returns the remarks that are not findings.
func notes(p *pattern.Plan) []string {
	return slices.Concat(Doubts(p), lowBand(p), slight(p), Readings(p), gored(p), paperNotes(p, p.Outside()), floorless(p), heightsOf(p), made(p))
}

// slight lists the misses that are too small to be findings, the worst of each kind.
func slight(p *pattern.Plan) []string {
	var words []string
	for _, g := range p.SlightGroups() {
		words = append(words, fmt.Sprintf("within what a hand can hold, so no finding: %s: %s.", about(p, g), Measured(p, g.Worst())))
	}
	return words
}

// heightsOf gives the height above the table, or the distance from the base's middle, of each
// motif that the job places by a length up, since its owner may have measured from the table.
func heightsOf(p *pattern.Plan) []string {
	var words []string
	for i, m := range p.Job.Motifs {
		along := p.Surface.AlongAt(p.Band.Foot) + m.Y.Value
		if m.Face != p.Face || m.Middle || m.Y.Fraction || m.Inside > 0 || along > p.Surface.Length() {
			continue
		}
		u := p.Job.Length
		from := "up from the band's foot"
		if p.Face == job.Base {
			from = "out from where the band begins"
		}
		words = append(words, fmt.Sprintf("motif %d (%s): its middle is %s %s, %s %s.",
			i+1, m.Called(), u.Format(p.Surface.HeightAt(along)), p.From(), u.FormatChosen(m.Y.Value), from))
	}
	return words
}

// floorless says what is assumed for a floor that was not measured.
func floorless(p *pattern.Plan) []string {
	if p.Blank.ThinInner().FloorKnown() {
		return nil
	}
	return []string{"the floor was not measured: glass left is worked out as if the inside ran on down to the table."}
}

// gored says how the paper of a curved glass is made.
func gored(p *pattern.Plan) []string {
	face, u := p.Outside(), p.Job.Length
	if !face.Curved() || p.Ungored() {
		return nil
	}
	g := face.Gores(p.Repeats, 0)
	words := fmt.Sprintf("curved: its paper is in %d gores, %d a repeat, whose edges are up to %s out.",
		g.PerRepeat*p.Repeats, g.PerRepeat, u.FormatDecimal(g.Worst()))
	return append([]string{words}, drawnIn(p)...)
}

// drawnIn says which slightly shorter band would have paper in one piece.
func drawnIn(p *pattern.Plan) []string {
	band, ok := p.DrawnIn()
	if !ok {
		return nil
	}
	foot, top := p.Job.Length.Format(band.Foot), p.Job.Length.Format(band.Top)
	which := "from " + foot + " up"
	if p.Band.Top-band.Top > band.Foot-p.Band.Foot {
		which = "up to " + top
	}
	// In the job's own unit, and so short enough to stand on one line.
	unit := " " + p.Job.Length.String()
	return []string{fmt.Sprintf("with a band %s one paper would do: band = [%q, %q] under [layout].",
		which, strings.TrimSuffix(foot, unit), strings.TrimSuffix(top, unit))}
}

// shortMarks lists the marks that are too short for the depth asked: how deep they
// come out, and how long a mark must be to reach that depth.
func shortMarks(p *pattern.Plan) []string {
	var said []string
	u := p.Job.Length
	for _, short := range p.ShortMarks() {
		who := job.Change{Motif: short.Motif, Part: strings.Join(short.Parts, " and ")}.Name(p.Job)
		asked, deep := u.FormatChosen(short.Asked), u.FormatDecimal(short.Max)
		if deep == u.FormatDecimal(short.Asked) {
			deep, asked = u.FormatAgainst(geometry.Breach{Measured: short.Max, Bound: short.Asked})
		}
		if u.FormatDecimal(short.Min) != u.FormatDecimal(short.Max) {
			deep = u.FormatDecimal(short.Min) + " to " + deep
		}
		deep += " deep"
		if short.Allowed {
			deep += fmt.Sprintf(", which limits.reach = %g allows", p.Job.Limits.Reach)
		}
		said = append(said, fmt.Sprintf("%s: %s in all too short for the %s asked, and %s; %s would reach it.",
			upper(who), count(short.Marks*p.Periods(), "mark"), asked, deep, u.FormatUp(short.Needed)))
	}
	return said
}

func group(b *strings.Builder, p *pattern.Plan, g pattern.Group) {
	fmt.Fprintf(b, "\n%s  %s\n", g.Letter, heading(p, g))
	indented(b, Measured(p, g.Worst()))
	placed(b, p, g)
	if cure := Cure(p, g.Worst()); cure != "" {
		indented(b, "cure: "+cure)
	}
	if len(g.Worst().Cuts) > 0 {
		indented(b, cutsAre(g)+": "+listed(cutItems(g)))
	}
}

// heading says what a group of findings is and of which parts.
func heading(p *pattern.Plan, g pattern.Group) string {
	words := strings.ToUpper(g.Kind.String())
	if len(g.Motifs) == 0 {
		return words
	}
	words += ": " + about(p, g)
	if p.Periods() > 1 {
		words += fmt.Sprintf("; the same %d times round the %s", p.Periods(), body(p))
	}
	return words
}

// body is what the copies of a plan's cuts stand round.
func body(p *pattern.Plan) string {
	if p.Face == job.Base {
		return "base"
	}
	return "glass"
}

// about names the motifs of a group of findings, and their parts.
func about(p *pattern.Plan, g pattern.Group) string {
	names := make([]string, len(g.Motifs))
	for i, m := range g.Motifs {
		names[i] = fmt.Sprintf("motif %d (%s)", m+1, p.Job.Motifs[m].Called())
	}
	return fmt.Sprintf("%s, %s", strings.Join(names, " and "), strings.Join(g.Parts, " and "))
}

// placed writes where the worst finding of a group is.
func placed(b *strings.Builder, p *pattern.Plan, g pattern.Group) {
	fmt.Fprintf(b, "   %s%s\n", inRepeats(p, g), worstPlace(p, g))
}

// cutsAre says what cutItems lists.
func cutsAre(g pattern.Group) string {
	if len(g.Findings[0].Cuts) > 1 {
		return "pairs of cuts"
	}
	return "cuts"
}

// listed writes cuts or pairs of cuts, the first of them if they are many.
func listed(items []string) string {
	const most = 20 // nobody reads more of them at the bench
	if more := len(items) - most; more > 0 {
		return fmt.Sprintf("%s and %d more; plan --json lists all", strings.Join(items[:most], ", "), more)
	}
	return strings.Join(items, ", ")
}

// cutItems names the cuts or pairs of cuts of a group. A finding on the whole
// glass has none.
func cutItems(g pattern.Group) []string {
	var items []string
	for _, f := range g.Findings {
		if len(f.Cuts) > 0 {
			items = append(items, strings.ReplaceAll(strings.Trim(fmt.Sprint(f.Cuts), "[]"), " ", "–"))
		}
	}
	return items
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// wrap breaks a text at spaces into lines of a width.
func wrap(text string, width int, indent string) string {
	var b strings.Builder
	line := 0
	for i, word := range strings.Fields(text) {
		long := utf8.RuneCountInString(word)
		if i > 0 && line+1+long > width {
			b.WriteString("\n" + indent)
			line = 0
		} else if i > 0 {
			b.WriteByte(' ')
			line++
		}
		b.WriteString(word)
		line += long
	}
	return b.String()
}
