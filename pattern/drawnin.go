package pattern

import (
	"math"

	"roundlay/pattern/job"
)

// maxDrawnIn is the share of a band by which it is drawn in, at the most, to
// come onto a cone.
const maxDrawnIn = 0.1

// DrawnIn returns the band nearest to the plan's, drawn in at its foot or at its
// top to the caliper's step, whose paper would be one piece. There is none where
// it is one piece already, where the job says what the paper spans, and where the
// band would be that of other glasses too.
func (p *Plan) DrawnIn() (job.Band, bool) {
	if p.WorstRadiusError <= maxMisfit || p.Blank.Paper != nil || len(p.Job.Blanks) > 1 {
		return job.Band{}, false
	}
	step, profile := p.Job.Length.Step(), p.Blank.Profile()
	foot, top := -floor(-p.Band.Foot, step), floor(p.Band.Top, step)
	most := maxDrawnIn * (p.Band.Top - p.Band.Foot)
	for n := 0.0; n*step <= most && top-foot-n*step >= MinBand; n++ {
		for _, band := range []job.Band{{Foot: foot + n*step, Top: top}, {Foot: foot, Top: top - n*step}} {
			if _, misfit := profile.FitCone(band.Foot, band.Top); misfit <= maxMisfit {
				return band, true
			}
		}
	}
	return job.Band{}, false
}

// floor returns the greatest multiple of a step that is not above a length.
func floor(length, step float64) float64 { return math.Floor(length/step+1e-9) * step }
