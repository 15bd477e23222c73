package report

import (
	"io"
	"slices"
)

// compareJSON is jobs side by side, whether each clears, and what each takes.
type compareJSON struct {
	Schema int            `json:"schema"` // the version of this form, 1
	Clear  bool           `json:"clear"`  // whether all of them are clear
	Jobs   []comparedJSON `json:"jobs"`   // in the order in which they were named
}

// comparedJSON is one of several jobs. Of several blanks its figures are those of the one that
// takes most or has least.
type comparedJSON struct {
	File     string          `json:"file"`                         // as it was named
	Title    string          `json:"title"`                        // the job's title
	Blanks   []string        `json:"blanks"`                       // the names of its blanks
	Clear    bool            `json:"clear"`                        // whether all its blanks are clear
	OnlyIf   []string        `json:"only_if"`                      // the readings in doubt on which clear depends, in words; empty where none is in doubt, or where it is not clear
	Findings []kindCountJSON `json:"findings"`                     // what is wrong, by kind
	Repeats  int             `json:"repeats"`                      // how many times the design goes round
	Cuts     int             `json:"cuts"`                         // how many on one glass
	Wheels   []string        `json:"wheels"`                       // their names, in the order to cut
	Length   number          `json:"length" unit:"mm"`             // of groove
	Depth    number          `json:"depth" unit:"mm"`              // the greatest of a cut, as it comes out
	Width    number          `json:"width" unit:"mm"`              // the greatest of a groove
	Land     *number         `json:"land,omitempty" unit:"mm"`     // the least between two cuts that don't join; left out where none is under 10 mm
	Left     *number         `json:"left,omitempty" unit:"mm"`     // the least glass left under a cut; left out where all cuts are off the glass
	Ground   number          `json:"ground_away" unit:"g"`         // of glass
	Minutes  *number         `json:"minutes,omitempty" unit:"min"` // at the wheel; left out where the rate of a wheel isn't known
}

// kindCountJSON is how often one kind of finding was found.
type kindCountJSON struct {
	Kind  string `json:"kind" word:"kinds"` // what is wrong
	Count int    `json:"count"`             // of letters, on all blanks
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
