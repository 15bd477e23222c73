package main

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// timed takes in how long a piece took, if it is told: the plans' jobs get the
// rate. It returns what there is to say of it, and the job file with the rate, if
// that is to be written.
func timed(plans []*pattern.Plan, data []byte, took, write string) (docs []document, said string, err error) {
	if took == "" && write != "" {
		return nil, "", errors.New("--write saves the rate that --took learns: give --took too")
	}
	if took == "" {
		return nil, "", nil
	}
	l, err := learn(plans, took)
	if err != nil {
		return nil, "", err
	}
	for _, p := range plans {
		p.Job.Shop.Rate = l.rate
	}
	u := plans[0].Job.Length
	if write == "" {
		return nil, l.words(u), nil
	}
	text, err := l.into(data, u)
	return []document{{write, text}}, l.words(u), err
}

// learnt is how fast a timed piece was cut: mm of groove, in all and a minute.
type learnt struct{ rate, length, minutes float64 }

// learn works out the rate of the piece that was timed.
func learn(plans []*pattern.Plan, took string) (learnt, error) {
	minutes, err := readMinutes(took)
	if err != nil {
		return learnt{}, fmt.Errorf("--took: %w", err)
	}
	if len(plans) > 1 {
		return learnt{}, errors.New("--took is the time of one piece, and the job has several blanks: say with --blank which it was")
	}
	length := plans[0].Totals().Length
	l := learnt{length / minutes, length, minutes}
	if !(l.rate >= job.LeastRate && l.rate <= job.MostRate) {
		return l, fmt.Errorf("--took: read %q; accepted for %s of groove: from %s to %s", took, report.Groove(plans[0].Job.Length, length),
			report.Minutes(length/job.MostRate), report.Minutes(length/job.LeastRate))
	}
	return l, nil
}

// readMinutes reads a time in minutes: 95, "95 min", "1 h 35 min" or 1:35.
func readMinutes(text string) (float64, error) {
	wrong := fmt.Errorf("read %q; accepted: minutes, such as 95, or hours too, such as 1:35 or \"1 h 35 min\"", text)
	number := func(digits string) (float64, bool) {
		n, err := strconv.ParseFloat(strings.TrimSpace(digits), 64)
		return n, err == nil && n >= 0 && n < 1e4
	}
	rest, hours, ok := strings.TrimSpace(strings.ToLower(text)), 0.0, true
	if whole, minutes, split := strings.Cut(rest, ":"); split {
		if hours, ok = number(whole); !ok || len(minutes) != 2 {
			return 0, wrong
		}
		rest = minutes
	} else if whole, minutes, split := strings.Cut(rest, "h"); split {
		if hours, ok = number(whole); !ok {
			return 0, wrong
		}
		if rest = strings.TrimSpace(minutes); rest == "" {
			rest = "0"
		}
	}
	rest = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(rest, "minutes"), "min"))
	minutes, ok := number(rest)
	if total := 60*hours + minutes; ok && total > 0 && !math.IsInf(total, 0) {
		return total, nil
	}
	return 0, wrong
}

// text is the rate as it stands in a job, a thousandth of an inch or a hundredth
// of a millimetre fine.
func (l learnt) text(u geometry.Unit) string { return strconv.Quote(u.Fine(l.rate)) }

func (l learnt) words(u geometry.Unit) string {
	return fmt.Sprintf("%s of groove in %s is %s a minute. Under [shop] in the job: rate = %s",
		report.Groove(u, l.length), report.Minutes(l.minutes), u.Fine(l.rate), l.text(u))
}

// into returns a job file with the rate in it.
func (l learnt) into(data []byte, u geometry.Unit) ([]byte, error) {
	text, err := job.Change(data, []job.Edit{{Motif: job.OfShop, Key: "rate", Value: l.text(u),
		Note: "timed: " + report.Groove(u, l.length) + " of groove in " + report.Minutes(l.minutes)}})
	if err != nil {
		return nil, err
	}
	_, err = job.Read("the changed job", text)
	return text, err
}
