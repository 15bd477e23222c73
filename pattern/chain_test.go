package pattern

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// diamonds is a field of diamonds, a number across a repeat and a number up.
func diamonds(t testing.TB, across, up float64, change ...func(*job.Motif)) job.Motif {
	return motif(t, "diamond", motifs.Values{"across": across, "up": up}, append(change, land(0))...)
}

// TestChainsByHand follows the mitres of a field two diamonds wide and eight high.
// Its rising lines lie on x − y = k, from −7 to 1: cuts 1 to 9. One that comes to
// the right edge, at x = 2, goes on at x = 0 of the next repeat on k − 2, two
// numbers down, and 18 up for the repeat: 9 → 25 → 41 → 57 → 73. The falling lines
// are these mirrored, and so go on to the left.
func TestChainsByHand(t *testing.T) {
	p := planned(t, jobOn(blankOf(t, 36, 40), 8, diamonds(t, 2, 8)))
	want := []Chain{
		{[]int{8, 24, 40, 56}, false, 8},
		{[]int{9, 25, 41, 57, 73}, false, 8},
		{[]int{17, 33, 49, 65}, false, 8},
		{[]int{18, 34, 50, 66, 82}, false, 8},
	}
	got := p.Chains()
	if len(got) != len(want) {
		t.Fatalf("%+v", got)
	}
	for i, w := range want {
		if !slices.Equal(got[i].Cuts, w.Cuts) || got[i].Closed != w.Closed || got[i].Times != w.Times {
			t.Errorf("%+v, by hand %+v", got[i], w)
		}
	}
	// That of cut 6 begins in the last repeat: 116 + 18 is its first.
	if ids := p.Copy(got[0], 7); !slices.Equal(ids, []int{134, 6, 22, 38}) {
		t.Errorf("cut 6 is of %v", ids)
	}
	sum := p.Sum(got[0])
	if want := p.Cuts[7].Length + p.Cuts[5].Length + p.Cuts[3].Length + p.Cuts[1].Length; !near(sum.Length, want, 1e-9) || sum.Left != p.Cuts[1].Left {
		t.Errorf("%g mm with %g left, wanted %g with %g", sum.Length, sum.Left, want, p.Cuts[1].Left)
	}
	// They are cut one after the other, and each names those beside it as joined.
	order := p.Sequence()
	if !slices.Equal(order[:10], []int{9, 25, 41, 57, 73, 27, 43, 59, 75, 91}) {
		t.Errorf("cut in the order %v", order[:10])
	}
	for _, ids := range []([]int){{134, 6, 22, 38}, {9, 25, 41, 57, 73}} {
		all := p.All()
		for i, id := range ids[1:] {
			if !slices.Contains(all[id-1].Joins, ids[i]) || !slices.Contains(all[ids[i]-1].Joins, id) {
				t.Errorf("%d and %d are not reported to join", ids[i], id)
			}
		}
	}
}

// TestRings closes rings round the glass, of any number of repeats.
func TestRings(t *testing.T) {
	ring := motif(t, "ring", motifs.Values{"rings": 2, "lines": 1}, size(1, 0.5))
	for repeats, want := range map[int][]Chain{
		1: {{[]int{1}, true, 1}, {[]int{2}, true, 1}},
		2: {{[]int{1, 3}, true, 1}, {[]int{2, 4}, true, 1}},
		5: {{[]int{1, 3, 5, 7, 9}, true, 1}, {[]int{2, 4, 6, 8, 10}, true, 1}},
	} {
		for _, b := range []*glass.Blank{straight(t), blankOf(t, 33, 44)} {
			p := checked(t, jobOn(b, repeats, ring))
			if got := p.Chains(); !slices.EqualFunc(got, want, func(a, b Chain) bool {
				return slices.Equal(a.Cuts, b.Cuts) && a.Closed == b.Closed && a.Times == b.Times
			}) {
				t.Errorf("%d repeats: %+v, wanted %+v", repeats, got, want)
			}
			for _, c := range p.All() {
				if joins := slices.Sorted(slices.Values(c.Joins)); len(slices.Compact(joins)) != len(c.Joins) {
					t.Errorf("%d repeats: cut %d joins %v", repeats, c.ID, c.Joins)
				}
			}
		}
	}
	// On odd repeats only there is a gap; two repeats wide, no gap is left.
	for width, alone := range map[float64]bool{1: true, 2: false} {
		p := laid(t, jobOn(straight(t), 6, motif(t, "ring", motifs.Values{"rings": 1, "lines": 1}, size(width, 0.5), on(job.Odd))))
		if got := p.Chains(); len(got) != 1 || got[0].Alone() != alone || !alone && (!got[0].Closed || len(got[0].Cuts) != 3) {
			t.Errorf("%g repeats wide, on odd ones: %+v", width, got)
		}
	}
}

// TestChainsInSpace looks at every two ends of every two cuts on the glass, in
// space: one goes on into the other just where the chains say so.
func TestChainsInSpace(t *testing.T) {
	basket := motif(t, "basket", nil)
	lattice := motif(t, "lattice", motifs.Values{"lines": 1})
	for name, j := range map[string]*job.Job{
		"tapered":       jobOn(blankOf(t, 34, 42), 5, diamonds(t, 3, 7)),
		"straight":      jobOn(straight(t), 4, diamonds(t, 2, 5)),
		"one repeat":    jobOn(straight(t), 1, diamonds(t, 6, 3)),
		"two mitres":    jobOn(blankOf(t, 42, 36), 3, diamonds(t, 4, 4, func(m *job.Motif) { m.Values["mitres"] = 2 })),
		"mirrored":      jobOn(straight(t), 3, diamonds(t, 3, 4, mirrored)),
		"off the edge":  jobOn(straight(t), 3, diamonds(t, 3, 4, at(0.3, 0.5))),
		"odd and other": jobOn(straight(t), 4, diamonds(t, 3, 4, on(job.Odd), size(2, 0.4)), lattice),
		"basket":        jobOn(straight(t), 4, basket),
	} {
		p := laid(t, j)
		type end struct {
			at, out r3.Vec
			cut     Cut
		}
		var ends []end
		for _, c := range p.All() {
			place := func(i int) r3.Vec { return p.Surface.Space(c.Samples[i].At) }
			n := len(c.Samples) - 1
			ends = append(ends, end{place(0), r3.Unit(r3.Sub(place(0), place(1))), c}, end{place(n), r3.Unit(r3.Sub(place(n), place(n-1))), c})
		}
		want := map[[2]int]int{}
		for i, a := range ends {
			for _, b := range ends[:i] {
				same := a.cut.ID == b.cut.ID && p.Repeats > 1 || a.cut.Repeat == b.cut.Repeat && p.Repeats > 1
				if same || a.cut.Motif != b.cut.Motif || !a.cut.RunsOn || !b.cut.RunsOn {
					continue
				}
				if r3.Norm(r3.Sub(a.at, b.at)) < 0.05 && r3.Dot(a.out, b.out) < math.Cos(172*math.Pi/180) {
					want[[2]int{min(a.cut.ID, b.cut.ID), max(a.cut.ID, b.cut.ID)}]++
				}
			}
		}
		got := map[[2]int]int{}
		cuts := map[int]int{}
		for _, c := range p.Chains() {
			for turns := range c.Times {
				ids := p.Copy(c, turns)
				for _, id := range ids {
					cuts[id]++
				}
				if c.Closed {
					ids = append(ids, ids[0])
				}
				for i, id := range ids[1:] {
					got[[2]int{min(ids[i], id), max(ids[i], id)}]++
				}
			}
		}
		if len(cuts) != p.Totals().Cuts {
			t.Errorf("%s: %d cuts of %d", name, len(cuts), p.Totals().Cuts)
		}
		for id, times := range cuts {
			if times != 1 {
				t.Errorf("%s: cut %d is of %d chains", name, id, times)
			}
		}
		if len(want) != len(got) {
			t.Errorf("%s: %d go on, in space %d", name, len(got), len(want))
		}
		for pair, times := range want {
			if got[pair] != times {
				t.Errorf("%s: %v meet %d times in space, and go on %d times", name, pair, times, got[pair])
			}
		}
		if name != "basket" && len(got) == 0 {
			t.Errorf("%s: nothing goes on", name)
		}
	}
}
