package pattern

import (
	"slices"
	"testing"
)

// Four repeats of a bar of 30 mm with the mitre and of one of 40 mm with the fine wheel: 120
// and 160 mm of groove.
func TestTimes(t *testing.T) {
	j := jobOn(straight(t), 4,
		bar(t, 0, 30, 30, depth(0.5), with(mitre)),
		bar(t, 8, 30, 40, depth(0.5), with(fine)),
	)
	p := laid(t, j)
	if got := p.Times(); got.Cutting != 0 || !slices.Equal(got.Wheels, []int{mitre, fine}) || !slices.Equal(got.Unknown, []int{mitre, fine}) || got.Known() {
		t.Errorf("without a rate: %+v", got)
	}
	// One wheel's rate, 160 mm at 20 mm a minute: 8 minutes; the other's isn't known.
	j.Rack[fine].Rate = 20
	if got := p.Times(); !near(got.Cutting, 8, 1e-9) || !slices.Equal(got.Unknown, []int{mitre}) || !got.OwnRates {
		t.Errorf("with one wheel's: %+v", got)
	}
	// The shop's rate is for the other: 120 mm at 30 mm a minute are 4 minutes more.
	j.Shop.Rate = 30
	if got := p.Times(); !near(got.Cutting, 12, 1e-9) || !got.Known() {
		t.Errorf("with the shop's too: %+v", got)
	}
	sum := 0.0
	for _, pass := range p.Order() {
		sum += p.PassMinutes(pass)
	}
	if !near(sum, 12, 1e-9) {
		t.Errorf("wheel by wheel %g minutes", sum)
	}
	// A wheel of the rack that nothing is cut with counts for nothing.
	j.Rack[olive].Rate = 1
	if got := p.Times(); len(got.Wheels) != 2 || !near(got.Cutting, 12, 1e-9) {
		t.Errorf("with a rate of an idle wheel: %+v", got)
	}
}
