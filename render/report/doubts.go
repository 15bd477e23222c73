package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/slips"
)

// Doubts lists the readings of a blank that its sisters contradict: which reading,
// what was read, and what the sisters have there.
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
	sisters := fmt.Sprintf("its %d sisters have", d.Sisters)
	least, most := u.Format(times*d.Min), u.Format(times*d.Max)
	if least != most {
		least += " to " + most
	}
	return fmt.Sprintf("measure again: %s was read as %s, where %s %s (%s).", what, u.FormatChosen(times*d.Read), sisters, least, p.Job.Where(key))
}
