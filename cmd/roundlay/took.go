package main

import (
	"fmt"
	"strconv"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// learnt is how fast a timed piece was cut: rate is mm of groove a minute, with the wheels
// that have no rate of their own. The length and the minutes are those of their groove;
// aside is what the others take of the time.
type learnt struct{ rate, length, minutes, aside float64 }

// learn works out the rate of the piece that was timed, and sets it in the plans' jobs.
func learn(plans []*pattern.Plan, took string, minutes float64) (learnt, error) {
	p := plans[0]
	l := learnt{length: p.Whole().Length, minutes: minutes}
	own := 0.0
	for _, face := range p.Faces() {
		for _, pass := range face.Order() {
			if wheel := p.Job.Rack[pass.Wheel]; wheel.Rate > 0 {
				own += face.Length(pass)
				l.aside += face.PassMinutes(pass)
			}
		}
	}
	if own > 0 {
		if err := l.without(own, took); err != nil {
			return l, err
		}
	}
	l.rate = l.length / l.minutes
	if !(l.rate >= job.MinRate && l.rate <= job.MaxRate) {
		return l, fmt.Errorf("--took: read %q; accepted for %s of groove: from %s to %s", took, report.Groove(p.Job.Length, l.length),
			report.Minutes(l.aside+l.length/job.MaxRate), report.Minutes(l.aside+l.length/job.MinRate))
	}
	for _, p := range plans {
		p.Job.Shop.Rate = l.rate
	}
	return l, nil
}

// without takes the groove out that is cut with wheels that have rates of their own.
func (l *learnt) without(own float64, took string) error {
	const hair = 1e-6 // mm: rounding
	l.length -= own
	l.minutes -= l.aside
	switch {
	case l.length < hair:
		return fmt.Errorf("--took: read %q; every wheel of this piece has a rate of its own, and by those it takes %s: change them if that isn't so", took, report.Minutes(l.aside))
	case l.minutes <= 0:
		return fmt.Errorf("--took: read %q; accepted: more than %s, which the wheels with rates of their own take of it", took, report.Minutes(l.aside))
	}
	return nil
}

// readMinutes reads how long a piece took, in minutes.
func readMinutes(text string) (float64, error) {
	minutes, err := job.ParseMinutes(text)
	if err != nil || minutes == 0 {
		return 0, fmt.Errorf("read %q; accepted: %s", text, job.TimeForms)
	}
	return minutes, nil
}

// text is the rate as it stands in a job, a thousandth of an inch or a hundredth
// of a millimetre fine.
func (l learnt) text(u geometry.Unit) string { return strconv.Quote(u.FormatDecimal(l.rate)) }

func (l learnt) words(u geometry.Unit) string {
	const fast = 600 // mm a minute: faster than anyone cuts for long
	words := fmt.Sprintf("%s of groove in %s is %s a minute. Under [shop] in the job: rate = %s",
		report.Groove(u, l.length), report.Minutes(l.minutes), u.FormatDecimal(l.rate), l.text(u))
	if l.aside > 0 {
		words = fmt.Sprintf("The wheels with rates of their own take %s of it. On the others, ", report.Minutes(l.aside)) + words
	}
	if l.rate > fast {
		words += "\nThat is fast: if the time was in hours, say so, such as \"2 h\"."
	}
	return words
}

// edits returns the change that puts the rate into a job.
func (l learnt) edits(u geometry.Unit) []job.Edit {
	return []job.Edit{{
		Motif: job.OfShop, Key: "rate", Value: l.text(u),
		Over: "timed: ", Note: "timed: " + report.Groove(u, l.length) + " of groove in " + report.Minutes(l.minutes),
	}}
}
