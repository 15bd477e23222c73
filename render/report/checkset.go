package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// CheckSet writes the findings of a set as text: what its blanks share once, and
// for each blank whether it clears and what is its own.
func CheckSet(w io.Writer, plans []*pattern.Plan) error {
	var b strings.Builder
	b.WriteString(wrap(setHeading(plans), 79, "") + "\n")
	for _, lines := range []func(*pattern.Plan) []string{
		func(p *pattern.Plan) []string { return []string{band(p) + "."} }, allNotes, counted, calibrated, shortMarks, baseLines,
	} {
		saidOf(&b, plans, lines)
	}
	all := troublesOf(plans)
	b.WriteByte('\n')
	verdicts(&b, plans)
	for _, t := range all {
		t.words(&b, plans)
	}
	if len(all) == 0 {
		b.WriteString("\n" + wrap(Verdict("Clear", plans...), 79, "") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// setHeading says what is laid out on how many glasses, and how many clear.
func setHeading(plans []*pattern.Plan) string {
	p := plans[0]
	return fmt.Sprintf("%s, %s: %s and %s on each. %s", p.Job.Title, count(len(plans), "blank"),
		count(p.Repeats, "repeat"), count(p.Whole().Cuts, "cut"), howManyClear(plans))
}

// calibrated is Calibrated as a list.
func calibrated(p *pattern.Plan) []string {
	if words := Calibrated(p); words != "" {
		return []string{words}
	}
	return nil
}

// saidOf writes the lines that plans have in common once, and a line of some of
// them after their names.
func saidOf(b *strings.Builder, plans []*pattern.Plan, lines func(*pattern.Plan) []string) {
	var order []string
	of := map[string][]int{}
	for i, p := range plans {
		for _, line := range lines(p) {
			if of[line] == nil {
				order = append(order, line)
			}
			of[line] = append(of[line], i)
		}
	}
	for _, line := range order {
		words := upper(line)
		if len(of[line]) < len(plans) && !namesIts(plans, of[line], line) {
			words = upper(onBlanks(plans, of[line])) + ": " + line
		}
		fmt.Fprintf(b, "%s\n", wrap(words, 79, "  "))
	}
}

// namesIts reports whether a line names the one blank that it is of.
func namesIts(plans []*pattern.Plan, which []int, line string) bool {
	return len(which) == 1 && strings.Contains(line, fmt.Sprintf("%q", plans[which[0]].Blank.Name))
}

// onBlanks names some of the plans' blanks, in the job's order: "a" to "d", "f".
func onBlanks(plans []*pattern.Plan, which []int) string {
	if len(which) == len(plans) {
		if len(plans) == 2 {
			return "both blanks"
		}
		return fmt.Sprintf("all %d blanks", len(plans))
	}
	name := func(i int) string { return fmt.Sprintf("%q", plans[i].Blank.Name) }
	var names []string
	for i := 0; i < len(which); {
		last := i
		for last+1 < len(which) && which[last+1] == which[last]+1 {
			last++
		}
		if last-i >= 2 {
			names = append(names, name(which[i])+" to "+name(which[last]))
		} else {
			for ; i <= last; i++ {
				names = append(names, name(which[i]))
			}
		}
		i = last + 1
	}
	return strings.Join(names, ", ")
}

// verdicts writes a row a blank: whether it clears, and the least land and the
// least glass left on it.
func verdicts(b *strings.Builder, plans []*pattern.Plan) {
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "  blank\t\tleast land\tleast glass left\tsides\tfindings, each with its worst")
	for _, p := range plans {
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\t%s\t%s\n", p.Blank.Name, shortVerdict(p),
			landWords(p.Job.Length, p.Job, nearest(p)), leftWords(p.Job.Length, p.Job, thinnest(p)), sides(p), worsts(p))
	}
	t.Flush()
	b.WriteString("  (least land: between two cuts that do not join, of those that are to have land between them;\n" +
		"  letters: as on that blank's paper)\n")
	if anyOnlyIf(plans) {
		fmt.Fprintf(b, "  (%s: a reading of it is questioned, and so is its glass left and its land)\n", ifRight)
	}
}

// landWords writes the least land of a job, +Inf where there is none within what is looked for.
func landWords(u geometry.Unit, j *job.Job, land float64) string {
	switch {
	case !math.IsInf(land, 0):
		return finely(u, land, j.Limits.Land)
	case asksNoLand(j):
		return "-"
	}
	return "over " + u.FormatDown(search.Within)
}

// finely writes a length that must not be below a limit, with enough digits to show
// whether it is.
func finely(u geometry.Unit, mm, limit float64) string {
	if mm >= limit {
		return u.FormatDecimal(mm)
	}
	measured, _ := u.FormatAgainst(geometry.Breach{Measured: mm, Bound: limit})
	return measured
}

// asksNoLand reports whether a job asks for no land between some of its cuts.
func asksNoLand(j *job.Job) bool {
	for _, m := range j.Motifs {
		if m.Land != nil && *m.Land == 0 || m.Land == nil && j.Limits.Land == 0 ||
			slices.ContainsFunc(m.Parts, func(p job.Part) bool { return p.Land != nil && *p.Land == 0 }) {
			return true
		}
	}
	return false
}

// leftWords writes the least glass left by a job, +Inf where all cuts are off the glass.
func leftWords(u geometry.Unit, j *job.Job, left float64) string {
	switch {
	case math.IsInf(left, 0):
		return "-"
	case left <= 0:
		return "breaks through"
	default:
		return finely(u, left, j.Limits.Leave)
	}
}

// sides writes in a word or two what surface a band is drawn on.
func sides(p *pattern.Plan) string {
	words := fmt.Sprintf("widen %.2f°", p.Cone.HalfAngle.Degrees())
	switch {
	case p.Straight():
		words = "straight"
	case p.Cone.HalfAngle < 0:
		words = fmt.Sprintf("narrow %.2f°", -p.Cone.HalfAngle.Degrees())
	}
	if p.WorstRadiusError > slightOff {
		words += ", off by " + p.Job.Length.FormatDecimal(p.WorstRadiusError)
	}
	return words
}

// worsts writes the letters of a plan's findings, each with its worst measure; the
// first few where there are many.
func worsts(p *pattern.Plan) string {
	const most = 6
	var words []string
	var groups []pattern.Group
	for _, face := range p.Faces() {
		groups = append(groups, face.Groups()...)
	}
	for _, g := range groups[:min(len(groups), most)] {
		measured, _ := figures(p.Job.Length, g.Worst())
		words = append(words, g.Letter+" "+measured)
	}
	switch more := len(groups) - most; {
	case len(groups) == 0:
		return "-"
	case more > 0:
		words = append(words, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(words, ", ")
}
