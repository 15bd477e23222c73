package pattern

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// A flat ring on a plain taper leaves least under its upper edge, where the wall is
// thinnest, and not under its own line.
//
// The outside goes from 33 to 40 mm of radius in 110 mm, the wall from 8 to 1.6 mm:
// 6.4 mm less over a slant of √(110² + 7²) = 110.22 mm, so 0.05806 mm for each mm of
// it. The ring's line lies 100 mm up, 100.2 mm along the slant, where the wall is
// 2.182 mm; its upper edge, 6 mm on, has 1.833 mm. Level, the wheel goes round the
// glass with its edge along the slant, 1 mm deep all across: 0.833 mm are left, square
// to an inside that leans to it by 0.05806: 0.833 / √(1 + 0.05806²) = 0.832 mm.
func TestBroadRingLeavesLeastAtItsEdge(t *testing.T) {
	b := blank(t, glass.Station{Height: 0, Radius: 33, Wall: 8}, glass.Station{Height: 110, Radius: 40, Wall: 1.6})
	ring := motif(t, "ring", motifs.Values{"rings": 1, "lines": 1}, depth(1), size(1, 0.01), at(0, 0.5))
	j := jobOn(b, 4, ring)
	j.Layout.Band = &job.Band{Foot: 95, Top: 105}
	j.Rack = []groove.Wheel{{Name: "flat", Edge: groove.Flat, Radius: 30, Thick: 12}}
	j.Motifs[0].Wheel = 0
	for _, c := range laid(t, j).Cuts {
		if math.Abs(c.Left-0.832) > 0.01 {
			t.Errorf("cut %d leaves %.4f mm, by hand 0.832", c.ID, c.Left)
		}
		if c.Remains.Height < 105 {
			t.Errorf("least is left %.2f mm up, by hand at the upper edge, 106 mm", c.Remains.Height)
		}
	}
}

// What is listed of a cut's edges, its tips included, is its footprint: an askew
// touch of a flat wheel, whose blunt ends reach beyond its line to either side.
func TestEdgesAreTheFootprint(t *testing.T) {
	b := blank(t, glass.Station{Height: 0, Radius: 36, Wall: 7}, glass.Station{Height: 100, Radius: 44, Wall: 7})
	bar := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, depth(1.5), size(0.2, 0.16), at(0, 0.5), turn(40))
	j := jobOn(b, 4, bar)
	j.Rack = []groove.Wheel{{Name: "flat", Edge: groove.Flat, Radius: 50, Thick: 8}}
	j.Motifs[0].Wheel = 0
	c := laid(t, j).Cuts[0]
	if len(c.Tips()[0]) == 0 || len(c.Tips()[1]) == 0 {
		t.Fatal("its blunt ends are not listed")
	}
	var left, right []geometry.Point
	add := func(s groove.Sample) { left, right = append(left, s.LeftEdge), append(right, s.RightEdge) }
	for i := len(c.Tips()[0]) - 1; i >= 0; i-- {
		add(c.Tips()[0][i])
	}
	for _, s := range c.Samples {
		add(s)
	}
	for _, s := range c.Tips()[1] {
		add(s)
	}
	for i := len(right) - 1; i >= 0; i-- {
		left = append(left, right[i])
	}
	listed := geometry.NewOutline(left)
	worst := 0.0
	for _, p := range c.Outlines[0].Points {
		worst = max(worst, listed.DistanceTo(p, 100))
	}
	whole := c.Outlines[0]
	for _, p := range left {
		worst = max(worst, whole.DistanceTo(p, 100))
	}
	if worst > 0.05 {
		t.Errorf("its footprint leaves the edges listed by %.3f mm", worst)
	}
	t.Logf("at the worst %.4f mm", worst)
}
