package report

import (
	"io"
	"math"

	"roundlay/pattern/groove"
)

type siteJSON struct {
	Blank  string  `json:"blank,omitempty"`
	Height *number `json:"height,omitempty"`
	Across number  `json:"across"`
	Slant  number  `json:"slant"`
}

func (s Site) json() siteJSON {
	return siteJSON{Blank: s.Blank, Height: where(s.Blank != "", s.Height), Across: number(s.Across), Slant: number(s.Lean.Degrees())}
}

type bareWheelJSON struct {
	Name   string  `json:"name,omitempty"`
	Edge   string  `json:"edge"`
	Across *number `json:"across,omitempty"`
}

func bareWheel(w groove.Wheel, sized bool) bareWheelJSON {
	return bareWheelJSON{Name: w.Name, Edge: w.Edge.String(), Across: where(sized, 2*w.Radius)}
}

// markJSON is a mark. Where there is none, its measures are left out.
type markJSON struct {
	Wheel     bareWheelJSON `json:"wheel"`
	Length    *number       `json:"length,omitempty"`
	Calipered *number       `json:"calipered,omitempty"`
	Depth     *number       `json:"depth,omitempty"`
	Width     *number       `json:"width,omitempty"`
	Left      *number       `json:"left,omitempty"`
	Buried    *number       `json:"buried,omitempty"`
	None      bool          `json:"none,omitempty"`
	Bridged   bool          `json:"bridged,omitempty"`
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

// MarksJSON writes marks. Where one mark was asked for, it is at the top level too.
func MarksJSON(w io.Writer, m Marks) error {
	out := struct {
		Schema int      `json:"schema"`
		Glass  siteJSON `json:"glass"`
		*markJSON
		Marks []markJSON `json:"marks"`
	}{Schema: schema, Glass: m.Site.json(), Marks: []markJSON{}}
	for _, row := range m.Rows {
		out.Marks = append(out.Marks, m.json(row))
	}
	if len(out.Marks) == 1 && m.Asked != (groove.Asked{}) {
		out.markJSON = &out.Marks[0]
	}
	return write(w, out)
}

type rangeJSON struct {
	Least *number `json:"least,omitempty"`
	Most  *number `json:"most,omitempty"`
}

func rangeOf(r groove.Range) *rangeJSON { return &rangeJSON{known(r.Low), known(r.High)} }

type makerJSON struct {
	Wheel   bareWheelJSON `json:"wheel"`
	Fits    bool          `json:"fits"`
	Bridged bool          `json:"bridged,omitempty"`
	Size    *rangeJSON    `json:"size,omitempty"`
	Depth   *rangeJSON    `json:"depth,omitempty"`
	Width   *rangeJSON    `json:"width,omitempty"` // of its own marks of that length
}

// OldMarkJSON writes what may have made an old mark.
func OldMarkJSON(w io.Writer, m OldMark) error {
	out := struct {
		Schema int         `json:"schema"`
		Glass  siteJSON    `json:"glass"`
		Length *rangeJSON  `json:"length"`
		Width  *rangeJSON  `json:"width"`
		Makers []makerJSON `json:"makers"`
	}{schema, m.Site.json(), rangeOf(groove.Rounded(m.Length, m.Step)), rangeOf(groove.Rounded(m.Width, m.Step)), []makerJSON{}}
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
