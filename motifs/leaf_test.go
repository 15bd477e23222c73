package motifs_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
)

func TestLeafCounts(t *testing.T) {
	for _, test := range []struct{ fronds, cuts int }{{1, 3}, {7, 15}, {40, 81}} {
		for terminal := range 2 {
			cuts := draw(motifs.Leaf(), motifs.Values{
				"fronds": float64(test.fronds), "terminal": float64(terminal)}, 0.7)
			parts := map[string]int{}
			for _, c := range cuts {
				parts[c.Part]++
			}
			if len(cuts) != test.cuts || parts["stem"] != 1 || parts["frond"] != test.cuts-1 {
				t.Errorf("%d pairs, terminal %d: cuts are %v", test.fronds, terminal, parts)
			}
		}
	}
}

// One pair of fronds, its tip worked by hand. The outline is a parabola each
// side of the fullest: at a share u of the way to the end it has 1 - u² of the
// width left.
func TestLeafTips(t *testing.T) {
	for _, test := range []struct {
		name   string
		values motifs.Values
		aspect float64
		tip    geometry.Point
	}{
		// From 1/2, rising as far as it goes out, to the fullest 1/4 above; half
		// the width is 1/4, so it ends on the side of the box.
		{"at the fullest", motifs.Values{"stalk": 0, "fullest": 0.75, "crown": 0.5, "lean": 45, "arch": 0},
			0.5, geometry.Point{X: 0.5, Y: 0.75}},
		// The same chord: a quarter of a circle, level at the root, upright at the tip.
		{"arched to the fullest", motifs.Values{"stalk": 0, "fullest": 0.75, "crown": 0.5, "lean": 90, "arch": 1},
			0.5, geometry.Point{X: 0.5, Y: 0.75}},
		// From 3/4, out and up by 1/8, to u = 3/4, where 7/16 is left of 2/7.
		{"above the fullest", motifs.Values{"stalk": 0, "fullest": 0.5, "crown": 0.25, "lean": 45, "arch": 0},
			4.0 / 7, geometry.Point{X: 7.0 / 32, Y: 7.0 / 8}},
		// Level from 2/5, half the way down from 4/5, where 3/4 is left.
		{"below the fullest", motifs.Values{"stalk": 0, "fullest": 0.8, "crown": 0.6, "lean": 90, "arch": 0},
			3, geometry.Point{X: 3.0 / 8, Y: 0.4}},
		// The leaf is the upper 4/5, its middle at 3/5.
		{"on a stalk", motifs.Values{"stalk": 0.2, "fullest": 0.5, "crown": 0.5, "lean": 90, "arch": 0},
			1.7, geometry.Point{X: 0.5, Y: 0.6}},
	} {
		test.values["fronds"] = 1
		cuts := draw(motifs.Leaf(), test.values, test.aspect)
		left, right := cuts[1].Path[3], cuts[2].Path[3]
		if !near(right, test.tip) || !near(left, geometry.Point{X: -test.tip.X, Y: test.tip.Y}) {
			t.Errorf("%s: tips at %v and %v, want %v", test.name, left, right, test.tip)
		}
	}
}

func TestLeafArch(t *testing.T) {
	// The quarter circle of the test above, about a point on the stem at 3/4.
	const aspect = 0.5
	cuts := draw(motifs.Leaf(), motifs.Values{
		"fronds": 1, "stalk": 0, "fullest": 0.75, "crown": 0.5, "lean": 90, "arch": 1}, aspect)
	for s := range 11 {
		p := cuts[2].Path.At(float64(s) / 10)
		if r := math.Hypot(p.X*aspect, p.Y-0.75); math.Abs(r-0.25) > 1e-4 {
			t.Errorf("at %g the frond is %g from its centre, want 0.25", float64(s)/10, r)
		}
	}
	for _, test := range []struct {
		arch     float64
		straight bool
		end      float64 // degrees from the stem
	}{{0, true, 40}, {1, false, 0}, {-1, false, 90}, {0.5, false, 20}, {-0.5, false, 65}} {
		for _, c := range draw(motifs.Leaf(), motifs.Values{"lean": 40, "arch": test.arch}, 1.5)[1:] {
			if got := slant(c.Path[2], c.Path[3], 1.5); math.Abs(got-test.end) > 1e-6 {
				t.Errorf("arch %g: the frond ends at %g°, want %g°", test.arch, got, test.end)
			}
			if c.Path.Straight() != test.straight {
				t.Errorf("arch %g: straight is %v", test.arch, !test.straight)
			}
		}
	}
}

func TestLeafLean(t *testing.T) {
	for _, lean := range []float64{10, 35, 62, 90} {
		for _, arch := range []float64{-1, -0.3, 0, 0.6, 1} {
			for _, aspect := range aspects {
				for _, c := range draw(motifs.Leaf(), motifs.Values{"lean": lean, "arch": arch}, aspect)[1:] {
					if got := slant(c.Path[0], c.Path[1], aspect); math.Abs(got-lean) > 1e-6 {
						t.Errorf("arch %g, aspect %g: a frond leans %g°, want %g°", arch, aspect, got, lean)
					}
				}
			}
		}
	}
}

// slant returns the true angle between a line and upright, in degrees.
func slant(from, to geometry.Point, aspect float64) float64 {
	d := r2.Sub(to, from)
	return math.Atan2(math.Abs(d.X)*aspect, d.Y) * 180 / math.Pi
}

func TestLeafStem(t *testing.T) {
	// Three pairs on the lower 3/4 of a leaf from 1/5 up, so on 1/5 to 4/5: the
	// first half a step up, two steps of 0.24 to the last.
	roots := []float64{0.32, 0.56, 0.8}
	for terminal, top := range []float64{0.8, 1} {
		cuts := draw(motifs.Leaf(), motifs.Values{
			"fronds": 3, "stalk": 0.2, "crown": 0.25, "terminal": float64(terminal)}, 0.7)
		if stem := cuts[0].Path; !near(stem[0], geometry.Point{}) || !near(stem[3], geometry.Point{Y: top}) || !stem.Straight() {
			t.Errorf("terminal %d: the stem is %v, want it straight up to %g", terminal, stem, top)
		}
		for i, c := range cuts[1:] {
			if want := (geometry.Point{Y: roots[i/2]}); !near(c.Path[0], want) {
				t.Errorf("terminal %d: frond %d starts at %v, want %v", terminal, i, c.Path[0], want)
			}
		}
	}
}

// A leaf of the usual values can be cut: the fronds of one side keep apart.
func TestLeafApart(t *testing.T) {
	for _, v := range []motifs.Values{nil, {"arch": 0}, {"arch": -0.7, "lean": 40}, {"fronds": 12}} {
		for _, aspect := range []float64{0.4, 2.0 / 3, 1} {
			cuts := draw(motifs.Leaf(), v, aspect)
			for i, a := range cuts {
				for _, b := range cuts[:i] {
					if oneSide(a, b) && gap(a.Path, b.Path) < 0.02 {
						t.Errorf("%v, aspect %g: two fronds come within %g", v, aspect, gap(a.Path, b.Path))
					}
				}
			}
		}
	}
}
