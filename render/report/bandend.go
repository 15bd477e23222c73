package report

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// lowBand says which motif ends a blank's own band, where it loses more than half of the
// height between the margins to that: the motif's depth may be a slip. Of a set, the set says
// what ends its band.
func lowBand(p *pattern.Plan) []string {
	const much = 0.5 // of the height, of our own choosing
	j, u := p.Job, p.Job.Length
	end, chosen := p.Ending()
	rim := p.Blank.Height() - j.Limits.Rim
	if !chosen || len(j.Blanks) > 1 || end.By != pattern.ByWall || rim-p.Band.Top < much*(rim-p.Band.Foot) {
		return nil
	}
	m := j.Motifs[end.Motif]
	depth := m.Deepest()
	words := fmt.Sprintf("motif %d (%s), %s deep%s, ends the band %s above the table: higher up the wall is too thin for it.",
		end.Motif+1, m.Called(), u.FormatChosen(depth), deepestPart(m), u.Format(p.Band.Top))
	thickest := 0.0
	for _, s := range p.Blank.Stations {
		thickest = max(thickest, s.Wall)
	}
	if depth > thickest {
		words += fmt.Sprintf(" %s is deeper than the thickest wall, %s: is the depth a slip?", u.FormatChosen(depth), u.FormatChosen(thickest))
	}
	return []string{words}
}

// deepestPart names the part of a motif that is cut deepest, where it has that depth for
// itself.
func deepestPart(m job.Motif) string {
	for _, part := range m.Parts {
		if part.Depth != nil && *part.Depth == m.Deepest() {
			return " in its " + part.Name
		}
	}
	return ""
}
