package pattern

import (
	"slices"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// withRays has three upright bars of 30 mm on its side, 90 mm of groove, and sixteen rays of
// 20 mm on its base, 320 mm, with the given wheel.
func withRays(t *testing.T, wheel int) *job.Job {
	t.Helper()
	return withBase(t, 16, &job.Band{Foot: 2, Top: 31}, ray(t, 2, 8, 28, depth(0.3), with(wheel)))
}

// The side's 90 mm at 30 mm a minute are 3 minutes, the base's 320 mm at 40 are 8. A piece
// takes both: 11 minutes with two wheels, at 60 an hour 11 in money.
func TestBaseIsPaidFor(t *testing.T) {
	j := withRays(t, fine)
	j.Shop.Rate, j.Rack[fine].Rate = 30, 40
	p := planned(t, j)
	if got := p.WholeTimes(); !near(got.Cutting, 11, 1e-9) || !slices.Equal(got.Wheels, []int{mitre, fine}) || !got.Known() {
		t.Errorf("all faces: %+v", got)
	}
	if side, base := p.Times(), p.Base.Times(); !near(side.Cutting, 3, 1e-9) || !near(base.Cutting, 8, 1e-9) {
		t.Errorf("the side %+v, the base %+v", side, base)
	}
	if sum := p.Whole(); sum.Cuts != 19 || !near(sum.Length, 410, 1e-9) {
		t.Errorf("%+v", sum)
	}
	j.Shop.Hour = 60
	q, ok := NewQuote([]*Plan{p})
	if !ok || q.Wheels != 2 || !near(q.Cutting, 11, 1e-9) || !near(q.Price.Most, 11, 1e-9) {
		t.Errorf("%+v, %t", q, ok)
	}

	// Where the rate of the base's wheel alone isn't known, there is no price.
	j.Shop.Rate, j.Rack[mitre].Rate, j.Rack[fine].Rate = 0, 30, 0
	if got := p.WholeTimes(); !slices.Equal(got.Unknown, []int{fine}) || !near(got.Cutting, 3, 1e-9) {
		t.Errorf("without the base's rate: %+v", got)
	}
	if q, ok := NewQuote([]*Plan{p}); ok {
		t.Errorf("a quote without the base's rate: %+v", q)
	}
}

// A wheel that cuts on both faces loses what 410 mm of groove take off it, at 1 mm in 10 m
// 0.041 mm a piece, whichever face is asked.
func TestBaseWearsTheWheel(t *testing.T) {
	j := withRays(t, mitre)
	j.Rack[mitre].Wear = groove.Wear{Lost: 1, Groove: 10000}
	p := planned(t, j)
	for _, face := range p.Faces() {
		w, ok := face.Wearing(face.Order()[0], 0.1)
		if !ok || !near(w.PerPiece, 0.041, 1e-9) {
			t.Errorf("%v: %+v, %t", face.Face, w, ok)
		}
		if whole := int(w.Groove / 410); w.Pieces != whole {
			t.Errorf("%v: %d pieces in %g mm of groove", face.Face, w.Pieces, w.Groove)
		}
	}
}

// A mitre that is rolled turns about its tip, so its glass left is the floor less the depth as
// it is of an even cut, and one whose depth swells has its full depth in the middle. Both are
// found where the hand cuts, too thin where that is so.
func TestBaseLeftByHand(t *testing.T) {
	for name, hand := range map[string]func(*job.Motif){"rolled": rocked(0, 12), "swelled": swelled(0.5, 1, 0.5)} {
		j := withBase(t, 4, &job.Band{Foot: 2, Top: 32}, ray(t, 2, 8, 28, depth(1), with(fine), hand))
		p := planned(t, j).Base
		if got := p.Cuts[0].Left; !near(got, 9-1, 2e-3) {
			t.Errorf("%s: %.4f left, by hand 8", name, got)
		}
		j.Limits.Leave = 8.5
		p = planned(t, j).Base
		i := slices.IndexFunc(p.Findings, func(f Finding) bool { return f.Kind == Thin })
		if i < 0 || !near(p.Findings[i].Measured, 8, 2e-3) || !(p.Findings[i].Height > 8 && p.Findings[i].Height < 28) {
			t.Errorf("%s: %+v", name, p.Findings)
		}
	}
	// Rolled over the punty mark's hollow, 20 mm across and 2 mm deep, it leaves less there.
	j := withBase(t, 4, &job.Band{Foot: 2, Top: 32}, ray(t, 2, 3, 18, depth(1), with(fine), rocked(0, 12)))
	j.Blanks[0].Hollow = glass.Hollow{Across: 20, Depth: 2}
	if got := planned(t, j).Base.Cuts[0].Left; !near(got, 9-1-2, 2e-3) {
		t.Errorf("over the hollow: %.4f left, by hand 6", got)
	}
}
