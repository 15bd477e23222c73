package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/slips"
)

// Doubts questions the readings of a blank that its sisters or its own walls speak
// against: which, what was read, and what they have.
func Doubts(p *pattern.Plan) []string {
	var all []string
	for _, d := range p.Doubts() {
		all = append(all, doubt(p, d))
	}
	return all
}

func doubt(p *pattern.Plan, d slips.Doubt) string {
	u, key, times := p.Job.Length, p.Doubted(d), 1.0
	var what string
	switch d.Of {
	case slips.OfHeight:
		what = fmt.Sprintf("the height of %q", d.Blank.Name)
	case slips.OfFloor:
		what = fmt.Sprintf("the floor of %q", d.Blank.Name)
	case slips.OfWall:
		what = fmt.Sprintf("the wall of %q at %s", d.Blank.Name, u.Format(d.Height))
	default:
		what = fmt.Sprintf("the diameter of %q at %s", d.Blank.Name, u.Format(d.Height))
		if strings.HasSuffix(key, ".around") {
			what, times = fmt.Sprintf("the girth of %q at %s", d.Blank.Name, u.Format(d.Height)), math.Pi
		}
	}
	return fmt.Sprintf("measure again: %s was read as %s, where %s (%s).", what, u.FormatChosen(times*d.Read), against(u, d, times), p.Job.Where(key))
}

// against says what speaks against a reading, times what it takes to make a width a
// girth.
func against(u geometry.Unit, d slips.Doubt, times float64) string {
	below, above := u.FormatChosen(d.Below), u.FormatChosen(d.Above)
	switch {
	case d.Below > 0 && d.Above > 0:
		return fmt.Sprintf("the walls below and above are %s and %s", below, above)
	case d.Below > 0:
		return "the wall below is " + below
	case d.Above > 0:
		return "the wall above is " + above
	}
	least, most := u.Format(times*d.Min), u.Format(times*d.Max)
	if least != most {
		least += " to " + most
	}
	return fmt.Sprintf("its %d sisters have %s", d.Sisters, least)
}
