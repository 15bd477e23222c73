package desk

import (
	"math"
	"strconv"

	"roundlay/pattern/job"
)

// What a drag comes to is kept to what a job may have, and rounded to what a person would
// write.

// within returns a measure no less than the least and no more than the most.
func within(m job.Measure, least, most float64) job.Measure {
	m.Value = min(max(m.Value, least), most)
	return m
}

// round is how long the band is all the way round: at its foot or, on a base, at its outer edge.
func (h *hold) round() float64 {
	at := h.plan.Band.Foot
	if h.plan.Face == job.Base {
		at = h.plan.Band.Top
	}
	return 2 * math.Pi * h.plan.Surface.RadiusAt(at)
}

// across keeps a motif's place across within its repeat. Where it stands on each repeat, one
// that is dragged over the edge is the next one's copy coming in at the other side.
func (h *hold) across(x job.Measure) job.Measure {
	m := h.job.Motifs[h.motif]
	if !x.Fraction {
		return within(x, -h.round()/2, h.round()/2)
	}
	if m.On == job.Each && m.Inside == 0 {
		x.Value = math.Remainder(x.Value, 1)
	}
	return within(x, -0.5, 0.5)
}

// up keeps a motif's place within the band or, given as a length, on the glass.
func (h *hold) up(y job.Measure) job.Measure {
	if y.Fraction {
		return within(y, 0, 1)
	}
	s := &h.plan.Surface
	return within(y, 0, s.Length()-s.AlongAt(h.plan.Band.Foot))
}

// minSide is the smallest that a side given as a length is dragged to, in mm.
const minSide = 0.5

func (h *hold) wide(width job.Measure) job.Measure {
	if width.Fraction {
		return within(width, job.MinShare, job.MaxWide)
	}
	return within(width, minSide, h.round())
}

func (h *hold) high(height job.Measure) job.Measure {
	if height.Fraction {
		return within(height, job.MinShare, 1)
	}
	return within(height, minSide, h.plan.Surface.Length())
}

// written writes a measure as its owner would: a share of something to the thousandth, or
// finer where that is more than a tenth of a millimetre; a length as calipers show it.
func (h *hold) written(m job.Measure, whole float64) string {
	u := h.job.Length
	switch {
	case !m.Fraction && h.fine:
		return u.FormatDecimal(m.Value)
	case !m.Fraction:
		return u.Format(m.Value)
	}
	const usual, most, fine = 3, 6, 0.1 // digits, and mm
	digits := usual
	for digits < most && whole*math.Pow10(-digits) > fine {
		digits++
	}
	if h.fine {
		digits++
	}
	return decimal(m.Value, digits)
}

// decimal writes a number with up to so many decimals.
func decimal(x float64, digits int) string {
	parts := math.Pow10(digits)
	return strconv.FormatFloat(math.Round(x*parts)/parts+0, 'f', -1, 64)
}
