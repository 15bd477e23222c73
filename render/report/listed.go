package report

import (
	"fmt"

	"roundlay/pattern"
)

// maxTold is how many lettered findings are listed on paper. A page has room for
// no more, and a job that is near to being cut has fewer.
const maxTold = 60

// Listed returns the lettered findings that a page lists and rings, which are the
// first maxTold, and a sentence about the rest, "" if there are none.
func Listed(p *pattern.Plan) (listed []pattern.Group, more string) {
	groups := p.Groups()
	if len(groups) <= maxTold {
		return groups, ""
	}
	left := len(groups) - maxTold
	return groups[:maxTold], fmt.Sprintf("And %d more, from %s on: roundlay check lists them.", left, groups[maxTold].Letter)
}
