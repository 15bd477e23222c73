package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// learnt is how fast a timed piece was cut: rate is mm of groove a minute, length mm in
// all.
type learnt struct{ rate, length, minutes float64 }

// learn works out the rate of the piece that was timed, and sets it in the plans' jobs.
func learn(plans []*pattern.Plan, took string, minutes float64) (learnt, error) {
	length := plans[0].Whole().Length
	l := learnt{length / minutes, length, minutes}
	if !(l.rate >= job.MinRate && l.rate <= job.MaxRate) {
		return l, fmt.Errorf("--took: read %q; accepted for %s of groove: from %s to %s", took, report.Groove(plans[0].Job.Length, length),
			report.Minutes(length/job.MaxRate), report.Minutes(length/job.MinRate))
	}
	for _, p := range plans {
		p.Job.Shop.Rate = l.rate
	}
	return l, nil
}

// readMinutes reads a time in minutes: 95, "95 min", "1 h 35 min", "1 1/2 h" or
// 1:35.
func readMinutes(text string) (float64, error) {
	wrong := fmt.Errorf("read %q; accepted: minutes, such as 95 or \"95 min\", or hours too, such as 1:35, \"1 h 35 min\" or \"1 1/2 h\"", text)
	if hours, minutes, clock := strings.Cut(strings.TrimSpace(text), ":"); clock {
		h, err1 := strconv.ParseUint(hours, 10, 8)
		m, err2 := strconv.ParseUint(minutes, 10, 8)
		if err1 != nil || err2 != nil || len(minutes) != 2 || m > 59 || h+m == 0 {
			return 0, wrong
		}
		return float64(60*h + m), nil
	}
	parts := timeForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if parts == nil || parts[1]+parts[2] == "" {
		return 0, wrong
	}
	// Numbers are read as lengths are: they may be mixed with a fraction.
	total := 0.0
	for i, minutes := range []float64{60, 1} {
		if parts[i+1] == "" {
			continue
		}
		n, err := geometry.Millimetre.Parse(strings.Replace(parts[i+1], ",", ".", 1))
		if err != nil || n < 0 || i == 1 && n >= 60 && parts[1] != "" {
			return 0, wrong
		}
		total += n * minutes
	}
	if !(total > 0 && total < 1e5) {
		return 0, wrong
	}
	return total, nil
}

// timeForm is hours, minutes, or both, each with a word for its unit. Minutes alone
// need none.
var timeForm = regexp.MustCompile(`^(?:([0-9][0-9 ./,¼½¾-]*?)\s*(?:hours?|hrs?|h)\b?)?\s*(?:([0-9][0-9 ./,¼½¾-]*?)\s*(?:minutes?|mins?|m)?)?$`)

// text is the rate as it stands in a job, a thousandth of an inch or a hundredth
// of a millimetre fine.
func (l learnt) text(u geometry.Unit) string { return strconv.Quote(u.FormatDecimal(l.rate)) }

func (l learnt) words(u geometry.Unit) string {
	const fast = 600 // mm a minute: faster than anyone cuts for long
	words := fmt.Sprintf("%s of groove in %s is %s a minute. Under [shop] in the job: rate = %s",
		report.Groove(u, l.length), report.Minutes(l.minutes), u.FormatDecimal(l.rate), l.text(u))
	if l.rate > fast {
		words += "\nThat is fast: if the time was in hours, say so, such as \"2 h\"."
	}
	return words
}

// into returns a job file with the rate in it.
func (l learnt) into(data []byte, j *job.Job) ([]byte, error) {
	u := j.Length
	text, err := job.Rewrite(data, []job.Edit{{Motif: job.OfShop, Key: "rate", Value: l.text(u),
		Over: "timed: ", Note: "timed: " + report.Groove(u, l.length) + " of groove in " + report.Minutes(l.minutes)}})
	if err != nil {
		return nil, err
	}
	_, err = j.ReadAgain("the changed job", text)
	return text, err
}
