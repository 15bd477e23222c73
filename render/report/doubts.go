package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/slips"
)

// Doubts lists the readings of a blank that its sisters or its own walls contradict:
// which reading, what was read, and what the others are.
func Doubts(p *pattern.Plan) []string {
	var all []string
	for _, d := range p.Doubts() {
		all = append(all, doubt(p, d))
	}
	return all
}

func doubt(p *pattern.Plan, d slips.Doubt) string {
	u, key, times := p.Job.Length, p.Doubted(d), 1.0
	what := reading(p, d)
	if girth(key) {
		times = math.Pi
	}
	return fmt.Sprintf(again+"%s was read as %s, where %s (%s).", what, u.FormatChosen(times*d.Read), against(u, d, times), p.Job.Where(key))
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

// again begins what is said of a reading in doubt.
const again = "measure again: "

// girth reports whether a job's key is of a glass measured round.
func girth(key string) bool { return strings.HasSuffix(key, ".around") }

// reading names a reading in doubt.
func reading(p *pattern.Plan, d slips.Doubt) string {
	at := fmt.Sprintf(" of %q at %s", d.Blank.Name, p.Job.Length.Format(d.Height))
	switch {
	case d.Of == slips.OfHeight:
		return fmt.Sprintf("the height of %q", d.Blank.Name)
	case d.Of == slips.OfFloor:
		return fmt.Sprintf("the floor of %q", d.Blank.Name)
	case d.Of == slips.OfWall:
		return "the wall" + at
	case girth(p.Doubted(d)):
		return "the girth" + at
	}
	return "the diameter" + at
}
