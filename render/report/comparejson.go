package report

import (
	"io"
	"slices"
)

// compareJSON is jobs side by side.
type compareJSON struct {
	Schema int            `json:"schema"`
	Clear  bool           `json:"clear"` // whether all of them are
	Jobs   []comparedJSON `json:"jobs"`
}

type comparedJSON struct {
	File     string          `json:"file"`
	Title    string          `json:"title"`
	Blanks   []string        `json:"blanks"`
	Clear    bool            `json:"clear"`
	OnlyIf   []string        `json:"only_if"`
	Findings []kindCountJSON `json:"findings"`
	Repeats  int             `json:"repeats"`
	Cuts     int             `json:"cuts"`
	Wheels   []string        `json:"wheels"` // in the order to cut
	Length   number          `json:"length"`
	Depth    number          `json:"depth"`
	Width    number          `json:"width"`
	Land     *number         `json:"land,omitempty"`
	Left     *number         `json:"left,omitempty"`
	Ground   number          `json:"ground_away"`
	Minutes  *number         `json:"minutes,omitempty"`
}

type kindCountJSON struct {
	Kind  string `json:"kind"`
	Count int    `json:"count"`
}

// CompareJSON writes the figures by which jobs are compared.
func CompareJSON(w io.Writer, jobs []Compared) error {
	out := compareJSON{Schema: schema, Clear: true}
	for _, c := range jobs {
		out.Clear = out.Clear && c.Clear()
		out.Jobs = append(out.Jobs, c.json())
	}
	return write(w, out)
}

func (c Compared) json() comparedJSON {
	p := c.Plans[0]
	out := comparedJSON{
		File: c.File, Title: p.Job.Title, Clear: c.Clear(), OnlyIf: hangsOn(c.Plans...), Findings: []kindCountJSON{},
		Repeats: p.Repeats, Cuts: p.Whole().Cuts, Wheels: []string{}, Length: number(largest(c, grooveLength)),
		Depth: number(largest(c, deepest)), Width: number(largest(c, widest)),
		Land: known(smallest(c, nearest)), Left: known(smallest(c, thinnest)), Ground: number(largest(c, groundAway)),
		Minutes: where(c.minutes() > 0, c.minutes()),
	}
	for _, each := range c.Plans {
		out.Blanks = append(out.Blanks, each.Blank.Name)
	}
	for _, face := range p.Faces() {
		for _, pass := range face.Order() {
			if name := p.Job.Rack[pass.Wheel].Name; !slices.Contains(out.Wheels, name) {
				out.Wheels = append(out.Wheels, name)
			}
		}
	}
	for _, kind := range kindsIn([]Compared{c}) {
		out.Findings = append(out.Findings, kindCountJSON{kind.String(), c.kinds()[kind]})
	}
	return out
}
