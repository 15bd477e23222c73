package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// Site is a place on a glass where single marks are made, as it is said.
type Site struct {
	At     *groove.Site
	Unit   geometry.Unit
	Blank  string  // "" for a straight glass that is given by its measure alone
	Height float64 // above the table, on a blank
	Across float64 // of the glass there
	Lean   geometry.Angle
}

// words says where the site is, and how its marks lie.
func (s Site) words() string {
	u, glass := s.Unit, "a straight glass"
	if s.Blank != "" {
		glass = fmt.Sprintf("blank %q, %s above the table,", s.Blank, u.Format(s.Height))
	}
	return fmt.Sprintf("on %s %s across, %s", glass, u.FormatChosen(s.Across), s.lies())
}

// lies says how marks lie there.
func (s Site) lies() string {
	switch lean := geometry.Decimal(math.Abs(s.Lean.Degrees()), 1); {
	case lean == "0.0":
		return "upright"
	case lean == "90.0":
		return "level"
	case s.Lean < 0:
		return strings.TrimSuffix(lean, ".0") + "° to the left of upright"
	default:
		return strings.TrimSuffix(lean, ".0") + "° to the right of upright"
	}
}

// Marks are marks at one place: each of what was asked, or a table over lengths.
type Marks struct {
	Site  Site
	Asked groove.Asked
	Rows  []Mark
}

// Mark is one mark of a wheel, or that there is none.
type Mark struct {
	Wheel groove.Wheel
	groove.Made
}

// MarkLengths returns the lengths that a table of marks goes over.
func MarkLengths(u geometry.Unit) []float64 {
	if u == geometry.Millimetre {
		return []float64{3, 5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80}
	}
	eighths := []float64{1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 24}
	for i := range eighths {
		eighths[i] *= geometry.MillimetresPerInch / 8
	}
	return eighths
}

// called says which wheel it is: by its name, or by its measures.
func called(u geometry.Unit, w groove.Wheel) string {
	if w.Name != "" {
		return w.Name
	}
	return ofEdge(u, w) + ", " + u.FormatChosen(2*w.Radius) + " across"
}

// ofEdge says what edge a wheel has.
func ofEdge(u geometry.Unit, w groove.Wheel) string {
	angle := fmt.Sprintf("%g°", math.Round(geometry.Angle(w.Angle).Degrees()*100)/100)
	switch w.Edge {
	case groove.Round:
		return "round edge of radius " + u.FormatChosen(w.Convex)
	case groove.Flat:
		return "flat edge " + u.FormatChosen(w.Thick) + " wide"
	case groove.Gang:
		return fmt.Sprintf("gang of %d mitres of %s", w.Mitres, angle)
	}
	return "mitre of " + angle
}

// MarksText writes marks for the bench.
func MarksText(w io.Writer, m Marks) error {
	var b strings.Builder
	switch {
	case m.Asked == (groove.Asked{}):
		fmt.Fprintf(&b, "Single marks %s\n\n", m.Site.words())
		m.table(&b)
	case len(m.Rows) == 1:
		m.one(&b, m.Rows[0])
	default:
		fmt.Fprintf(&b, "A mark %s, %s\n\n", m.asks(), m.Site.words())
		m.table(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// asks says what was asked of a mark.
func (m Marks) asks() string {
	u := m.Site.Unit
	switch {
	case m.Asked.Depth > 0:
		return u.FormatChosen(m.Asked.Depth) + " deep"
	case m.Asked.Width > 0:
		return u.FormatChosen(m.Asked.Width) + " wide"
	}
	return u.FormatChosen(m.Asked.Length) + " long"
}

// one writes the one mark that was asked for.
func (m Marks) one(b *strings.Builder, row Mark) {
	u, name := m.Site.Unit, called(m.Site.Unit, row.Wheel)
	fmt.Fprintf(b, "%s %s\n", strings.ToUpper(name[:1])+name[1:], m.Site.words())
	if row.None || row.Bridges {
		fmt.Fprintf(b, "  %s\n", wrap(m.why(row), 77, "  "))
		return
	}
	g := row.Mark
	fmt.Fprintf(b, "  length   %s", u.FormatWithRest(g.Length))
	if straight := m.Site.At.Calipered(g.Length); g.Length-straight > u.Step()/2 {
		fmt.Fprintf(b, " along the glass; calipers read %s straight across", u.Format(straight))
	}
	fmt.Fprintf(b, "\n  depth    %s\n  width    %s\n", seen(u, g.Depth), seen(u, g.Width))
	if left := remains(u, g); left != "" {
		fmt.Fprintf(b, "  leaves   %s\n", left)
	}
	if words := m.cautious(row); words != "" {
		fmt.Fprintf(b, "%s\n", wrap(words, 79, ""))
	}
}

// seen writes a small length as a decimal, and one that would look like none as such.
func seen(u geometry.Unit, mm float64) string {
	if grain := decimalGrain(u); mm < grain/2 {
		return "under " + u.FormatDecimal(grain)
	}
	return u.FormatDecimal(mm)
}

// remains says what glass a mark leaves, "" where that isn't known.
func remains(u geometry.Unit, g groove.Groove) string {
	switch {
	case math.IsInf(g.Remains.Min, 1):
		return ""
	case g.Remains.Min <= 0:
		return "no glass: it breaks through"
	}
	grain := decimalGrain(u)
	return u.FormatDecimal(math.Floor(g.Remains.Min/grain)*grain) + " of glass"
}

// cautious says what a mark asks of its wheel that the wheel can't do.
func (m Marks) cautious(row Mark) string {
	const slight = 0.005 // mm: no hand holds it
	if row.Mark.WheelFit.Buried > slight {
		return "The wheel is buried: its shoulders go " + m.Site.Unit.FormatDecimal(row.Mark.WheelFit.Buried) +
			" below the glass, and the groove is no wider than the wheel."
	}
	return ""
}

// why says why there is no mark.
func (m Marks) why(row Mark) string {
	u := m.Site.Unit
	longest := row.Longest
	switch {
	case row.Bridges:
		return "This wheel is too large for the hollow there: it rests on two places, and its length says nothing of its depth. Take a smaller one."
	case longest.Length == 0:
		return "There is no room for a mark of this wheel there."
	case m.Asked.Width > longest.Width && m.Asked.Width > 0:
		return fmt.Sprintf("No mark of this wheel is so wide there: the widest is %s.", u.FormatDecimal(longest.Width))
	case m.Asked.Depth > 0:
		return fmt.Sprintf("No mark of this wheel is so deep there: the longest for which there is room, %s, is %s deep.",
			u.FormatDown(longest.Length), u.FormatDecimal(longest.Depth))
	}
	return fmt.Sprintf("No mark of this wheel is so long there: the longest is %s. A longer groove is drawn: the wheel is carried along it.", u.FormatDown(longest.Length))
}

// table writes one mark a line.
func (m Marks) table(b *strings.Builder) {
	u, inside := m.Site.Unit, false
	for _, row := range m.Rows {
		inside = inside || !row.None && !math.IsInf(row.Mark.Remains.Min, 1)
	}
	t := tabwriter.NewWriter(b, 0, 0, 3, ' ', 0)
	head := "  wheel\tlength\tdepth\twidth"
	if inside {
		head += "\tglass left"
	}
	fmt.Fprintln(t, head)
	last := ""
	for _, row := range m.Rows {
		name := called(u, row.Wheel)
		if name == last {
			name = ""
		} else {
			last = name
		}
		g := row.Mark
		switch {
		case row.Bridges:
			fmt.Fprintf(t, "  %s\t%s\ttoo large for the hollow\n", name, lengthOrDash(u, g.Length))
			continue
		case row.None:
			fmt.Fprintf(t, "  %s\t-\tnone\n", name)
			continue
		}
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s", name, u.Format(g.Length), seen(u, g.Depth), seen(u, g.Width))
		if left := remains(u, g); left != "" {
			fmt.Fprintf(t, "\t%s", strings.TrimSuffix(left, " of glass"))
		}
		if m.cautious(row) != "" {
			fmt.Fprint(t, "\tburied")
		}
		fmt.Fprintln(t)
	}
	t.Flush()
}

// lengthOrDash writes a length, and a dash for none.
func lengthOrDash(u geometry.Unit, length float64) string {
	if length == 0 {
		return "-"
	}
	return u.Format(length)
}
