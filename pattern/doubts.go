package pattern

import (
	"roundlay/pattern/job"
	"roundlay/pattern/slips"
)

// Doubts returns the readings of the plan's blank that don't agree with the other blanks
// of its set.
func (p *Plan) Doubts() []slips.Doubt { return p.doubts }

// doubt sets the doubts of plans of one job.
func doubt(plans ...*Plan) {
	for _, d := range slips.Doubts(plans[0].Job.Blanks) {
		for _, p := range plans {
			if p.Blank == d.Blank {
				p.doubts = append(p.doubts, d)
			}
		}
	}
}

// Doubted returns a job's key for a reading in doubt.
func Doubted(j *job.Job, d slips.Doubt) string {
	blank := blankKey(j, d.Blank)
	station := blank + "." + job.Item("station", d.Station)
	switch d.Of {
	case slips.OfFloor:
		return blank + ".floor"
	case slips.OfHeight:
		return station + ".height"
	case slips.OfWall:
		return station + ".wall"
	}
	// Where the job gives the girth, the width comes from it.
	if j.Given(station + ".around") {
		return station + ".around"
	}
	return station + ".across"
}
