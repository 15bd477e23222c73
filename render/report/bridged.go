package report

import (
	"context"
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern"
)

// bridged says how deep a wheel that is too large for a hollow bites, how much glass
// it leaves there, and which wheel would fit.
func bridged(p *pattern.Plan, f pattern.Finding, u geometry.Unit) string {
	c := p.CutOf(f.Cuts[0])
	words := fmt.Sprintf("the wheel is too large for the hollow and rests on two places: asked %s deep, it bites up to %s", u.FormatDecimal(c.Asked), u.FormatDecimal(c.Bridge.Depth))
	if c.Bridge.Depth <= c.Asked {
		words = fmt.Sprintf("the wheel is too large for the hollow and rests on two places: apart from where it stands it bites %s", u.FormatDecimal(c.Bridge.Depth))
	}
	switch left := c.Bridge.Left; {
	case left <= 0:
		words += " and breaks through"
	case !math.IsInf(left, 1):
		words += fmt.Sprintf(" and leaves %s of glass there", u.FormatDecimal(left))
	}
	const least = 2.0                                    // mm: no wheel is smaller
	radius, _ := p.LargestWheel(context.Background(), c) // some hundredths of a second, for one cut
	across := 2 * radius
	if across < least {
		return words + "; no wheel with this edge goes in"
	}
	return words + fmt.Sprintf("; a wheel of up to %s across goes in", u.FormatDown(across))
}
