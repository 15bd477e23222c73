package motifs_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestWheatGrains(t *testing.T) {
	// At 30° a grain goes half its length aside and √3/2 of it up.
	up := math.Sqrt(3) / 2
	for _, test := range []struct {
		name     string
		values   motifs.Values
		aspect   float64
		from, to []geometry.Point // on the right
		tip      float64          // the foot of the grain there
	}{
		// The highest pair starts a grain and a half below the top.
		{"one pair", motifs.Values{"grains": 1, "lean": 30, "long": 0.2, "apart": 0, "stalk": 0}, 2,
			[]geometry.Point{{Y: 0.7}}, []geometry.Point{{X: 0.05, Y: 0.7 + 0.2*up}}, 0.8},
		// An ear of 4/5 has grains of 0.16; they start from 0.2 to 0.76.
		{"three pairs on a stalk", motifs.Values{"grains": 3, "lean": 30, "long": 0.2, "apart": 0, "stalk": 0.2}, 2,
			[]geometry.Point{{Y: 0.2}, {Y: 0.48}, {Y: 0.76}},
			[]geometry.Point{{X: 0.04, Y: 0.2 + 0.16*up}, {X: 0.04, Y: 0.48 + 0.16*up}, {X: 0.04, Y: 0.76 + 0.16*up}}, 0.84},
		{"apart", motifs.Values{"grains": 1, "lean": 30, "long": 0.2, "apart": 0.25, "stalk": 0}, 2,
			[]geometry.Point{{X: 0.025, Y: 0.7}}, []geometry.Point{{X: 0.075, Y: 0.7 + 0.2*up}}, 0.8},
		// Half the width is 0.1: grains of 0.2 reach the side.
		{"narrow", motifs.Values{"grains": 1, "lean": 30, "long": 0.4, "apart": 0, "stalk": 0}, 0.2,
			[]geometry.Point{{Y: 0.7}}, []geometry.Point{{X: 0.5, Y: 0.7 + 0.2*up}}, 0.8},
	} {
		cuts := draw(motifs.Wheat(), test.values, test.aspect)
		if len(cuts) != 2+2*len(test.from) {
			t.Errorf("%s: %d cuts", test.name, len(cuts))
			continue
		}
		if stem, tip := cuts[0].Path, cuts[1].Path; !near(stem[0], geometry.Point{}) ||
			!near(stem[3], geometry.Point{Y: test.from[len(test.from)-1].Y}) ||
			!near(tip[0], geometry.Point{Y: test.tip}) || !near(tip[3], geometry.Point{Y: 1}) {
			t.Errorf("%s: stem %v, tip %v", test.name, stem, tip)
		}
		for i, from := range test.from {
			if grain := cuts[3+2*i].Path; !near(grain[0], from) || !near(grain[3], test.to[i]) {
				t.Errorf("%s: grain %d from %v to %v, want %v to %v", test.name, i, grain[0], grain[3], from, test.to[i])
			}
		}
	}
}

func TestWheatJoins(t *testing.T) {
	for _, test := range []struct {
		apart float64
		stem  int
	}{{0, 8}, {0.01, 0}} {
		cuts := draw(motifs.Wheat(), motifs.Values{"grains": 4, "apart": test.apart}, 1)
		if got := len(cuts[0].Joins); got != test.stem {
			t.Errorf("apart %g: the stem joins %d grains, want %d", test.apart, got, test.stem)
		}
	}
}
