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

type rackJSON struct {
	Schema int             `json:"schema"`
	Title  string          `json:"title"`
	Count  *countJSON      `json:"count,omitempty"` // that most is of, where a motif has one
	OnlyIf []string        `json:"only_if"`         // the readings in doubt on which it hangs what clears
	Wheels []wheelOnesJSON `json:"wheels"`
}

type countJSON struct {
	Motif int    `json:"motif"`
	Key   string `json:"key"`
}

type wheelOnesJSON struct {
	Wheel string `json:"wheel"`
	Clear *bool  `json:"clear,omitempty"` // left out where there was too much to try
	// What stands in the way, the worst finding of each letter, and on which blank: left
	// out where that isn't known.
	Blank    string        `json:"blank,omitempty"`
	Findings []findingJSON `json:"findings,omitzero"`
	Most     int           `json:"most,omitempty"`   // where a count clears
	Depth    *number       `json:"depth,omitempty"`  // where a depth clears
	Groove   *number       `json:"groove,omitempty"` // the widest, where it can be laid out
	Unfit    string        `json:"unfit,omitempty"`  // why it can't be laid out as asked
	Short    bool          `json:"short"`            // whether there was too much to try every count and depth
	Land     *number       `json:"land,omitempty"`   // the least; where it is not more than anyone looks for
}

// RackJSON writes what each wheel of the rack makes of a design.
func RackJSON(w io.Writer, j *job.Job, wheels []search.OnWheel) error {
	out := rackJSON{Schema: schema, Title: j.Title, OnlyIf: doubtedIn(j), Wheels: []wheelOnesJSON{}}
	for _, f := range wheels {
		one := wheelOnesJSON{Wheel: j.Rack[f.Wheel].Name, Most: f.Max, Short: f.Short,
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
