package report

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"roundlay/geometry"
	"roundlay/pattern"
)

type checkJSON struct {
	Schema   int           `json:"schema"`
	Title    string        `json:"title"`
	Blank    string        `json:"blank"`
	Clear    bool          `json:"clear"`
	Cuts     int           `json:"cuts"`
	Findings []findingJSON `json:"findings"`
	Notes    []string      `json:"notes"`
}

// checkSetJSON is a check of several blanks.
type checkSetJSON struct {
	Schema int         `json:"schema"`
	Title  string      `json:"title"`
	Clear  bool        `json:"clear"`
	Blanks []checkJSON `json:"blanks"`
	Set    *setJSON    `json:"set"`
}

// CheckJSON writes the findings of one plan, or those of a set, blank by blank,
// and what its blanks have to do with one another.
func CheckJSON(w io.Writer, plans []*pattern.Plan, s *pattern.Set) error {
	out := checkSetJSON{Schema: schema, Title: plans[0].Job.Title, Clear: true}
	for _, p := range plans {
		clear := len(p.Findings) == 0
		out.Clear = out.Clear && clear
		out.Blanks = append(out.Blanks, checkJSON{
			schema, p.Job.Title, p.Blank.Name, clear, p.Totals().Cuts, findings(p), append([]string{}, notes(p)...),
		})
	}
	if s == nil {
		return write(w, out.Blanks[0])
	}
	out.Set = set(s)
	return write(w, out)
}

// Check writes the findings for reading, group by group.
func Check(w io.Writer, p *pattern.Plan) error {
	var b strings.Builder
	Heading(&b, p)
	if words := Calibrated(p); words != "" {
		fmt.Fprintf(&b, "%s\n", wrap(words, 100, ""))
	}
	shortMarks(&b, p)
	groups := p.Groups()
	for _, g := range groups {
		group(&b, p, g)
	}
	if len(groups) == 0 {
		b.WriteString(clearWords)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

const clearWords = "Clear: nothing is crowded, thin, shallow or out of place.\n"

// Heading writes what is laid out on which glass.
func Heading(b *strings.Builder, p *pattern.Plan) {
	u := p.Job.Length
	fmt.Fprintf(b, "%s, blank %q: %s, %s.\n", p.Job.Title, p.Blank.Name,
		count(p.Repeats, "repeat"), count(p.Totals().Cuts, "cut"))
	fmt.Fprintf(b, "Band from %s to %s above the table; %s.\n", u.Text(p.Band.Foot), u.Text(p.Band.Top), shape(p))
	for _, n := range notes(p) {
		fmt.Fprintf(b, "%s\n", wrap(strings.ToUpper(n[:1])+n[1:], 79, ""))
	}
	counted(b, p)
}

// shape says what surface the band is drawn on.
func shape(p *pattern.Plan) string {
	words := fmt.Sprintf("it widens upwards by %.2f° a side", p.Cone.HalfAngle.Degrees())
	if p.Cone.HalfAngle < 0 {
		words = fmt.Sprintf("it narrows upwards by %.2f° a side", -p.Cone.HalfAngle.Degrees())
	}
	if p.Straight() {
		words = "straight sides"
	}
	if u := p.Job.Length; p.WorstRadiusError > 0.005 {
		words += fmt.Sprintf(", which the glass leaves by up to %s in radius within the band", u.Fine(p.WorstRadiusError))
	}
	return words
}

// notes says what is no finding, and yet good to know.
func notes(p *pattern.Plan) []string {
	return slices.Concat(Doubts(p), Readings(p), gored(p), paperNotes(p, p.Outside()), floorless(p))
}

// floorless says of a glass whose floor was not measured what was taken for it.
func floorless(p *pattern.Plan) []string {
	if p.Blank.ThinInner().FloorKnown() {
		return nil
	}
	return []string{"the floor was not measured: glass left is told as if the inside ran on down to the table."}
}

// gored says of a curved glass how its paper is made.
func gored(p *pattern.Plan) []string {
	face, u := p.Outside(), p.Job.Length
	if !face.Curved() || p.Ungored() {
		return nil
	}
	g := face.Gores(p.Repeats, 0)
	words := fmt.Sprintf("curved: its paper is in %d gores, %d a repeat, whose edges are up to %s out.",
		g.PerRepeat*p.Repeats, g.PerRepeat, u.Fine(g.Worst()))
	return append([]string{words}, drawnIn(p)...)
}

// drawnIn says which band, a little lower, would have paper in one piece.
func drawnIn(p *pattern.Plan) []string {
	band, ok := p.DrawnIn()
	if !ok {
		return nil
	}
	foot, top := p.Job.Length.Text(band.Foot), p.Job.Length.Text(band.Top)
	which := "from " + foot + " up"
	if p.Band.Top-band.Top > band.Foot-p.Band.Foot {
		which = "up to " + top
	}
	// In the job's own unit, and so short enough to stand on one line.
	unit := " " + p.Job.Length.String()
	return []string{fmt.Sprintf("with a band %s one paper would do: band = [%q, %q] under [layout].",
		which, strings.TrimSuffix(foot, unit), strings.TrimSuffix(top, unit))}
}

// shortMarks says of marks too short for the depth asked how deep they come out,
// and how long a mark has to be to reach it there.
func shortMarks(b *strings.Builder, p *pattern.Plan) {
	u := p.Job.Length
	for i, short := range p.ShortMarks() {
		if short.Marks == 0 {
			continue
		}
		m := p.Job.Motifs[i]
		asked, deep := u.Given(m.Depth), u.Fine(short.Most)
		if deep == u.Fine(m.Depth) {
			deep, asked = u.Against(short.Most, m.Depth)
		}
		if u.Fine(short.Least) != u.Fine(short.Most) {
			deep = u.Fine(short.Least) + " to " + deep
		}
		deep += " deep"
		if short.Allowed {
			deep += fmt.Sprintf(", which limits.reach = %g allows", p.Job.Limits.Reach)
		}
		fmt.Fprintf(b, "Motif %d (%s): %s in all too short for the %s asked, and %s; %s would reach it.\n",
			i+1, m.Kind.Name, count(short.Marks*p.Turns(), "mark"), asked, deep, u.AtLeast(short.Needed))
	}
}

func group(b *strings.Builder, p *pattern.Plan, g pattern.Group) {
	u := p.Job.Length
	names := make([]string, len(g.Motifs))
	for i, m := range g.Motifs {
		names[i] = fmt.Sprintf("motif %d (%s)", m+1, p.Job.Motifs[m].Kind.Name)
	}
	worst := g.Worst()
	fmt.Fprintf(b, "\n%s  %s", g.Letter, strings.ToUpper(g.Kind.String()))
	if len(names) > 0 {
		fmt.Fprintf(b, ": %s, %s", strings.Join(names, " and "), strings.Join(g.Parts, " and "))
	}
	if p.Turns() > 1 && len(names) > 0 {
		fmt.Fprintf(b, "; the same %d times round the glass", p.Turns())
	}
	fmt.Fprintf(b, "\n   %s\n", wrap(Measured(p, worst), 76, "   "))
	fmt.Fprintf(b, "   worst in repeat %d, %s above the table\n", worst.Repeat, u.Text(worst.Height))
	if len(worst.Cuts) > 0 {
		fmt.Fprintf(b, "   %s\n", wrap(cutList(g), 76, "   "))
	}
	if cure := Cure(p, worst); cure != "" {
		fmt.Fprintf(b, "   %s\n", wrap("cure: "+cure, 76, "   "))
	}
}

// cutList names the cuts or pairs of cuts of a group.
func cutList(g pattern.Group) string {
	items := make([]string, len(g.Findings))
	for i, f := range g.Findings {
		items[i] = strings.ReplaceAll(strings.Trim(fmt.Sprint(f.Cuts), "[]"), " ", "–")
	}
	what := "cuts"
	if len(g.Findings[0].Cuts) > 1 {
		what = "pairs of cuts"
	}
	return fmt.Sprintf("%s: %s", what, strings.Join(items, ", "))
}

// Measured says what a finding measured and what was wanted.
func Measured(p *pattern.Plan, f pattern.Finding) string {
	u := p.Job.Length
	if f.Share {
		return fmt.Sprintf("only %s of the cut lies clear of the one it joins; at least %s is wanted", shares(f)[0], shares(f)[1])
	}
	measured, wanted := u.Against(f.Measured, f.Wanted)
	switch f.Kind {
	case pattern.Crowded, pattern.Off:
		if f.Kind == pattern.Crowded || len(f.Cuts) == 2 {
			measured, wanted = limited(u, f)
			return fmt.Sprintf("land of %s where %s is the least", measured, wanted)
		}
		measured, wanted = heights(u, f)
		return fmt.Sprintf("reaches %s above the table; the band ends at %s", measured, wanted)
	case pattern.Thin:
		if f.Measured <= 0 {
			return fmt.Sprintf("breaks through where %s of glass is the least", u.Text(f.Wanted))
		}
		measured, wanted = limited(u, f)
		return fmt.Sprintf("leaves %s of glass where %s is the least", measured, wanted)
	case pattern.Rim, pattern.Foot:
		measured, wanted = heights(u, f)
		return fmt.Sprintf("the groove reaches %s above the table; the margin begins at %s", measured, wanted)
	case pattern.Buried:
		return fmt.Sprintf("a cut %s deep buries the wheel's shoulders; %s is the most for this edge", measured, wanted)
	case pattern.Tight:
		return fmt.Sprintf("the wheel stands %s off the bent line at the ends of its contact; %s is the most", measured, wanted)
	case pattern.Uneven:
		return fmt.Sprintf("the glass is too curved for its paper: gores as narrow as can be handled are %s out at their edges; %s is the most",
			measured, wanted)
	case pattern.Bridged:
		return bridged(p, f, u)
	case pattern.Shallow:
		return fmt.Sprintf("the mark is too short: it comes out %s deep, and at least %s is wanted", measured, wanted)
	}
	return fmt.Sprintf("%s, wanted %s", measured, wanted)
}

// limited writes what was measured and a limit of the job's as its owner wrote
// it, as a fraction; where these would read alike, both as decimals.
func limited(u geometry.Unit, f pattern.Finding) (measured, wanted string) {
	if u.Fine(f.Measured) == u.Fine(f.Wanted) || u.Setting(f.Wanted).Length <= f.Measured {
		return u.Against(f.Measured, f.Wanted)
	}
	return u.Fine(f.Measured), u.Text(f.Wanted)
}

// heights writes two heights to the caliper's step or, where they would read
// alike, as decimals.
func heights(u geometry.Unit, f pattern.Finding) (measured, wanted string) {
	if u.Text(f.Measured) == u.Text(f.Wanted) {
		return u.Against(f.Measured, f.Wanted)
	}
	return u.Text(f.Measured), u.Text(f.Wanted)
}

// shares writes the share that was measured and the one wanted, in hundredths
// or as fine as it takes to tell them apart.
func shares(f pattern.Finding) (both [2]string) {
	for digits := range 6 {
		both = [2]string{fmt.Sprintf("%.*f %%", digits, 100*f.Measured), fmt.Sprintf("%.*f %%", digits, 100*f.Wanted)}
		if both[0] != both[1] {
			break
		}
	}
	return both
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
