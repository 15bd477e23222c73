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
)

// Circle is a circle to be stepped into equal parts with dividers.
type Circle struct {
	Blank  string // empty where there is only one
	Name   string // empty for one given by its measure alone
	Radius float64
	Parts  int
}

// division is the circle with its parts.
func (c Circle) division() geometry.Division {
	return geometry.Division{Radius: c.Radius, Parts: c.Parts}
}

// called is how the circle is named in words, "" for one given by its measure alone.
func (c Circle) called() string {
	switch {
	case c.Name == "":
		return ""
	case c.Blank == "":
		return "the " + c.Name
	}
	return fmt.Sprintf("blank %q, %s", c.Blank, c.Name)
}

// heading is how it is named at the beginning of a line.
func (c Circle) heading() string {
	name := strings.TrimPrefix(c.called(), "the ")
	if name == "" {
		name = "circle"
	}
	return strings.ToUpper(name[:1]) + name[1:] // our own words, in ASCII
}

// settingJSON is what a caliper can be set to.
type settingJSON struct {
	Text  string `json:"text"`            // as a caliper of the job's unit shows it
	Error number `json:"error" unit:"mm"` // the setting less the chord
}

// circleJSON is a circle and its divider setting.
type circleJSON struct {
	Name       string       `json:"name,omitempty"`                  // where it is on the glass, with its blank where there are several; left out of one given by its measure alone
	Parts      int          `json:"parts"`                           // into how many it is stepped
	Across     number       `json:"across" unit:"mm"`                // its diameter
	Chord      *number      `json:"chord,omitempty" unit:"mm"`       // of one part, straight across; left out for one repeat
	Setting    *settingJSON `json:"setting,omitempty"`               // what dividers are set to for it; left out for one repeat
	ClosingGap *number      `json:"closing_gap,omitempty" unit:"mm"` // what stepping round with the setting leaves along the arc, below zero where the last step passes the start; left out for one repeat
}

// divideJSON is the circle that is stepped, and the settings of all circles.
type divideJSON struct {
	circleJSON
	Used    *usedJSON    `json:"used,omitempty"`    // what was set with --set; left out without it
	Misread *misreadJSON `json:"misread,omitempty"` // what the gap would mean; left out where it goes with the setting
	Mended  *mendedJSON  `json:"mended,omitempty"`  // the last of rounds; left out without --gap
	Rounds  []mendedJSON `json:"rounds"`            // one for each --gap
	Circles []circleJSON `json:"circles"`           // all circles of the job, or the one given; empty for one repeat
	Table   []circleJSON `json:"table"`             // the circle that is stepped, in other counts
	Ovals   []roundJSON  `json:"out_of_round"`      // the stations that are out of round; empty for one repeat
}

// tableParts are the counts a divide table lists beside the one asked for:
// those that go into common repeats.
func tableParts() []int {
	return []int{3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 32, 36, 48}
}

// DivideJSON writes the settings for circles. The stepped one is at the top level,
// with the result of stepping it.
func DivideJSON(w io.Writer, unit geometry.Unit, circles []Circle, stepped Stepped, plans []*pattern.Plan) error {
	out := divideJSON{circleJSON: circle(unit, circles[stepped.On]), Circles: []circleJSON{}, Ovals: []roundJSON{}}
	for _, c := range circles {
		if c.Parts > 1 {
			out.Circles = append(out.Circles, circle(unit, c))
		}
	}
	for _, n := range tableParts() {
		out.Table = append(out.Table, circle(unit, Circle{circles[stepped.On].Blank, circles[stepped.On].Name, circles[stepped.On].Radius, n}))
	}
	out.Used, out.Rounds = stepped.json(unit, circles[stepped.On])
	if n := len(out.Rounds); n > 0 {
		out.Mended = &out.Rounds[n-1]
	}
	if m, misread := stepped.misread(unit, circles[stepped.On]); misread {
		out.Misread = m.json()
	}
	for _, p := range plans {
		out.Ovals = append(out.Ovals, rounds(p)...)
	}
	return write(w, out)
}

func circle(unit geometry.Unit, c Circle) circleJSON {
	out := circleJSON{Name: c.Name, Parts: c.Parts, Across: number(2 * c.Radius)}
	if c.Blank != "" {
		out.Name = c.Blank + ", " + c.Name
	}
	if c.Parts > 1 {
		chord := c.division().Chord()
		set := setting(unit, chord)
		out.Chord, out.Setting, out.ClosingGap = known(chord), &set, known(closingGap(unit, c))
	}
	return out
}

func setting(unit geometry.Unit, chord float64) settingJSON {
	set := unit.Setting(chord)
	return settingJSON{set.Text, number(set.Length - chord)}
}

// closingGap returns the gap that is left by stepping round with the caliper's
// setting. Rounding can make a setting longer than the diameter, with two parts:
// that steps the diameter, and leaves no gap.
func closingGap(unit geometry.Unit, c Circle) float64 {
	set := math.Min(unit.Setting(c.division().Chord()).Length, 2*c.Radius)
	return c.division().ClosingGap(set)
}

// Undivided is said where there is one repeat, in place of settings.
const Undivided = "One repeat: there is nothing to divide. One mark at the foot is the middle of the design."

// Divide writes the settings for circles as text for the bench, with a table of other
// counts last. Where one of them was stepped it writes the result of that alone.
func Divide(w io.Writer, unit geometry.Unit, circles []Circle, stepped Stepped, plans []*pattern.Plan) error {
	var b strings.Builder
	if circles[0].Parts < 2 {
		fmt.Fprintf(&b, "%s\nTo step a circle all the same, say in how many parts: --parts 4.\n", Undivided)
		_, err := io.WriteString(w, b.String())
		return err
	}
	of := circles[stepped.On]
	if stepped.asked() {
		plans = slices.DeleteFunc(slices.Clone(plans), func(p *pattern.Plan) bool { return of.Blank != "" && p.Blank.Name != of.Blank })
		stepped.words(&b, unit, of)
		fmt.Fprintf(&b, "%s; its chord is %s.\n", of.measures(unit), unit.FormatDecimal(of.division().Chord()))
	} else {
		for _, c := range circles {
			divide(&b, unit, c)
		}
	}
	for _, p := range plans {
		before := b.Len()
		if Rounds(&b, unit, p); b.Len() > before {
			b.WriteByte('\n')
		}
	}
	if !stepped.asked() {
		table(&b, unit, of)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// measures says how large the circle is, and in how many parts it is stepped.
func (c Circle) measures(unit geometry.Unit) string {
	return fmt.Sprintf("%s: %s across, %s round, %d parts", c.heading(), unit.Format(2*c.Radius), unit.Format(2*math.Pi*c.Radius), c.Parts)
}

func divide(b *strings.Builder, unit geometry.Unit, c Circle) {
	chord := c.division().Chord()
	fmt.Fprintln(b, c.measures(unit))
	if words := TooShort(unit, chord); words != "" {
		fmt.Fprintf(b, "  %s\n\n", words)
		return
	}
	fmt.Fprintf(b, "  chord          %s (%s)\n", unit.FormatWithRest(chord), unit.FormatDecimal(chord))
	fmt.Fprintf(b, "  set dividers   %s\n", unit.Format(chord))
	fmt.Fprintf(b, "  %-12s   %s\n\n", fmt.Sprintf("%d steps", c.Parts), Closing(unit, closingGap(unit, c)))
}

// Closing says where the last step falls.
func Closing(unit geometry.Unit, gap float64) string {
	switch text := unit.FormatDecimal(math.Abs(gap)); {
	case strings.Trim(text, "0. inm") == "":
		return "close"
	case gap > 0:
		return "stop " + text + " short of the start"
	default:
		return "pass the start by " + text
	}
}

func table(b *strings.Builder, unit geometry.Unit, c Circle) {
	of := "the same circle"
	if c.Name != "" {
		of = c.called()
	}
	fmt.Fprintf(b, "Other counts for %s, %s across:\n", of, unit.Format(2*c.Radius))
	t := tabwriter.NewWriter(b, 0, 0, 3, ' ', 0)
	fmt.Fprintln(t, "  parts\tset dividers\tchord\tthe last step would")
	for _, n := range tableParts() {
		k := Circle{Radius: c.Radius, Parts: n}
		chord := k.division().Chord()
		fmt.Fprintf(t, "  %d\t%s\t%s\t%s\n", n, unit.Format(chord), unit.FormatDecimal(chord), Closing(unit, closingGap(unit, k)))
	}
	t.Flush()
}
