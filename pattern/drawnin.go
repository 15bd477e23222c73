package pattern

import (
	"math"

	"roundlay/pattern/job"
)

// maxDrawnIn is the largest share of its height by which a band is shortened so that its
// paper is one piece.
const maxDrawnIn = 0.1

// DrawnIn returns the plan's band, shortened at the foot or at the top by as little as
// makes its paper one piece, in steps of the calipers. ok is false where the paper is one
// piece already, where the job says what the paper spans, where the job has other blanks
// with the same band, and where no such band is found.
func (p *Plan) DrawnIn() (band job.Band, ok bool) {
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
