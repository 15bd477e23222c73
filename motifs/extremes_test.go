package motifs_test

import (
	"fmt"
	"math"
	"testing"

	"roundlay/motifs"
)

// maxDrawn is the largest number of cuts that any kind draws at its limits: a
// field of 40 by 40 diamonds. Three mitres run on each of 79 places of either
// slope; 3,120 whole diamonds have four lines of hatching each way, and 160 halves
// at the edges two.
const maxDrawn = 2*3*79 + 8*3120 + 4*160

// Each pair of parameters at their extremes, the others at their defaults, on
// boxes from a thread to a ribbon.
func TestExtremesInPairs(t *testing.T) {
	for _, k := range motifs.All() {
		for i, p := range k.Params {
			for _, q := range k.Params[i+1:] {
				for _, a := range []float64{p.Min, p.Max} {
					for _, b := range []float64{q.Min, q.Max} {
						for _, aspect := range []float64{0.01, 1, 100} {
							v := k.Defaults()
							v[p.Name], v[q.Name] = a, b
							checkBounds(t, k, v, aspect)
						}
					}
				}
			}
		}
	}
}

// Every count of a fan at every spread that ends level or upright: the angles of
// its rays add up by rounding, and a level one may come to lie past level.
func TestFanCounts(t *testing.T) {
	k := motifs.Fan()
	for rays := 1.0; rays <= 40; rays++ {
		for _, spread := range []float64{10, 90, 179.99999999, 180} {
			for _, scallop := range []float64{0, 0.5, 1} {
				for _, aspect := range []float64{0.01, 0.4, 2, 100} {
					v := k.Defaults()
					v["rays"], v["spread"], v["scallop"] = rays, spread, scallop
					checkBounds(t, k, v, aspect)
				}
			}
		}
	}
}

// In a box twice as wide as high the outer rays of half a sunburst lie along the
// foot and end at the sides, whatever their count.
func TestFanLevelRays(t *testing.T) {
	for rays := 2.0; rays <= 40; rays++ {
		for _, scallop := range []float64{0, 1} {
			cuts := draw(motifs.Fan(), motifs.Values{"rays": rays, "spread": 180, "scallop": scallop}, 2)
			first, last := cuts[0].Path[3], cuts[len(cuts)-1].Path[3]
			if math.Hypot(first.X+0.5, first.Y) > exact || math.Hypot(last.X-0.5, last.Y) > exact {
				t.Errorf("%g rays, scallop %g: the outer ones end at %v and %v", rays, scallop, first, last)
			}
		}
	}
}

// checkBounds holds what a kind draws to its box and to a bound on how many cuts
// there are, each a line that is finite and has a length.
func checkBounds(t *testing.T, k motifs.Kind, v motifs.Values, aspect float64) {
	t.Helper()
	where := fmt.Sprintf("%s %v, aspect %g", k.Name, v, aspect)
	cuts := k.Draw(v, aspect)
	if len(cuts) == 0 || len(cuts) > maxDrawn {
		t.Errorf("%s: %d cuts", where, len(cuts))
	}
	for i, c := range cuts {
		length := 0.0
		before := c.Path[0]
		for s := range 17 {
			p := c.Path.At(float64(s) / 16)
			// Written so that NaN fails.
			if !(math.Abs(p.X) <= 0.5+exact && p.Y >= -exact && p.Y <= 1+exact) {
				t.Errorf("%s: cut %d (%s) leaves the box at %v", where, i, c.Part, p)
				return
			}
			length += math.Hypot((p.X-before.X)*aspect, p.Y-before.Y)
			before = p
		}
		// Of the shorter side of the box, in its heights.
		if least := 1e-4 * min(aspect, 1); !(length >= least) {
			t.Errorf("%s: cut %d (%s) is %g long", where, i, c.Part, length)
			return
		}
	}
}

func TestMostDrawn(t *testing.T) {
	k := motifs.Diamond()
	v := k.Defaults()
	for _, p := range k.Params {
		if p.Sort == motifs.Count {
			v[p.Name] = p.Max
		}
	}
	if got := len(k.Draw(v, 1)); got != maxDrawn {
		t.Errorf("a diamond at its limits has %d cuts, want %d", got, maxDrawn)
	}
}
