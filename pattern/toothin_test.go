package pattern

import (
	"math/rand/v2"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// TestTooThin works by hand what is hatched. The straight glass has 7 mm of wall
// at the foot and 0.05 mm less for each mm; 1.6 mm are to be left.
func TestTooThin(t *testing.T) {
	for _, c := range []struct {
		name   string
		motifs []job.Motif
		want   []ThinGlass
	}{
		// None stands above 80 mm: 0.5 mm deep the shallowest asks for 2.1 mm, which end at 98.
		{"above all cuts", []job.Motif{bar(t, 0, 20, 30, depth(2)), bar(t, 0, 45, 30, depth(0.5))}, []ThinGlass{{98, 100, false}}},
		// The band begins at 20 mm: the cut stands from 50 to 90, and 2 mm deep it asks
		// for 3.6 mm, which end at 68. Its tail begins at 90 − √(50² − 48²) = 76 mm and
		// rises by the rule of the wheel's circle: 50 − √(50² − x²) is as much as the wall
		// loses above 68 mm, 0.05 (8 + x), where x is 9.2 mm.
		{"under a deep cut", []job.Motif{bar(t, 0, 50, 40, depth(2)), bar(t, 0, 45, 30, depth(0.5))}, []ThinGlass{{68, 85.2, true}, {98, 100, false}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := laid(t, jobOn(straight(t), 4, c.motifs...)).TooThin()
			if len(got) != len(c.want) {
				t.Fatalf("%+v, by hand %+v", got, c.want)
			}
			for i, w := range c.want {
				if !near(got[i].From, w.From, 2*grain) || !near(got[i].To, w.To, 2*grain) || got[i].Cut != w.Cut {
					t.Errorf("%+v, by hand %+v", got[i], w)
				}
			}
		})
	}
	thick := blank(t, glass.Station{Height: 0, Radius: 40, Wall: 7}, glass.Station{Height: 100, Radius: 40, Wall: 5})
	if got := laid(t, jobOn(thick, 4, bar(t, 0, 30, 20))).TooThin(); got != nil {
		t.Errorf("thick glass is hatched: %+v", got)
	}
}

// Glass is hatched under cuts just where check finds them thin.
func TestTooThinIsFound(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 6))
	found := 0
	for range 60 {
		j := scattered(t, random)
		p := laid(t, j)
		hatched := func(z float64) bool {
			for _, h := range p.TooThin() {
				if z > h.From-grain && z < h.To+grain {
					return true
				}
			}
			return false
		}
		thin := p.thin()
		for _, f := range thin {
			if found++; f.Height < p.Blank.Height() && !hatched(f.Height) {
				t.Errorf("cut %d is thin %g up, and that is not hatched", f.Cuts[0], f.Height)
			}
		}
		for _, h := range p.TooThin() {
			if h.Cut && len(thin) == 0 {
				t.Errorf("%+v is hatched under cuts, and none is thin", h)
			}
		}
	}
	if found < 10 {
		t.Errorf("only %d thin cuts", found)
	}
}
