package report

import (
	"io"
	"math"

	"roundlay/pattern/groove"
)

// siteJSON is the glass where a mark is.
type siteJSON struct {
	Blank  string  `json:"blank,omitempty"`            // the job's blank; left out where the glass is given by itself
	Height *number `json:"height,omitempty" unit:"mm"` // above the table; left out where the glass is given by itself
	Across number  `json:"across" unit:"mm"`           // the outside diameter there
	Slant  number  `json:"slant" unit:"°"`             // how far the marks lean to the right from upright
}

func (s Site) json() siteJSON {
	return siteJSON{Blank: s.Blank, Height: where(s.Blank != "", s.Height), Across: number(s.Across), Slant: number(s.Lean.Degrees())}
}

// bareWheelJSON is a wheel.
type bareWheelJSON struct {
	Name   string  `json:"name,omitempty"`             // as the rack has it; left out where it is given by itself
	Edge   string  `json:"edge" word:"edges"`          // how its edge is dressed
	Across *number `json:"across,omitempty" unit:"mm"` // its diameter; left out where its size is asked
}

func bareWheel(w groove.Wheel, sized bool) bareWheelJSON {
	return bareWheelJSON{Name: w.Name, Edge: w.Edge.String(), Across: where(sized, 2*w.Radius)}
}

// markJSON is a mark of one wheel. Where there is none, its measures are left out.
type markJSON struct {
	Wheel     bareWheelJSON `json:"wheel"`                         // the wheel
	Length    *number       `json:"length,omitempty" unit:"mm"`    // along the glass; left out where there is no mark
	Calipered *number       `json:"calipered,omitempty" unit:"mm"` // what a caliper reads of the length, straight across; left out where there is no mark
	Depth     *number       `json:"depth,omitempty" unit:"mm"`     // where it is deepest; left out where there is no mark
	Width     *number       `json:"width,omitempty" unit:"mm"`     // where it is widest; left out where there is no mark
	Left      *number       `json:"left,omitempty" unit:"mm"`      // the glass left under it; left out where the wall isn't known
	Buried    *number       `json:"buried,omitempty" unit:"mm"`    // how far the wheel's shoulders are buried; left out where they are not
	None      bool          `json:"none,omitempty"`                // true where the wheel makes no mark with what was asked; left out where it does
	Bridged   bool          `json:"bridged,omitempty"`             // true where the wheel is too large for a hollow; left out where it is not
}

func (m Marks) json(row Mark) markJSON {
	out := markJSON{Wheel: bareWheel(row.Wheel, true), None: row.None, Bridged: row.Bridges}
	if g := row.Mark; !row.None && !row.Bridges {
		out.Length, out.Depth, out.Width = known(g.Length), known(g.Depth), known(g.Width)
		out.Calipered = known(m.Site.At.Calipered(g.Length))
		out.Left = where(!math.IsInf(g.Remains.Min, 1), g.Remains.Min)
		out.Buried = where(m.cautious(row) != "", g.WheelFit.Buried)
	}
	return out
}

// marksJSON is one mark by each wheel. Where one mark was asked for, all of it is at the top level too.
type marksJSON struct {
	Schema int      `json:"schema"` // the version of this form, 1
	Glass  siteJSON `json:"glass"`  // where the marks are
	*markJSON
	Marks []markJSON `json:"marks"` // one for each wheel; of several lengths where none was asked for
}

// MarksJSON writes marks. Where one mark was asked for, it is at the top level too.
func MarksJSON(w io.Writer, m Marks) error {
	out := marksJSON{Schema: schema, Glass: m.Site.json(), Marks: []markJSON{}}
	for _, row := range m.Rows {
		out.Marks = append(out.Marks, m.json(row))
	}
	if len(out.Marks) == 1 && m.Asked != (groove.Asked{}) {
		out.markJSON = &out.Marks[0]
	}
	return write(w, out)
}

// rangeJSON is from the least to the most.
type rangeJSON struct {
	Least *number `json:"least,omitempty" unit:"mm"` // the least; left out where the readings don't tell it
	Most  *number `json:"most,omitempty" unit:"mm"`  // the most; left out where the readings don't tell it
}

func rangeOf(r groove.Range) *rangeJSON { return &rangeJSON{known(r.Low), known(r.High)} }

// makerJSON is a wheel that may have made an old mark.
type makerJSON struct {
	Wheel   bareWheelJSON `json:"wheel"`             // the wheel
	Fits    bool          `json:"fits"`              // whether it can have made the mark
	Bridged bool          `json:"bridged,omitempty"` // true where it is too large for a hollow; left out where it is not
	Size    *rangeJSON    `json:"size,omitempty"`    // the diameters of wheels of this edge that can have made it; left out where its own is given
	Depth   *rangeJSON    `json:"depth,omitempty"`   // of the mark by that wheel; left out where it doesn't fit
	Width   *rangeJSON    `json:"width,omitempty"`   // of the wheel's own marks of that length; left out where it makes none, or its size is asked
}

// oldMarkJSON is what may have made a mark that is to be matched.
type oldMarkJSON struct {
	Schema int         `json:"schema"` // the version of this form, 1
	Glass  siteJSON    `json:"glass"`  // where the mark is
	Length *rangeJSON  `json:"length"` // of the mark, as the reading allows
	Width  *rangeJSON  `json:"width"`  // of the mark, as the reading allows
	Makers []makerJSON `json:"makers"` // wheel by wheel
}

// OldMarkJSON writes what may have made an old mark.
func OldMarkJSON(w io.Writer, m OldMark) error {
	out := oldMarkJSON{schema, m.Site.json(), rangeOf(groove.Rounded(m.Length, m.Step)), rangeOf(groove.Rounded(m.Width, m.Step)), []makerJSON{}}
	for _, row := range m.Rows {
		maker := makerJSON{Wheel: bareWheel(row.Wheel, true), Fits: row.Fits, Bridged: row.Bridges}
		if row.Widths != (groove.Range{}) && !row.Bridges {
			maker.Width = rangeOf(row.Widths)
		}
		if row.Fits {
			maker.Depth = rangeOf(row.Depth)
		}
		out.Makers = append(out.Makers, maker)
	}
	if m.Rows == nil {
		out.Makers = append(out.Makers, m.anySizeJSON())
	}
	return write(w, out)
}

// anySizeJSON leaves out an end of the sizes that the readings don't tell.
func (m OldMark) anySizeJSON() makerJSON {
	maker, of := makerJSON{Wheel: bareWheel(m.Edge, false), Fits: m.Sizes.Fits}, m.Sizes
	if of.Fits {
		maker.Size = &rangeJSON{where(!of.Smallest, 2*of.Radius.Low), where(!of.Largest, 2*of.Radius.High)}
		maker.Depth = rangeOf(of.Depth)
	}
	return maker
}
