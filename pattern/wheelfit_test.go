package pattern

import (
	"math"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// sole returns the only finding of a plan, which is of the given kind.
func sole(t *testing.T, p *Plan, kind Kind) Finding {
	t.Helper()
	if len(p.Findings) != 1 || p.Findings[0].Kind != kind {
		t.Fatalf("found %+v, and not one %v", p.Findings, kind)
	}
	return p.Findings[0]
}

// TestBuried buries the shoulders of a right-angled mitre 6 mm thick. Its edge
// is 3 mm wide to each side of its point, and so 3 mm high.
//
// Along a level cut the glass runs straight to both sides: 3 mm is the most.
// Beside an upright one it falls away from the shoulders, on a radius of 40 mm by
// 40 (1 - cos(3/40)) = 0.1124 mm: 3.1124 mm is the most.
func TestBuried(t *testing.T) {
	thick := blank(t, glass.Station{Height: 0, Radius: 40, Wall: 8}, glass.Station{Height: 100, Radius: 40, Wall: 8})
	for _, c := range []struct {
		turn, depth float64
		most        float64 // 0 where nothing is buried
	}{
		{turn: 90, depth: 3.5, most: 3},
		{turn: 90, depth: 3.05, most: 3},
		{turn: 90, depth: 2.95},
		{turn: 0, depth: 3.5, most: 3.1124},
		{turn: 0, depth: 3.16, most: 3.1124},
		{turn: 0, depth: 3.06},
	} {
		// The longest tails, of the upright cuts, are 12.8 mm: half a chord 3.5 mm
		// inside a circle of radius 25.
		j := jobOn(thick, 4, bar(t, 0, 30, 40, turn(c.turn), depth(c.depth), with(fine)))
		p := planned(t, j)
		if c.most == 0 {
			if len(p.Findings) > 0 {
				t.Errorf("turned %g°, %g mm deep: found %+v", c.turn, c.depth, p.Findings)
			}
			continue
		}
		f := sole(t, p, Buried)
		if !near(f.Measured, c.depth, 1e-9) || !near(f.Wanted, c.most, 1e-4) || !near(f.Height, 50, 0.5) || f.Cuts[0] != 1 {
			t.Errorf("turned %g°, %g mm deep: found %+v, by hand %g is the most", c.turn, c.depth, f, c.most)
		}
	}
}

// TestTight carries a wheel along an arc, a single swag that sags a twentieth of
// its width w: its radius is w (1 + 4/20²) / (8/20) = 2.525 w, and at its ends it
// climbs by 2 atan(2/20), 11.42° from level.
//
// Wheel and glass part along the cut at the rate of 1/R + κ. On a radius of 40 mm
// κ is cos² 11.42° / 40 = 0.02402 /mm at the ends, where it is least; for R = 50 mm
// the rate is 0.04402 /mm. So 0.5 mm deep the contact reaches a² = 2 × 0.5 / 0.04402
// = 22.717 mm² ahead and behind.
//
// On a radius of 30 mm its ends deviate by a²/60 = 0.3786 mm; on one of 60 mm by
// half of that. The arc is level where it is cut to its full depth, so that a
// right-angled mitre is as wide to each side as deep, and the ends of its contact,
// where it is shallow, add nothing to that as long as the bend is less than the
// rate. Half of a half width of 0.5 mm is the most.
func TestTight(t *testing.T) {
	arc := func(radius float64) *job.Job {
		swag := motif(t, "swag", motifs.Values{"rows": 1, "sag": 0.05})
		swag.Width, swag.Height = mm(radius/2.525), mm(20)
		j := jobOn(straight(t), 4, swag)
		j.Rack = j.Rack[:2]
		j.Rack[fine].Radius = 20
		return j
	}
	if found := planned(t, arc(60)).Findings; len(found) > 0 {
		t.Errorf("on a radius of 60 mm found %+v", found)
	}

	j := arc(30)
	p := planned(t, j)
	f := sole(t, p, Tight)
	if !near(f.Measured, 0.3786, 1e-3) || !near(f.Wanted, 0.25, 1e-3) || f.Cuts[0] != 1 {
		t.Errorf("found %+v, by hand 0.3786 mm where 0.25 mm is the most", f)
	}
	// An end of the arc: half of 30/2.525 mm, on a radius of 40 mm, to one side.
	if side := math.Abs(f.Theta); !near(side, 15/2.525/40, 1e-3) {
		t.Errorf("it is worst at %g rad, by hand at ±0.1485", f.Theta)
	}
	// The rate at which 0.25 mm is the stand-off is 0.5/30/0.25 = 0.06667 /mm: that of
	// a wheel of radius 1/(0.06667 - 0.02402) = 23.45 mm. Under this wheel a curve of
	// radius 0.5/0.04402/0.25 = 45.43 mm would do.
	c := p.Cuts[0]
	if r := c.WheelFor(j.Rack[mitre], MaxSweep); !near(r, 23.45, 0.1) {
		t.Errorf("a wheel of radius %g mm would do, by hand 23.45", r)
	}
	if r := c.CurveFor(MaxSweep); !near(r, 45.43, 0.1) {
		t.Errorf("a curve of radius %g mm would do, by hand 45.43", r)
	}
	wider := j.Clone()
	wider.Rack[fine].Radius = 25 // 0.5/30 / (1/25 + 0.02402) = 0.260 mm
	wider.Motifs[0].Wheel = fine
	if f := sole(t, planned(t, wider), Tight); !near(f.Measured, 0.2603, 1e-3) {
		t.Errorf("under a wheel 50 mm across found %+v, by hand 0.2603 mm", f)
	}
}

// TestUneven measures a glass that bulges in its middle.
//
// Through three stations 50 mm apart, of radii 40, 40 + B and 40 mm, the profile
// is a parabola: its slope is 0 at the middle one and, by the rule of three
// points, twice that of the chord at the others. A parabola B (u/50)² leaves the
// line of least squares by most at the ends: over a length of L, its mean is
// B (L/100)²/3, its end B (L/100)², and so it leaves it by 2/3 B (L/100)². In the band,
// 60 mm long, that is 0.24 B. 257 places stand for all: with their ends counted in
// full their mean is greater by 1/128 of itself, and the misfit less by 1/256.
//
// Paper in gores follows that, so nothing is found.
func TestUneven(t *testing.T) {
	bulging := func(bulge float64) *job.Job {
		return jobOn(blankOf(t, 40, 40+bulge, 40), 4, bar(t, 0, 22, 30))
	}
	for _, bulge := range []float64{0.5, 1} {
		p := planned(t, bulging(bulge))
		if want := 0.24 * (1 - 1./256) * bulge; !near(p.WorstRadiusError, want, 1e-4) {
			t.Errorf("a bulge of %g mm leaves the cone by %g mm, by hand %g", bulge, p.WorstRadiusError, want)
		}
		if len(p.Findings) > 0 || p.Outside().Curved() != (bulge == 1) { // past 0.15 mm it is curved
			t.Errorf("a bulge of %g mm: curved %v, found %+v", bulge, p.Outside().Curved(), p.Findings)
		}
	}
}
