package report

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// rackJSON is a design tried on each wheel of the rack.
type rackJSON struct {
	Schema int           `json:"schema"`          // the version of this form, 1
	Title  string        `json:"title"`           // the job's title
	Count  *countJSON    `json:"count,omitempty"` // the count that is looked for; left out where no motif has one
	OnlyIf []string      `json:"only_if"`         // the readings in doubt on which it depends what clears, in words
	Wheels []onWheelJSON `json:"wheels"`          // wheel by wheel
}

// countJSON is a count of a motif.
type countJSON struct {
	Motif int    `json:"motif"` // the motif's number, from 1
	Key   string `json:"key"`   // which of its counts
}

// onWheelJSON is all of a design cut with one wheel.
type onWheelJSON struct {
	Wheel    string        `json:"wheel"`                      // its name
	Clear    *bool         `json:"clear,omitempty"`            // whether all clears as asked; left out where there was too much to try
	Blank    string        `json:"blank,omitempty"`            // on which blank the findings are; left out where it clears, or it isn't known
	Findings []findingJSON `json:"findings,omitzero"`          // what stands in the way, the worst finding of each letter; left out where that isn't known
	Most     int           `json:"most,omitempty"`             // the largest of that count with which all clears; left out where none does
	Depth    *number       `json:"depth,omitempty" unit:"mm"`  // the greatest depth, one for all motifs, at which all clears; left out where none does
	Groove   *number       `json:"groove,omitempty" unit:"mm"` // the widest groove, as asked; left out where it can't be laid out
	Unfit    string        `json:"unfit,omitempty"`            // why it can't be laid out on that wheel, in words; left out where it can
	Short    bool          `json:"short"`                      // whether there was too much to try every count and depth; what was not found is then left out
	Land     *number       `json:"land,omitempty" unit:"mm"`   // the least land, as asked; left out where none is under 10 mm, or it can't be laid out
}

// RackJSON writes what each wheel of the rack makes of a design.
func RackJSON(w io.Writer, j *job.Job, wheels []search.OnWheel) error {
	out := rackJSON{Schema: schema, Title: j.Title, OnlyIf: doubtedIn(j), Wheels: []onWheelJSON{}}
	for _, f := range wheels {
		one := onWheelJSON{Wheel: j.Rack[f.Wheel].Name, Most: f.Max, Short: f.Short,
			Depth: where(f.Depth > 0, f.Depth), Groove: where(f.Unfit == nil, f.Groove),
			Land: where(f.Land < search.Within && f.Unfit == nil, f.Land)}
		if f.Clear || !f.Short {
			one.Clear = &f.Clear
		}
		if f.Clear {
			one.Findings = []findingJSON{}
		}
		if f.Against != nil {
			one.Blank = f.Against.Blank.Name
			for _, g := range f.Against.Groups() {
				one.Findings = append(one.Findings, finding(f.Against, g, g.Worst()))
			}
		}
		if f.Unfit != nil {
			one.Unfit = f.Unfit.Error()
		}
		if f.Count.Key != "" {
			out.Count = &countJSON{f.Count.Motif + 1, f.Count.Key}
		}
		out.Wheels = append(out.Wheels, one)
	}
	return write(w, out)
}

// Rack writes it as a table.
func Rack(w io.Writer, j *job.Job, wheels []search.OnWheel) error {
	u := j.Length
	var b strings.Builder
	questioned(&b, j)
	head := j.Title + ", all of it on each wheel of the rack"
	if all := doubtedIn(j); len(all) > 0 {
		fmt.Fprintf(&b, "%s\n\n", wrap(head+". It clears on any of them "+areRight(all), 79, ""))
	} else {
		fmt.Fprintf(&b, "%s:\n\n", head)
	}
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	count, key := wheels[0].Count, "count"
	if count.Key != "" {
		key = fmt.Sprintf("%s of motif %d", count.Key, count.Motif+1)
	}
	fmt.Fprintf(t, "  wheel\tclears as asked\tmost %s\tgreatest depth\twidest groove\tsmallest land\n", key)
	short, unfit := false, false
	for _, f := range wheels {
		clears, most, depth, groove, land := "no", "none", "none", u.FormatDecimal(f.Groove), u.FormatDecimal(f.Land)
		if f.Short {
			most, depth, short = "not found", "not found", true
			clears = "not known"
		}
		if f.Clear {
			clears = "yes"
		}
		if f.Max > 0 {
			most = fmt.Sprint(f.Max)
		}
		if f.Depth > 0 {
			depth = u.Format(f.Depth)
		}
		if f.Land >= search.Within {
			land = "over " + u.Format(search.Within)
		}
		if f.Unfit != nil {
			groove, land, unfit = "-", "-", true
		}
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\t%s\t%s\n", j.Rack[f.Wheel].Name, clears, most, depth, groove, land)
	}
	t.Flush()
	inTheWay(&b, j, wheels)
	explained := []string{
		"Clears as asked: with the counts and the depths the job asks for.",
		"Most: the largest count with which all of it clears, at the depths asked.",
		"Greatest depth: the deepest, one for all motifs, at which all of it clears with the counts asked.",
		"None: it clears with no such count, or at no such depth.",
		"Groove and land are at the depths asked.",
	}
	if short {
		explained = append(explained, "Not found: with so many cuts not every count and depth could be tried.")
	}
	if unfit {
		explained = append(explained, "-: as asked it can't be laid out on that wheel, or was not tried.")
	}
	for _, words := range explained {
		fmt.Fprintf(&b, "\n%s", wrap(words, 100, "  "))
	}
	b.WriteByte('\n')
	_, err := io.WriteString(w, b.String())
	return err
}

// inTheWay says of each wheel on which a design doesn't clear as asked, or can't be laid
// out, what stands in the way there.
func inTheWay(b *strings.Builder, j *job.Job, wheels []search.OnWheel) {
	head := "\nWhat stands in the way, as asked:\n"
	for _, f := range wheels {
		var words string
		switch {
		case f.Against != nil:
			words = obstacles(f.Against)
		case f.Unfit != nil && !errors.Is(f.Unfit, pattern.ErrSpent):
			words = f.Unfit.Error()
		default:
			continue
		}
		fmt.Fprintf(b, "%s  %s\n", head, wrap(j.Rack[f.Wheel].Name+": "+words, 98, "    "))
		head = ""
	}
}

// obstacles names the first kinds of finding of a plan, each with what was measured and
// what is wanted.
func obstacles(p *pattern.Plan) string {
	const most = 2 // check lists all
	var words []string
	groups, kinds := p.Groups(), map[pattern.Kind]bool{}
	for _, g := range groups {
		if !kinds[g.Kind] && len(kinds) < most {
			kinds[g.Kind] = true
			words = append(words, fmt.Sprintf("%s, %s", g.Kind, Measured(p, g.Worst())))
		}
	}
	said := strings.Join(words, "; ")
	if more := len(groups) - len(words); more > 0 {
		said += fmt.Sprintf("; and %d more", more)
	}
	if len(p.Job.Blanks) > 1 {
		said += fmt.Sprintf(" (blank %q)", p.Blank.Name)
	}
	return said
}
