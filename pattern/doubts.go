package pattern

import (
	"roundlay/pattern/job"
	"roundlay/pattern/slips"
)

// Doubts returns the readings of the plan's blank that the others of its set speak
// against.
func (p *Plan) Doubts() []slips.Doubt { return p.doubts }

// doubt gives plans of one job the readings of their blanks that are in doubt.
func doubt(plans ...*Plan) {
	for _, d := range slips.Doubts(plans[0].Job.Blanks) {
		for _, p := range plans {
			if p.Blank == d.Blank {
				p.doubts = append(p.doubts, d)
			}
		}
	}
}

// Doubted names the key of the job that a reading in doubt stands at.
func (p *Plan) Doubted(d slips.Doubt) string {
	blank := blankKey(p.Job, d.Blank)
	station := blank + "." + job.Item("station", d.Station)
	switch d.Of {
	case slips.OfFloor:
		return blank + ".floor"
	case slips.OfHeight:
		return station + ".height"
	case slips.OfWall:
		return station + ".wall"
	}
	// Of both, the girth gives the width.
	if p.Job.Given(station + ".around") {
		return station + ".around"
	}
	return station + ".across"
}
