package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
)

// CuttingTime says how long the cuts of a plan take and at which rates; "" where that isn't
// known of every wheel.
func CuttingTime(p *pattern.Plan) string {
	t := p.WholeTimes()
	if rates := Rates(p, t); rates != "" {
		return Minutes(t.Cutting) + " at " + rates
	}
	return ""
}

// Rates says at which rates a plan's times are; "" where one isn't known.
func Rates(p *pattern.Plan, t pattern.Times) string {
	switch {
	case t.OwnRates && t.Known():
		return "the rates of your wheels"
	case p.Job.Shop.Rate > 0:
		return p.Job.Length.FormatChosen(p.Job.Shop.Rate) + " a minute"
	}
	return ""
}

// passTime says how long a pass takes, with a comma before it; "" where that isn't known.
func passTime(p *pattern.Plan, pass pattern.Pass) string {
	if p.Rate(pass.Wheel) == 0 {
		return ""
	}
	return ", " + Minutes(p.PassMinutes(pass))
}

// NoRate says of which wheels a job would have to give the rate; "" where none is missing.
func NoRate(p *pattern.Plan) string {
	var names []string
	for _, wheel := range p.WholeTimes().Unknown {
		names = append(names, p.Job.Rack[wheel].Name)
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf("No time or price: it isn't known how fast you cut with %s. Time a piece and give sheet --took, or write rate under [shop] or its [[wheel]].",
		strings.Join(names, ", "))
}
