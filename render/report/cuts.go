package report

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Plan writes the plan as text: settings, the cuts of one period, totals.
func Plan(w io.Writer, p *pattern.Plan) error {
	u := p.Job.Length
	var b strings.Builder
	Heading(&b, p)
	dividersAndCuts(&b, p)
	if p.Base != nil {
		b.WriteByte('\n')
		baseHeading(&b, p.Base)
		dividersAndCuts(&b, p.Base)
	}
	t := p.Whole()
	fmt.Fprintf(&b, "\nWhole glass: %s, %s of groove, %s of glass ground away",
		count(t.Cuts, "cut"), Groove(u, t.Length), ground(u, p.GroundAway()))
	if words := CuttingTime(p); words != "" {
		fmt.Fprintf(&b, "; %s", words)
	}
	b.WriteString(".\n")
	Glassware(&b, p)
	verdict(&b, p)
	_, err := io.WriteString(w, b.String())
	return err
}

// dividersAndCuts writes a face of a plan: settings, the cuts of one period, their order.
func dividersAndCuts(b *strings.Builder, p *pattern.Plan) {
	u := p.Job.Length
	if Bare(p) {
		return
	}
	if len(p.Chords) == 0 {
		b.WriteString("\n" + undivided(p) + "\n")
	} else {
		fmt.Fprintf(b, "\nDividers, %d parts:\n", p.Repeats)
	}
	for _, c := range p.Chords {
		fmt.Fprintf(b, "  %s, %s %s, %s across: %s\n", c.Name, u.Format(c.Height), p.From(), u.Format(2*c.Radius),
			cmp.Or(TooShort(u, c.Chord), u.FormatWithRest(c.Chord)))
	}
	Rounds(b, u, p)
	fmt.Fprintf(b, "\nCuts of %s", Period(p))
	if p.Periods() > 1 {
		fmt.Fprintf(b, " (add %d for each further %s)", len(p.Cuts), further(p))
	}
	b.WriteString(":\n")
	cutTable(b, p)
	goingOn(b, p)
	byHand(b, p)
	b.WriteByte('\n')
	Order(b, p)
}

// verdict writes whether the plan clears, for those who read no further.
func verdict(b *strings.Builder, p *pattern.Plan) {
	switch n := p.Lettered(); n {
	case 0:
		b.WriteString(wrap(Verdict("Clear", p), 79, "") + "\n")
	case 1:
		b.WriteString("Not clear: 1 finding; roundlay check lists it.\n")
	default:
		fmt.Fprintf(b, "Not clear: %d findings; roundlay check lists them.\n", n)
	}
}

func cutTable(b *strings.Builder, p *pattern.Plan) {
	u := p.Job.Length
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	head, on := "", linesOf(p)
	if len(on) > 0 {
		head = "\tgoes on as"
	}
	rule, set := "", ""
	if u == geometry.Inch { // what is gauged with a rule; what is finer than that
		rule, set = " (64ths)", " (decimal)"
	}
	fmt.Fprintf(t, "  cut\tmotif\tpart\twheel\tlength%[1]s\tdepth%[2]s\twidth%[2]s\tglass left%[2]s\tshortest mark for the depth asked%[1]s%[3]s\n",
		rule, set, head)
	for _, c := range p.Cuts {
		how := "drawn"
		if c.Touch {
			how = "touch"
		}
		if c.Bridges() {
			how += fmt.Sprintf(", bridges: %s asked", u.FormatDecimal(c.Asked))
		}
		wheel := p.Job.Rack[c.Wheel]
		fmt.Fprintf(t, "  %d\t%d %s\t%s, %s\t%s\t%s\t%s\t%s\t%s\t%s%s\n", c.ID, c.Motif+1, p.Job.Motifs[c.Motif].Called(),
			c.Part, how, wheel.Name, u.Format(c.Length), u.FormatDecimal(c.Depth), u.FormatDecimal(c.Width), GlassLeft(u, c.Left),
			u.FormatUp(c.LengthFor(&p.Surface, wheel, c.Asked)), on[c.ID])
	}
	t.Flush()
}

// GlassLeft writes how much glass a cut leaves: a dash for a cut that is wholly off
// the glass.
func GlassLeft(u geometry.Unit, left float64) string {
	if math.IsInf(left, 0) {
		return "–"
	}
	return u.FormatDecimal(left)
}
