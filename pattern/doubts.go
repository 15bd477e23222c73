package pattern

import (
	"roundlay/pattern/job"
	"roundlay/pattern/slips"
)

// Doubts returns the readings of the plan's blank that the others of its set speak
// against.
func (p *Plan) Doubts() []slips.Doubt { return slips.Doubts(p.Blank, p.Job.Blanks) }

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
