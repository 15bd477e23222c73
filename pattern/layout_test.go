package pattern

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// TestBand works the default band by hand: from the foot's margin of 6.4 mm, up
// to the rim's margin of 9.5 mm or to where the wall is as thick as the deepest
// cut and the 1.6 mm that must be left, whichever comes first.
func TestBand(t *testing.T) {
	step := blank(t, glass.Station{Height: 0, Radius: 35, Wall: 9}, glass.Station{Height: 20, Radius: 35, Wall: 5},
		glass.Station{Height: 80, Radius: 35, Wall: 2}, glass.Station{Height: 90, Radius: 35, Wall: 3})
	upright := motif(t, "fan", motifs.Values{"rays": 1})
	// A wall that thins by g for each mm leaves the hollow at a slant: square to
	// that, 1.6 mm are 1.6 √(1 + g²) on the level.
	const slant, steep = 1.6 * (1.00124921973 - 1), 1.6 * (1.01980390272 - 1) // of 0.05 and 0.2 mm a mm
	for _, c := range []struct {
		name   string
		blank  *glass.Blank
		depths []float64
		foot   float64 // the margin
		want   job.Band
		refuse string
	}{
		// 7 mm at the foot, 0.05 mm less for each mm: 2.5 mm at the rim's margin, 90.5 mm.
		{"the rim's margin", straight(t), []float64{0.5}, 6.4, job.Band{Foot: 6.4, Top: 90.5}, ""},
		{"just the wall", straight(t), []float64{1}, 6.4, job.Band{Foot: 6.4, Top: 88 - slant/0.05}, ""},
		{"the deepest cut's wall", straight(t), []float64{0.5, 2, 1}, 6.4, job.Band{Foot: 6.4, Top: 68 - slant/0.05}, ""},
		// 2.6 mm of wall are 4/5 of the way from 20 to 80 mm; above 80 mm it is
		// thick enough again, but out of reach.
		{"past a station", step, []float64{1}, 6.4, job.Band{Foot: 6.4, Top: 68 - slant/0.05}, ""},
		{"below a station", step, []float64{4.4}, 6.4, job.Band{Foot: 6.4, Top: 15 - steep/0.2}, ""},
		{"too deep everywhere", straight(t), []float64{6}, 6.4, job.Band{}, "no glass can be cut"},
		{"margins that meet", straight(t), []float64{0.5}, 90, job.Band{}, "no glass can be cut"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOn(c.blank, 3)
			j.Layout.Band, j.Limits.Foot = nil, c.foot
			for _, d := range c.depths {
				m := upright
				m.Depth = d
				j.Motifs = append(j.Motifs, m)
			}
			p, err := New(context.Background(), j, c.blank)
			if c.refuse != "" {
				if err == nil || p != nil || !strings.Contains(err.Error(), c.refuse) || strings.Contains(err.Error(), "\n") {
					t.Errorf("plan %v, error %v", p, err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if !near(p.Band.Foot, c.want.Foot, 1e-9) || !near(p.Band.Top, c.want.Top, 1e-6) {
				t.Errorf("the band is %v, by hand %v", p.Band, c.want)
			}
			if slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == Thin }) {
				t.Error("too thin in the band where all may be cut")
			}
		})
	}

	// A height copied from the blank's own may differ in its last digit.
	j := jobOn(straight(t), 3, upright)
	j.Layout.Band.Top = 100 + 1e-10
	if _, err := New(context.Background(), j, j.Blanks[0]); err != nil {
		t.Errorf("a band up to the rim: %v", err)
	}
	j.Layout.Band.Top = 101
	if _, err := New(context.Background(), j, j.Blanks[0]); err == nil || !strings.Contains(err.Error(), "only 100.0 mm high") {
		t.Errorf("a band above the rim: %v", err)
	}
}

// TestAround checks how the cuts are numbered round the glass, and that what
// symmetry says of them holds for all.
func TestAround(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 3}, size(0.8, 0.9))
	diamond := motif(t, "diamond", motifs.Values{"across": 2, "up": 2})
	odd, even := bar(t, 0, 30, 20, on(job.Odd)), bar(t, 2, 30, 20, on(job.Even))
	for _, c := range []struct {
		name    string
		repeats int
		motifs  []job.Motif
		period  int
		each    [2]int // cuts in odd and in even repeats
	}{
		{"one repeat", 1, []job.Motif{leaf}, 1, [2]int{7, 7}},
		{"five repeats", 5, []job.Motif{leaf, diamond}, 1, [2]int{13, 13}},
		{"alternating", 6, []job.Motif{odd, diamond, even, even}, 2, [2]int{7, 8}},
		{"two repeats, alternating", 2, []job.Motif{diamond, odd}, 2, [2]int{7, 6}},
	} {
		for _, b := range []*glass.Blank{straight(t), blankOf(t, 33, 44), blankOf(t, 44, 33)} {
			p := planned(t, jobOn(b, c.repeats, c.motifs...))
			all := p.All()
			if p.Period != c.period || p.Totals().Cuts != len(all) {
				t.Errorf("%s: a period of %d, and %d cuts of %d", c.name, p.Period, p.Totals().Cuts, len(all))
			}
			in := make([]int, c.repeats+1)
			for i, cut := range all {
				if cut.ID != i+1 {
					t.Errorf("%s: cut %d has the id %d", c.name, i+1, cut.ID)
				}
				if i > 0 && cut.Repeat < all[i-1].Repeat {
					t.Errorf("%s: cut %d is in repeat %d, after one in %d", c.name, cut.ID, cut.Repeat, all[i-1].Repeat)
				}
				in[cut.Repeat]++
				// All stand within half a pitch of their repeat's middle.
				pitch := 2 * math.Pi / float64(c.repeats)
				for _, s := range cut.Samples {
					if off := s.Theta - float64(cut.Repeat-1)*pitch; math.Abs(off) > pitch/2+1e-6 {
						t.Errorf("%s: cut %d of repeat %d is %g off its middle", c.name, cut.ID, cut.Repeat, off)
						break
					}
				}
				seen := map[int]bool{}
				for _, id := range cut.Joins {
					if id < 1 || id > len(all) || id == cut.ID || seen[id] || !slices.Contains(all[id-1].Joins, cut.ID) {
						t.Errorf("%s: cut %d joins %v", c.name, cut.ID, cut.Joins)
						break
					}
					seen[id] = true
				}
			}
			for repeat := 1; repeat <= c.repeats; repeat++ {
				if in[repeat] != c.each[(repeat-1)%2] {
					t.Errorf("%s: %d cuts in repeat %d", c.name, in[repeat], repeat)
				}
			}
		}
	}
}

// TestJoinsAcross looks at how diamonds join from one repeat to the next: those
// that end in the same place of the edge between them, and no others.
func TestJoinsAcross(t *testing.T) {
	for name, diamond := range map[string]job.Motif{
		"with land":    motif(t, "diamond", motifs.Values{"across": 1, "up": 2}),
		"without land": motif(t, "diamond", motifs.Values{"across": 1, "up": 2}, land(0)),
	} {
		all := planned(t, jobOn(straight(t), 3, diamond)).All()
		// From the left edge to the right, in diamonds up from the foot, cuts 1 and 2
		// rise from 1 to 2 and from 0 to 1, and 3 and 4 fall from 1 to 0 and from 2 to
		// 1. The next repeat's have ids four higher, those of the one before eight.
		for id, want := range map[int][]int{
			1: {3, 4, 8, 10, 12}, // ends at 2, where 8 starts, and starts at 1, where 10 and 12 end
			2: {3, 4, 5, 7, 11},
			3: {1, 2, 6, 10, 12},
			4: {1, 2, 5, 7, 9},
		} {
			got := slices.Clone(all[id-1].Joins)
			slices.Sort(got)
			if !slices.Equal(got, want) {
				t.Errorf("%s: cut %d joins %v, by hand %v", name, id, got, want)
			}
		}
	}
}

// TestPlacing places a bar by hand: its fractions run along the slant, and to the
// right as the glass is seen from outside, where θ and x grow.
func TestPlacing(t *testing.T) {
	// From 20 to 44 mm in radius over 70 mm: the slant is 74 mm (7, 24 and 25 in
	// tenths of 2.96), and as many degrees round as 24/74 of a turn.
	b := blank(t, glass.Station{Height: 0, Radius: 20, Wall: 5}, glass.Station{Height: 70, Radius: 44, Wall: 5})
	slant := 74.0
	straight := straight(t)
	for _, c := range []struct {
		name              string
		blank             *glass.Blank
		band              job.Band
		repeats           int
		motif             job.Motif
		degrees, from, to float64 // θ of the middle, and heights of the ends
	}{
		{"middle", straight, job.Band{Foot: 20, Top: 80}, 4, motif(t, "fan", one, size(0.5, 0.5)), 0, 35, 65},
		{"right and up", straight, job.Band{Foot: 20, Top: 80}, 4, motif(t, "fan", one, at(0.25, 0.75), size(0.5, 0.5)), 22.5, 50, 80},
		{"left", straight, job.Band{Foot: 20, Top: 80}, 4, motif(t, "fan", one, at(-0.5, 0.5)), -45, 20, 80},
		{"lengths", straight, job.Band{Foot: 20, Top: 80}, 4, bar(t, math.Pi*40/6, 10, 20), 30, 20, 40},
		// A quarter and three quarters up the slant are as far up in height.
		{"slant", b, job.Band{Foot: 0, Top: 70}, 3, motif(t, "fan", one, at(0.5, 0.5), size(0.5, 0.5)), 60, 17.5, 52.5},
		// A length of 37 mm is half the slant: half of the height.
		{"length on the slant", b, job.Band{Foot: 0, Top: 70}, 3, bar(t, 0, slant/2, slant/2), 0, 17.5, 52.5},
		// A length across is taken where the motif's middle is, 32 mm in radius.
		{"length across", b, job.Band{Foot: 0, Top: 70}, 3, bar(t, 32*math.Pi/6, slant/2, slant/2), 30, 17.5, 52.5},
	} {
		j := jobOn(c.blank, c.repeats, c.motif)
		j.Layout.Band, j.Limits = &c.band, job.Limits{}
		p := laid(t, j)
		for k, cut := range p.All() {
			first, last := cut.Samples[0], cut.Samples[len(cut.Samples)-1]
			const tip = 0.0011 // mm at either end that is not drawn
			if !near(first.Height, c.from, tip) || !near(last.Height, c.to, tip) {
				t.Errorf("%s: from %.4f to %.4f mm, by hand %g to %g", c.name, first.Height, last.Height, c.from, c.to)
			}
			degrees := c.degrees + float64(k)*360/float64(c.repeats)
			if got := cut.Middle().Theta * 180 / math.Pi; !near(got, degrees, 1e-6) {
				t.Errorf("%s: repeat %d stands at %.6f°, by hand %g°", c.name, k+1, got, degrees)
			}
			if x := cut.Middle().At.X; k == 0 && (x > 1e-9) != (c.degrees > 0) {
				t.Errorf("%s: x is %g at θ = %g°", c.name, x, degrees)
			}
		}
	}
}

var one = motifs.Values{"rays": 1, "hub": 0}

// TestRightward lays level bars all round: on the flat map and in θ each starts
// at its left end, and x grows with θ. Mirrored, or turned half round, it starts
// at its right end.
func TestRightward(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*job.Motif)
		sign   float64
	}{
		// An upright bar points up: turned a quarter clockwise, to the right.
		{"to the right", turn(-90), 1}, {"to the left", turn(90), -1},
		{"mirrored first", func(m *job.Motif) { turn(-90)(m); m.Mirror = true }, 1},
	} {
		for _, b := range []*glass.Blank{straight(t), blankOf(t, 36, 44)} {
			p := laid(t, jobOn(b, 8, bar(t, 0, 30, 20, c.change)))
			for _, cut := range p.All() {
				first, last := cut.Samples[0], cut.Samples[len(cut.Samples)-1]
				if (last.Theta-first.Theta)*c.sign <= 0 {
					t.Errorf("%s: θ runs from %g to %g", c.name, first.Theta, last.Theta)
				}
				// Near θ = 0 the flat map stands upright.
				if cut.Repeat == 1 && (last.At.X-first.At.X)*c.sign <= 0 {
					t.Errorf("%s: x runs from %g to %g", c.name, first.At.X, last.At.X)
				}
			}
		}
	}
}

// Nobody has looked yet how many fronds clear: the job is refused, not laid out with
// some number.
func TestUnresolved(t *testing.T) {
	j := jobOn(straight(t), 3, motif(t, "leaf", nil))
	j.Motifs[0].Most = []string{"fronds"}
	delete(j.Motifs[0].Values, "fronds")
	if _, err := New(t.Context(), j, j.Blanks[0]); err == nil || err.Error() != "motif 1: how many fronds clear has not been found yet" {
		t.Errorf("laid out: %v", err)
	}
}
