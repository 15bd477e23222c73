package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// OldMark is an old mark as it was read, and what may have made it: wheels, or any size of
// wheel with one edge.
type OldMark struct {
	Site          Site
	Length, Width float64
	Step          float64 // of the scale both were read on
	Rows          []OldMaker
	Edge          groove.Wheel // whose size isn't known, where there are no rows
	Sizes         groove.Sizes
}

// OldMaker is a wheel, and whether it may have made the mark.
type OldMaker struct {
	Wheel groove.Wheel
	groove.Likeness
}

// Of adds a wheel to those that the mark is compared with.
func (m *OldMark) Of(w groove.Wheel) {
	m.Rows = append(m.Rows, OldMaker{w, m.Site.At.Like(w, groove.Rounded(m.Length, m.Step), groove.Rounded(m.Width, m.Step))})
}

// OfAnySize compares the mark with those of a wheel's edge, whatever its size.
func (m *OldMark) OfAnySize(edge groove.Wheel) {
	m.Edge = edge
	m.Sizes = m.Site.At.LikeOfAny(edge, groove.Rounded(m.Length, m.Step), groove.Rounded(m.Width, m.Step), job.WheelRadii())
}

// telling is the greatest ratio of two sizes of wheel that still says something of it.
const telling = 1.5

// OldMarkText writes what may have made an old mark.
func OldMarkText(w io.Writer, m OldMark) error {
	var b strings.Builder
	u := m.Site.Unit
	fmt.Fprintf(&b, "%s\n\n", wrap(fmt.Sprintf("A mark %s long and %s wide, each read within %s, pressed in once %s:", u.FormatChosen(m.Length),
		u.FormatChosen(m.Width), roundedUp(u, m.Step/2), m.Site.words()), 79, ""))
	if m.Rows == nil {
		b.WriteString(wrap(m.anySize(), 79, "") + "\n")
	} else {
		m.wheels(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// wheels writes what each wheel has to do with the mark.
func (m OldMark) wheels(b *strings.Builder) {
	u, fits := m.Site.Unit, 0
	for _, row := range m.Rows {
		name := called(u, row.Wheel)
		switch {
		case row.Fits:
			fits++
			fmt.Fprintf(b, "  %s may have made it, %s deep\n", name, fromTo(u, row.Depth))
		case row.Bridges:
			fmt.Fprintf(b, "  %s did not: it is too large for the hollow there\n", name)
		case row.Widths == groove.Range{}:
			fmt.Fprintf(b, "  %s makes no single mark so long there\n", name)
		default:
			fmt.Fprintf(b, "  %s did not: its marks of that length are %s wide\n", name, fromTo(u, row.Widths))
		}
	}
	if fits > 1 {
		fmt.Fprintf(b, "\n%s\n", wrap(fmt.Sprintf("The readings don't tell the %d wheels apart. A longer mark of the same wheel, or a finer scale, tells more.", fits), 79, ""))
	}
}

// anySize says which sizes of a wheel may have made the mark, and how deep it is.
func (m OldMark) anySize() string {
	u, of := m.Site.Unit, m.Sizes
	edge := ofEdge(u, m.Edge)
	if !of.Fits {
		return fmt.Sprintf("No wheel with a %s made it by being pressed in once. Its edge is another, or the mark is drawn or widened by polishing.", edge)
	}
	across := groove.Range{Low: 2 * of.Radius.Low, High: 2 * of.Radius.High}
	size := u.FormatDown(across.Low) + " to " + u.FormatUp(across.High) + " across"
	switch {
	case of.Largest && of.Smallest:
		size = "of any size"
	case of.Largest:
		size = u.FormatDown(across.Low) + " across or larger"
	case of.Smallest:
		size = u.FormatUp(across.High) + " across or smaller"
	}
	words := fmt.Sprintf("A wheel with a %s that made it is %s. The mark is %s deep.", edge, size, fromTo(u, of.Depth))
	if of.Largest || of.Smallest || across.High > telling*across.Low {
		words += " So these readings hardly tell the wheel's size. A longer mark of the same wheel, or a finer scale, tells more."
	}
	return words
}

// fromTo writes a range as decimals, rounded so that all of it is within.
func fromTo(u geometry.Unit, r groove.Range) string {
	grain := decimalGrain(u)
	const slack = 1e-9
	low, high := u.FormatDecimal(math.Floor(r.Low/grain+slack)*grain), roundedUp(u, r.High)
	if low == high {
		return low
	}
	return strings.TrimSuffix(low, " "+u.String()) + " to " + high
}

// roundedUp writes a length as a decimal that is not below it.
func roundedUp(u geometry.Unit, mm float64) string {
	grain := decimalGrain(u)
	const slack = 1e-9
	return u.FormatDecimal(math.Ceil(mm/grain-slack) * grain)
}

// decimalGrain is the last place of a small length's decimals.
func decimalGrain(u geometry.Unit) float64 {
	if u == geometry.Inch {
		return geometry.MillimetresPerInch / 1000
	}
	return 0.01
}
