package bench

import (
	"roundlay/pattern"
	"roundlay/render/report"
)

// timed reports whether it is known how long all of the glass takes.
func (g glass) timed() bool { return report.Rates(g.plan, g.plan.Times()) != "" }

// rates says what the times of a sheet are; "" where there are none.
func (g glass) rates() string {
	t := g.plan.Times()
	said := report.Rates(g.plan, t)
	switch {
	case said == "":
		return ""
	case t.OwnRates:
		return " Times at " + said + ", without the changes of wheel."
	}
	return " Times at your rate of " + said + ", without the changes of wheel."
}

// quote sets on one page what some pieces take and cost, if their job gives anything for that.
func (f format) quote(plans []*pattern.Plan) []block {
	said := report.Quote(plans)
	if len(said) == 0 {
		return nil
	}
	blocks := f.heading(report.QuoteHeading(plans), f.column())
	for _, words := range said {
		blocks = append(blocks, f.paragraph(words, f.column())...)
	}
	return []block{stack(blocks)}
}

// membersOf returns the plans of standings.
func membersOf(standings []pattern.Standing) []*pattern.Plan {
	plans := make([]*pattern.Plan, len(standings))
	for i, s := range standings {
		plans[i] = s.Member.Plan
	}
	return plans
}
