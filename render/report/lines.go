package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
)

// lineJSON is cuts that go on into one another and are cut without lifting the wheel.
type lineJSON struct {
	Cuts   []int `json:"cuts"`   // their ids from end to end
	Closed bool  `json:"closed"` // whether the last goes on into the first, round the glass
}

func lines(p *pattern.Plan) []lineJSON {
	out := []lineJSON{}
	for _, face := range p.Faces() {
		for _, c := range face.Chains() {
			if c.Alone() {
				continue
			}
			for turns := range c.Times {
				out = append(out, lineJSON{face.Copy(c, turns), c.Closed})
			}
		}
	}
	return out
}

// Line names the cuts of one line by their numbers, 6→22→38, only the first few
// where there are many. A line that closes on itself ends with its first number.
func Line(ids []int, closed bool) string {
	const most, first = 5, 3
	if closed {
		ids = append(ids[:len(ids):len(ids)], ids[0])
	}
	words := make([]string, 0, most)
	for i, id := range ids {
		switch {
		case len(ids) <= most || i < first || i == len(ids)-1:
			words = append(words, fmt.Sprint(id))
		case i == first:
			words = append(words, "…")
		}
	}
	return strings.Join(words, "→")
}

// linesOf names, by the id of a cut of the period, the line it belongs to, where
// that goes on from repeat to repeat.
func linesOf(p *pattern.Plan) map[int]string {
	of := map[int]string{}
	for _, c := range p.Chains() {
		if c.Alone() {
			continue
		}
		for turns := range c.Times {
			ids := p.Copy(c, turns)
			for _, id := range ids {
				if p.TurnsTo(id) == 0 {
					of[id] = "\t" + Line(ids, c.Closed)
				}
			}
		}
	}
	return of
}

// goingOn lists the lines that go on from repeat to repeat, one of each kind.
func goingOn(b *strings.Builder, p *pattern.Plan) {
	var rows []string
	for _, c := range p.Chains() {
		if c.Alone() {
			continue
		}
		sum := p.Sum(c)
		row := fmt.Sprintf("  %s, %s long", Line(c.Cuts, c.Closed), p.Job.Length.Format(sum.Length))
		if c.Closed {
			row += ", closed round the " + body(p)
		}
		if c.Times > 1 {
			row += fmt.Sprintf("; %d such", c.Times)
		}
		rows = append(rows, row)
	}
	if len(rows) > 0 {
		fmt.Fprintf(b, "\nThese go on from repeat to repeat, and are cut as one line without lifting the wheel:\n%s\n", strings.Join(rows, "\n"))
	}
}
