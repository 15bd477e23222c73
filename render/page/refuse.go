package page

import (
	"fmt"
	"math"

	"roundlay/geometry"
)

// PaperError is why a job can't go on some paper: what was asked for, what is wrong
// with it, and what would be accepted.
type PaperError struct{ words string }

func (e *PaperError) Error() string { return e.words }

// Refuse returns the error of paper that can't be used: "read PAPER, which ...;
// accepted: ...".
func (o Options) Refuse(which, accepted string) error {
	return &PaperError{fmt.Sprintf("read %q%s; accepted: %s", o.Paper.Name, which, accepted)}
}

// RoomForBars returns an error if on a page of some paper the bars would reach
// into its margin.
func (o Options) RoomForBars(f Format, unit geometry.Unit) error {
	if least := BarsReach(unit) + 2*f.Margin; min(f.Width, f.Height) < least {
		return o.Refuse(fmt.Sprintf(", which with a margin of %s has no room for the check bars", unit.Format(o.Margin)),
			fmt.Sprintf("%s or more each way, or a smaller margin", unit.Format(math.Ceil(least))))
	}
	return nil
}

// BarsReach returns how far the bars reach into the page, ahead of the margin.
func BarsReach(unit geometry.Unit) float64 {
	longest := 0.0
	for _, b := range CheckBars(unit) {
		longest = max(longest, b.Length)
	}
	return BarDepth + 1 + upStart + longest + barWidth
}
