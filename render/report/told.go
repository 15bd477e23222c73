package report

import (
	"fmt"

	"roundlay/pattern"
)

// mostTold is how many lettered findings are told on paper: more than any job has
// that is near to being cut, and as many as a page has room for.
const mostTold = 60

// Told returns the lettered findings that a page tells and rings, the first of
// them all, and what it says of the others, "" if there are none.
func Told(p *pattern.Plan) (told []pattern.Group, more string) {
	groups := p.Groups()
	if len(groups) <= mostTold {
		return groups, ""
	}
	left := len(groups) - mostTold
	return groups[:mostTold], fmt.Sprintf("And %d more, from %s on: roundlay check tells them.", left, groups[mostTold].Letter)
}
