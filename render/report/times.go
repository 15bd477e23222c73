package report

import (
	"fmt"
	"strings"

	"roundlay/geometry"
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

// WearWords says how fast a wheel wears and when to measure it again; "" where the job doesn't
// say how fast it wears.
func WearWords(p *pattern.Plan, pass pattern.Pass) string {
	u := p.Job.Length
	w, ok := p.Wearing(pass, u.Step())
	if !ok {
		return ""
	}
	if w.Cut == nil {
		return fmt.Sprintf("Wear: half the wheel can wear away before a mark comes out %s shorter.", u.Format(u.Step()))
	}
	const many = 1000 // pieces
	after := "within this piece, after " + longGroove(u, w.Groove)
	switch {
	case w.Pieces >= many:
		return fmt.Sprintf("Wear: it takes over %d pieces like this until a mark comes out %s shorter.", many, u.Format(u.Step()))
	case w.Pieces > 0:
		after = fmt.Sprintf("after %s like this, which is %s", count(w.Pieces, "piece"), longGroove(u, w.Groove))
	}
	words := fmt.Sprintf("Wear: measure it again %s. From %s it is then down to %s across, and a mark as deep as cut %d comes out %s shorter",
		after, u.FormatChosen(2*p.Job.Rack[pass.Wheel].Radius), u.FormatDecimal(w.Across), w.Cut.ID, u.Format(w.Shorter))
	if w.Deeper > 0 {
		words += fmt.Sprintf(", or made as long %s deeper", fine(u, w.Deeper))
	}
	return words + "."
}

// longGroove writes a length of groove as a wheel's wear is given: in metres or feet.
func longGroove(u geometry.Unit, mm float64) string {
	if u == geometry.Millimetre {
		return fmt.Sprintf("%.1f m of groove", mm/1000)
	}
	return fmt.Sprintf("%.1f ft of groove", mm/(12*geometry.MillimetresPerInch))
}

// fine writes a small length with one decimal more than FormatDecimal.
func fine(u geometry.Unit, mm float64) string {
	digits := 3
	if u == geometry.Inch {
		digits = 4
	}
	return geometry.Decimal(mm/u.Millimetres(), digits) + " " + u.String()
}
