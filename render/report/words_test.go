package report

import (
	"context"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// What was measured and what was wanted never read alike, in either unit.
func TestMeasured(t *testing.T) {
	const in = geometry.MillimetresPerInch
	two := []int{1, 2}
	for _, c := range []struct {
		unit geometry.Unit
		f    pattern.Finding
		want string
	}{
		{geometry.Inch, pattern.Finding{Kind: pattern.Crowded, Measured: 0.022 * in, Wanted: in / 32}, "land of 0.022 in where 1/32 in is the least"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Crowded, Measured: 0.0307 * in, Wanted: in / 32}, "land of 0.0307 in where 0.0313 in is the least"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Crowded, Wanted: in / 32}, "land of 0.000 in where 1/32 in is the least"},
		// A limit of 0.036 in is nearest to 1/32, which the land is above.
		{geometry.Inch, pattern.Finding{Kind: pattern.Crowded, Measured: 0.034 * in, Wanted: 0.036 * in}, "land of 0.034 in where 0.036 in is the least"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Off, Cuts: two, Measured: 0.0312 * in, Wanted: in / 32}, "land of 0.03120 in where 0.03125 in is the least"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Off, Cuts: two[:1], Measured: 3.63 * in, Wanted: 3.625 * in}, "reaches 3.630 in above the table; the band ends at 3.625 in"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Rim, Measured: 3.625*in + 0.02, Wanted: 3.625 * in}, "the groove reaches 3.626 in above the table; the margin begins at 3.625 in"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Rim, Measured: 3.7 * in, Wanted: 3.625 * in}, "the groove reaches 3 45/64 in above the table; the margin begins at 3 5/8 in"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Thin, Measured: 0.0624 * in, Wanted: in / 16}, "leaves 0.0624 in of glass where 0.0625 in is the least"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Tight, Measured: 0.0083 * in, Wanted: 0.0078 * in}, "the wheel deviates 0.0083 in from the bent line at the ends of its contact; 0.0078 in is the most"},
		// The most for an edge is rounded down: 0.0627 in would go under.
		{geometry.Inch, pattern.Finding{Kind: pattern.Buried, Measured: 0.07 * in, Wanted: 0.06267 * in}, "a cut 0.070 in deep buries the wheel's shoulders; 0.062 in is the most for this edge"},
		{geometry.Inch, pattern.Finding{Kind: pattern.Shallow, Measured: 0.01553 * in, Wanted: in / 64}, "the mark is too short: it comes out 0.0155 in deep, and at least 0.0157 in is wanted"},
		{geometry.Millimetre, pattern.Finding{Kind: pattern.Shallow, Measured: 0.398, Wanted: 0.4}, "the mark is too short: it comes out 0.398 mm deep, and at least 0.400 mm is wanted"},
		{geometry.Millimetre, pattern.Finding{Kind: pattern.Crowded, Measured: 0.797, Wanted: 0.8}, "land of 0.797 mm where 0.800 mm is the least"},
		{geometry.Millimetre, pattern.Finding{Kind: pattern.Crowded, Measured: 0.56, Wanted: 0.8}, "land of 0.56 mm where 0.8 mm is the least"},
		{geometry.Millimetre, pattern.Finding{Kind: pattern.Crowded, Share: true, Measured: 0.4961, Wanted: 0.5}, "only 49.6 % of the cut lies clear of the one it joins; at least 50.0 % is wanted"},
		{geometry.Millimetre, pattern.Finding{Kind: pattern.Crowded, Share: true, Measured: 0.2, Wanted: 0.5}, "only 20 % of the cut lies clear of the one it joins; at least 50 % is wanted"},
	} {
		p := &pattern.Plan{Job: &job.Job{Length: c.unit}}
		if got := Measured(p, c.f); got != c.want {
			t.Errorf("%s, wanted %s", got, c.want)
		}
	}
}

// A mark 14.1 mm long under a wheel of 100 mm comes out 50 - √(50² - 7.05²) = 0.4995
// mm deep: what was asked, to the hundredth.
func TestShortMarks(t *testing.T) {
	j, err := job.Read("short.toml", []byte(`length = "mm"
blank.station = [{height=0, across=80, wall=8}, {height=100, across=80, wall=8}]
layout = {repeats = 4, band = [20, 80]}
[[wheel]]
name = "m"
edge = "mitre"
across = 100
thick = 12
angle = 90
[[motif]]
kind = "fan"
wheel = "m"
depth = 0.5
rays = 1
hub = 0
width = 0.5
height = "14.1 mm"
`))
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.New(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(shortMarks(p), "\n"); !strings.Contains(got, "4 marks in all too short for the 0.5000 mm asked, and 0.4995 mm deep, which limits.reach = 0.5 allows; 14.2 mm would reach it.") {
		t.Error(got)
	}
}

// One unit comes first: the user's own.
func TestUnitsFirst(t *testing.T) {
	const in = geometry.MillimetresPerInch
	for got, want := range map[string]string{
		Groove(geometry.Millimetre, 1890):    "1.89 m",
		Groove(geometry.Inch, 74.4*in):       "74 in",
		Groove(geometry.Inch, 250*in):        "250 in (21 ft)",
		volume(geometry.Inch, 283_000):       "9.6 US fl oz (283 ml)",
		volume(geometry.Millimetre, 283_000): "283 ml (9.6 US fl oz)",
		Weight(geometry.Inch, 358):           "12.63 oz (358 g)",
		Weight(geometry.Millimetre, 358):     "358 g",
		ground(geometry.Inch, 1764):          "0.108 cubic in",
		ground(geometry.Millimetre, 1764):    "1764 mm³",
	} {
		if got != want {
			t.Errorf("%s, wanted %s", got, want)
		}
	}
}

// A circle of 80 mm in six parts has a chord of 40 mm.
func TestMisread(t *testing.T) {
	c := Circle{Radius: 40, Parts: 6}
	for gap, misread := range map[float64]bool{
		0: false, 1.2: false, -2: false,
		// A 64th on the setting and one on the diameter come to 0.4 (6/cos 30° + 6 tan 30°) mm.
		4.0: false, 4.3: true, -4.3: true, 30: true,
	} {
		s := Stepped{Gaps: []float64{gap}}
		m, is := s.misread(geometry.Millimetre, c)
		if is != misread {
			t.Errorf("a gap of %g mm: misread %v", gap, is)
		}
		for what, left := range map[string]float64{
			"diameter": geometry.Division{Radius: m.radius, Parts: 6}.ClosingGap(40), "setting": geometry.Division{Radius: 40, Parts: 6}.ClosingGap(m.setting),
		} {
			if left < gap-1e-9 || left > gap+1e-9 {
				t.Errorf("with the %s it means, a gap of %g mm is one of %g", what, gap, left)
			}
		}
	}
	if _, is := (Stepped{}).misread(geometry.Millimetre, c); is {
		t.Error("misread, though no gap was given")
	}
	// Two steps never pass the start of the circle they just go round.
	var b strings.Builder
	Stepped{Used: 60, Gaps: []float64{-30}}.words(&b, geometry.Millimetre, Circle{Radius: 40, Parts: 2})
	if strings.Contains(b.String(), "NaN") || !strings.Contains(b.String(), "No circle and no setting") {
		t.Error(b.String())
	}
}
