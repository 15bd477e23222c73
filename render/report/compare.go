package report

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/search"
)

// Compared is a job that is compared with others: what its file is called, and its plans,
// one for each blank.
type Compared struct {
	File  string
	Plans []*pattern.Plan
}

// Clear reports whether nothing is found on any of its blanks.
func (c Compared) Clear() bool {
	return !slices.ContainsFunc(c.Plans, func(p *pattern.Plan) bool { return !p.Clear() })
}

// kinds counts what is found by its kind, as letters count it: once for one kind of trouble
// between the same parts, on each blank.
func (c Compared) kinds() map[pattern.Kind]int {
	found := map[pattern.Kind]int{}
	for _, p := range c.Plans {
		for _, face := range p.Faces() {
			for _, g := range face.Groups() {
				found[g.Kind]++
			}
		}
	}
	return found
}

// unitOf returns the unit that a comparison is written in: the first job's, for all.
func unitOf(jobs []Compared) geometry.Unit { return jobs[0].Plans[0].Job.Length }

// Compare writes jobs side by side: a column for each, a row for each figure.
func Compare(w io.Writer, jobs []Compared) error {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 3, ' ', 0)
	u := unitOf(jobs)
	row := func(name string, figure func(Compared) string) {
		cells := []string{name}
		for _, c := range jobs {
			cells = append(cells, figure(c))
		}
		folded(t, cells)
	}
	row("", func(c Compared) string { return c.File })
	row("title", func(c Compared) string { return c.Plans[0].Job.Title })
	row("blank", Compared.blanks)
	row("verdict", Compared.verdict)
	for _, kind := range kindsIn(jobs) {
		row("  "+kind.String(), func(c Compared) string { return dash(c.kinds()[kind]) })
	}
	for _, f := range figuresOf(jobs) {
		row(f.name, func(c Compared) string { return f.of(u, c) })
	}
	if err := t.Flush(); err != nil {
		return err
	}
	lines := strings.Split(b.String(), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	b.Reset()
	b.WriteString(strings.Join(lines, "\n"))
	for _, words := range compareNotes(jobs) {
		b.WriteString(wrap(words, 79, "") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// folded writes the cells of a row, a long one on several lines.
func folded(t io.Writer, cells []string) {
	const width = 26
	lines, most := make([][]string, len(cells)), 1
	for i, cell := range cells {
		lines[i] = []string{cell}
		if i > 0 {
			lines[i] = strings.Split(wrap(cell, width, ""), "\n")
		}
		most = max(most, len(lines[i]))
	}
	for n := range most {
		out := make([]string, len(cells))
		for i := range cells {
			if n < len(lines[i]) {
				out[i] = lines[i][n]
			}
		}
		fmt.Fprintln(t, strings.TrimRight(strings.Join(out, "\t"), "\t")+"\t")
	}
}

// kindsIn returns the kinds of what is found in any of the jobs, in order.
func kindsIn(jobs []Compared) []pattern.Kind {
	all := map[pattern.Kind]int{}
	for _, c := range jobs {
		maps.Copy(all, c.kinds())
	}
	return slices.Sorted(maps.Keys(all))
}

// dash writes a count, a dash for none.
func dash(n int) string {
	if n == 0 {
		return "-"
	}
	return fmt.Sprint(n)
}

// blanks names a job's blank, or says how many it has.
func (c Compared) blanks() string {
	if len(c.Plans) == 1 {
		return c.Plans[0].Blank.Name
	}
	return count(len(c.Plans), "blank")
}

// verdict says whether a job clears.
func (c Compared) verdict() string {
	switch all, onlyIf := clearing(c.Plans); {
	case all == len(c.Plans) && onlyIf > 0:
		return ifRight
	case all == len(c.Plans):
		return isClear
	case len(c.Plans) > 1 && all > 0:
		return fmt.Sprintf("%s: %d of %d do", isNotClear, all, len(c.Plans))
	}
	return isNotClear
}

// figure is one figure of a job, as a table has it.
type figure struct {
	name string
	of   func(geometry.Unit, Compared) string
}

// figuresOf returns the figures that jobs are compared by. Of a set it is always the blank
// that takes most, or has least.
func figuresOf(jobs []Compared) []figure {
	all := []figure{
		{"repeats", func(_ geometry.Unit, c Compared) string { return fmt.Sprint(c.Plans[0].Repeats) }},
		{"cuts", func(_ geometry.Unit, c Compared) string { return fmt.Sprint(c.Plans[0].Whole().Cuts) }},
		{"wheels", func(_ geometry.Unit, c Compared) string { return fmt.Sprint(len(c.Plans[0].WholeTimes().Wheels)) }},
		{"groove", func(u geometry.Unit, c Compared) string { return Groove(u, largest(c, grooveLength)) }},
		{"deepest cut", func(u geometry.Unit, c Compared) string { return u.FormatDecimal(largest(c, deepest)) }},
		{"widest groove", func(u geometry.Unit, c Compared) string { return u.FormatDecimal(largest(c, widest)) }},
		{"least land", leastLand},
		{"least glass left", leastGlass},
		{"ground away", func(u geometry.Unit, c Compared) string { return Weight(u, largest(c, groundAway)) }},
	}
	if slices.ContainsFunc(jobs, func(c Compared) bool { return c.minutes() > 0 }) {
		all = append(all, figure{"time at the wheel", func(_ geometry.Unit, c Compared) string {
			if c.minutes() == 0 {
				return "-"
			}
			return Minutes(c.minutes())
		}})
	}
	return all
}

// largest and smallest return a figure of the blank on which it is that.
func largest(c Compared, of func(*pattern.Plan) float64) float64 {
	return of(slices.MaxFunc(c.Plans, func(a, b *pattern.Plan) int { return cmp.Compare(of(a), of(b)) }))
}

func smallest(c Compared, of func(*pattern.Plan) float64) float64 {
	return of(slices.MinFunc(c.Plans, func(a, b *pattern.Plan) int { return cmp.Compare(of(a), of(b)) }))
}

func grooveLength(p *pattern.Plan) float64 { return p.Whole().Length }

func groundAway(p *pattern.Plan) float64 { return p.Blank.Grams(p.GroundAway()) }

func deepest(p *pattern.Plan) float64 {
	return greatest(p, func(c pattern.Cut) float64 { return c.Depth })
}

func widest(p *pattern.Plan) float64 {
	return greatest(p, func(c pattern.Cut) float64 { return c.Width })
}

// greatest returns the greatest figure of a plan's cuts, on its base too.
func greatest(p *pattern.Plan, of func(pattern.Cut) float64) float64 {
	most := 0.0
	for _, face := range p.Faces() {
		for _, c := range face.Cuts {
			most = max(most, of(c))
		}
	}
	return most
}

// minutes returns how long the grooves of one glass take, 0 where the rate of one of its
// wheels isn't known.
func (c Compared) minutes() float64 {
	return largest(c, func(p *pattern.Plan) float64 {
		if t := p.WholeTimes(); t.Known() {
			return t.Cutting
		}
		return 0
	})
}

// nearest returns the least land of a plan, +Inf where there is none within what is looked
// for, or none is asked.
func nearest(p *pattern.Plan) float64 {
	least := math.Inf(1)
	for _, face := range p.Faces() {
		least = min(least, nearestOn(face))
	}
	return least
}

// nearestOn is nearest on one face.
func nearestOn(face *pattern.Plan) float64 {
	if land, ok := face.Nearest(search.Within); ok {
		return land
	}
	return math.Inf(1)
}

// thinnest returns the least glass left of a plan, on its base too.
func thinnest(p *pattern.Plan) float64 {
	least := math.Inf(1)
	for _, face := range p.Faces() {
		least = min(least, face.MinLeft())
	}
	return least
}

// leastLand writes the least land of a job, and leastGlass the least glass left by it.
func leastLand(u geometry.Unit, c Compared) string {
	return landWords(u, c.Plans[0].Job, smallest(c, nearest))
}

func leastGlass(u geometry.Unit, c Compared) string {
	return leftWords(u, c.Plans[0].Job, smallest(c, thinnest))
}

// compareNotes says what the figures of a table are of, and what to do about findings.
func compareNotes(jobs []Compared) []string {
	notes := []string{"", "The least land is between cuts that do not join, of those that are to have land between them."}
	if slices.ContainsFunc(jobs, func(c Compared) bool { return len(c.Plans) > 1 }) {
		notes = append(notes, "Of several blanks, findings are of all; the other figures are for one glass, of the blank that takes most or has least.")
	}
	unclear := slices.IndexFunc(jobs, func(c Compared) bool { return !c.Clear() })
	if unclear >= 0 {
		notes = append(notes, fmt.Sprintf("roundlay check %s lists its findings, each with its place and its cure.", jobs[unclear].File))
	}
	for _, c := range jobs {
		if c.verdict() == ifRight {
			notes = append(notes, c.File+": "+OnlyIf(c.Plans...))
		}
	}
	return notes
}
