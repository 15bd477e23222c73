package report

import (
	"fmt"

	"roundlay/pattern"
)

// maxTold is how many lettered findings are told on paper: more than any job has
// that is near to being cut, and as many as a page has room for.
const maxTold = 60

// Listed returns the lettered findings that a page tells and rings, the first of
// them all, and what it says of the others, "" if there are none.
func Listed(p *pattern.Plan) (told []pattern.Group, more string) {
	groups := p.Groups()
	if len(groups) <= maxTold {
		return groups, ""
	}
	left := len(groups) - maxTold
	return groups[:maxTold], fmt.Sprintf("And %d more, from %s on: roundlay check tells them.", left, groups[maxTold].Letter)
}
