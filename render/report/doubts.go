package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/slips"
)

// Doubts lists the readings of a blank that its sisters or its own walls contradict:
// which reading, what was read, and what the others are.
func Doubts(p *pattern.Plan) []string {
	var all []string
	for _, d := range p.Doubts() {
		all = append(all, doubt(p.Job, d))
	}
	return all
}

// doubtedIn names the readings of a job's blanks that are in doubt.
func doubtedIn(j *job.Job) []string {
	all := []string{}
	for _, d := range slips.Doubts(j.Blanks) {
		all = append(all, reading(j, d))
	}
	return all
}

// questioned writes, a paragraph each, which of a job's readings are in doubt.
func questioned(b *strings.Builder, j *job.Job) {
	for _, d := range slips.Doubts(j.Blanks) {
		fmt.Fprintf(b, "%s\n", wrap(upper(doubt(j, d)), 79, ""))
	}
}

func doubt(j *job.Job, d slips.Doubt) string {
	u, key, times := j.Length, pattern.Doubted(j, d), 1.0
	what := reading(j, d)
	if girth(key) {
		times = math.Pi
	}
	if d.Least > 0 {
		return fmt.Sprintf(again+"%s was read as %s, thinner than a blown glass is%s (%s).", what, u.FormatChosen(d.Read), meant(u, d), j.Where(key))
	}
	return fmt.Sprintf(again+"%s was read as %s, where %s (%s).", what, u.FormatChosen(times*d.Read), against(u, d, times), j.Where(key))
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

// meant asks after a thin wall that is a few 64ths of an inch whether as many 16ths were meant,
// which are next to them on a rule; "" for any other.
func meant(u geometry.Unit, d slips.Doubt) string {
	if u != geometry.Inch || math.Abs(d.Read/u.Step()-math.Round(d.Read/u.Step())) > 0.01 {
		return ""
	}
	return ": is " + u.Format(4*d.Read) + " meant?"
}

// again begins what is said of a reading in doubt.
const again = "measure again: "

// girth reports whether a job's key is of a glass measured round.
func girth(key string) bool { return strings.HasSuffix(key, ".around") }

// reading names a reading in doubt.
func reading(j *job.Job, d slips.Doubt) string {
	at := fmt.Sprintf(" of %q at %s", d.Blank.Name, j.Length.Format(d.Height))
	switch {
	case d.Of == slips.OfHeight:
		return fmt.Sprintf("the height of %q", d.Blank.Name)
	case d.Of == slips.OfFloor:
		return fmt.Sprintf("the floor of %q", d.Blank.Name)
	case d.Of == slips.OfWall:
		return "the wall" + at
	case girth(pattern.Doubted(j, d)):
		return "the girth" + at
	}
	return "the diameter" + at
}
