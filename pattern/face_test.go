package pattern

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/pattern/glass"
)

// A straight taper: outside and inside are cones, the paper's own.
func TestFacesOfATaper(t *testing.T) {
	b, err := glass.NewBlank("trial", 30, []glass.Station{{Radius: 35, Wall: 7}, {Height: 100, Radius: 45, Wall: 2}})
	if err != nil {
		t.Fatal(err)
	}
	p := planned(t, jobOn(b, 6, motif(t, "leaf", nil)))
	outside := p.Outside()
	if outside.Curved() || outside.Low != 0 || outside.High != 100 || outside.Cone != p.Cone {
		t.Errorf("outside: %+v", outside)
	}
	inside, err := p.Inside()
	if err != nil {
		t.Fatal(err)
	}
	// The outside rises by 1 in 10: with the wall goes cos α = 0.995037 of it in and
	// sin α = 0.0995037 up, so that the inside runs straight from the place opposite
	// the foot to the one opposite the rim. 80 mm up the wall is 3 mm.
	const sin, cos = 0.099503719, 0.995037190
	if inside.Curved() || inside.Low != 30 || inside.High != 100 || inside.Band[0] != 30 || math.Abs(inside.Band[1]-80-3*sin) > 1e-6 {
		t.Errorf("inside: %+v", inside)
	}
	for _, z := range []float64{30, 50, 100} {
		want := 35 - 7*cos + (z-7*sin)*(10+5*cos)/(100-5*sin)
		if got := inside.Cone.RadiusAt(z); math.Abs(got-want) > 1e-6 {
			t.Errorf("inside at %g: %.6f, want %.6f", z, got, want)
		}
	}
	if inside.Lower != (Edge{Own: 30}) || inside.Upper != (Edge{Own: 100}) {
		t.Errorf("a cone parts from its paper: %+v, %+v", inside.Lower, inside.Upper)
	}
}

// A band a little curved stays on its cone; past the limit it is in gores, the
// more of them the more it is curved, each within a 64th of an inch.
func TestGoresOfABand(t *testing.T) {
	before := 0
	for _, test := range []struct {
		bulge  float64 // of the middle over the ends
		curved bool
	}{{0, false}, {0.2, false}, {1, true}, {3, true}, {7, true}} {
		p := planned(t, jobOn(blankOf(t, 38-test.bulge, 38-test.bulge/4, 38, 38-test.bulge/4, 38-test.bulge), 5, motif(t, "fan", nil)))
		face := p.Outside()
		if face.Curved() != test.curved {
			t.Errorf("bulge of %g mm: misfit %.3f, curved %v", test.bulge, face.Misfit, face.Curved())
		}
		if !test.curved {
			continue
		}
		g := face.Gores(5, 0.05)
		if g.Worst() > maxEase || g.PerRepeat < before || g.Loss > g.Gain {
			t.Errorf("bulge of %g mm: %+v", test.bulge, g)
		}
		before = g.PerRepeat
		t.Logf("bulge of %g mm: misfit %.3f, %+v", test.bulge, face.Misfit, g)
	}
	// Of a waist the edges are too short.
	p := planned(t, jobOn(blankOf(t, 40, 36, 34, 36, 40), 5, motif(t, "fan", nil)))
	if g := p.Outside().Gores(5, 0); g.Gain > g.Loss || g.Worst() > maxEase {
		t.Errorf("waist: %+v", g)
	}
}

func TestNoFaceInside(t *testing.T) {
	for want, floor := range map[string]float64{"was not measured": 0, "the whole band lies below": 79.5} {
		b, err := glass.NewBlank("trial", floor, []glass.Station{{Radius: 35, Wall: 7}, {Height: 100, Radius: 45, Wall: 2}})
		if err != nil {
			t.Fatal(err)
		}
		p := planned(t, jobOn(b, 6, motif(t, "leaf", nil)))
		if _, err := p.Inside(); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "trial") {
			t.Errorf("floor of %g: %v", floor, err)
		}
	}
}

// Three upright cuts in a band from 20 mm: one ends below the inside floor, one
// crosses it, one stands above. Which are unseen follows from where they stand.
func TestUnseenCuts(t *testing.T) {
	b, err := glass.NewBlank("trial", 45, []glass.Station{{Radius: 40, Wall: 7}, {Height: 100, Radius: 40, Wall: 2}})
	if err != nil {
		t.Fatal(err)
	}
	p := planned(t, jobOn(b, 4,
		bar(t, -10, 12, 16), // from 24 to 40 mm
		bar(t, 0, 25, 16),   // from 37 to 53
		bar(t, 10, 42, 16),  // from 54 to 70
	))
	inside, err := p.Inside()
	if err != nil {
		t.Fatal(err)
	}
	found := p.Unseen(inside)
	if len(found) != 2 {
		t.Fatalf("%d cuts are unseen: %+v", len(found), found)
	}
	for i, want := range []struct {
		cut    int
		low    float64
		hidden bool
	}{{1, 24, true}, {2, 37, false}} {
		f := found[i]
		if f.Kind != Unseen || !slices.Equal(f.Cuts, []int{want.cut}) || math.Abs(f.Measured-want.low) > 0.1 || f.Wanted != 45 ||
			p.Hidden(f) != want.hidden || f.Cure.Advice != Patches {
			t.Errorf("finding %d: %+v, wholly %v", i, f, p.Hidden(f))
		}
	}
	groups := p.UnseenGroups(inside)
	if len(groups) != 2 || groups[0].Letter != letter(len(p.Groups())) {
		t.Errorf("groups: %+v", groups)
	}
	for _, f := range p.Findings {
		if f.Kind == Unseen {
			t.Error("an unseen finding without an inside paper")
		}
	}
}

// A cut is hidden when all of it is off the paper, and not when a hair of it is
// on it: tips 0.3 mm to either side of the inside floor at 45 mm, and of the end
// of paper that was asked for up to 70 mm.
func TestHiddenToAHair(t *testing.T) {
	b, err := glass.NewBlank("trial", 45, []glass.Station{{Radius: 40, Wall: 7}, {Height: 100, Radius: 40, Wall: 2}})
	if err != nil {
		t.Fatal(err)
	}
	// Each bar is 10 mm long, in a band from 20 mm. A groove's tips are points, so it
	// reaches as far as its line.
	inside := planned(t, jobOn(b, 4, bar(t, -20, 19.7, 10), bar(t, 0, 20.3, 10), bar(t, 10, 29.7, 10), bar(t, 20, 30.3, 10)))
	face, err := inside.Inside()
	if err != nil {
		t.Fatal(err)
	}
	asked := *straight(t)
	asked.Paper = &glass.Extent{Low: 0, High: 70}
	outside := planned(t, jobOn(&asked, 4, bar(t, -20, 44.7, 10), bar(t, -10, 45.3, 10), bar(t, 0, 54.7, 10), bar(t, 20, 55.3, 10)))
	for name, test := range map[string]struct {
		plan *Plan
		face Face
		want map[int]bool // whether a cut that is unseen is so wholly
	}{
		"inside":  {inside, face, map[int]bool{1: true, 2: false, 3: false}},
		"outside": {outside, outside.Outside(), map[int]bool{2: false, 3: false, 4: true}},
	} {
		got := map[int]bool{}
		for _, f := range test.plan.Unseen(test.face) {
			got[f.Cuts[0]] = test.plan.Hidden(f)
		}
		if !maps.Equal(got, test.want) {
			t.Errorf("%s: of the cuts unseen, these wholly: %v, wanted %v", name, got, test.want)
		}
	}
}
