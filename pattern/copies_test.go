package pattern

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// TestListsAreWords compares motifs that list their repeats with the same ones that say
// each, odd or even: every cut and every finding round the glass is the same.
func TestListsAreWords(t *testing.T) {
	t.Parallel()
	const jobs = 60
	random := rand.New(rand.NewPCG(5, 77))
	cuts, findings := 0, 0
	for n := range jobs {
		j := scattered(t, random)
		listed := j.Clone()
		for i := range listed.Motifs {
			m := &listed.Motifs[i]
			m.Only, m.On = j.Layout.Copies(*m), job.Each
		}
		words, lists := planned(t, j), planned(t, listed)
		if words.Period != lists.Period {
			t.Errorf("job %d: periods of %d and %d", n, words.Period, lists.Period)
		}
		all, same := words.All(), lists.All()
		if len(all) != len(same) {
			t.Fatalf("job %d: %d cuts and %d", n, len(all), len(same))
		}
		for i := range all {
			a, b := all[i], same[i]
			if a.ID != b.ID || a.Depth != b.Depth || a.Length != b.Length || !slices.Equal(a.Joins, b.Joins) || a.RunsOn != b.RunsOn {
				t.Errorf("job %d: cut %d differs", n, a.ID)
			}
		}
		for _, s := range spots(roundGlass(words), roundGlass(lists)) {
			findings++
			if !agree(roundGlass(words)[s], roundGlass(lists)[s]) {
				t.Errorf("job %d: %v of %v differs", n, s.kind, s.cuts)
			}
		}
		cuts += len(all)
	}
	if cuts < 1000 || findings < 100 {
		t.Errorf("only %d cuts and %d findings", cuts, findings)
	}
}

// A ring of which one repeat is bare begins and ends there. Its lines are cut once where
// they run on to both sides, and once more for either end.
func TestRingWithAGap(t *testing.T) {
	for name, radii := range map[string][]float64{"straight": {40, 40}, "tapered": {35, 42}, "barrel": {35, 40, 36}} {
		ring := jobtest.Motif(t, "ring", map[string]float64{"lines": 1}, jobtest.At(0, 0.5), jobtest.Size(1, 0.1))
		j := jobOn(blankOf(t, radii...), 6, ring)
		j.Layout.Bare = []int{2}
		p := planned(t, j)
		lines := len(p.Cuts) / 5
		if p.Period != 6 || lines == 0 || p.Totals().Cuts != 5*lines {
			t.Fatalf("%s: a period of %d with %d cuts", name, p.Period, len(p.Cuts))
		}
		chains := p.Chains()
		if len(chains) != lines {
			t.Errorf("%s: %d lines, wanted %d", name, len(chains), lines)
		}
		for _, chain := range chains {
			var repeats []int
			for _, id := range chain.Cuts {
				repeats = append(repeats, p.Cuts[id-1].Repeat)
			}
			if !slices.Equal(repeats, []int{3, 4, 5, 6, 1}) || chain.Closed || chain.Times != 1 {
				t.Errorf("%s: a line through repeats %v", name, repeats)
				continue
			}
			first, middle, last := p.Cuts[chain.Cuts[0]-1], p.Cuts[chain.Cuts[2]-1], p.Cuts[chain.Cuts[4]-1]
			if next := p.Cuts[chain.Cuts[1]-1]; next.Length != middle.Length || next.Volume != middle.Volume {
				t.Errorf("%s: the cuts in repeats 4 and 5 differ", name)
			}
			if ends := first.Volume + last.Volume; ends >= 2*middle.Volume {
				t.Errorf("%s: the ends have no tails: %g mm³, and %g in the middle", name, ends, 2*middle.Volume)
			}
		}
	}
}

// A motif is cut once for all its copies, where its lines end in its own repeat.
func TestCutOnce(t *testing.T) {
	leaf := jobtest.Motif(t, "leaf", nil, jobtest.Size(0.6, 0.8))
	fan := jobtest.Motif(t, "fan", nil, jobtest.At(0.5, 0.2), jobtest.Size(0.3, 0.2))
	fan.Only = []int{1, 4}
	j := jobOn(blankOf(t, 40, 44), 6, leaf, fan)
	j.Layout.Bare = []int{2}
	e := NewEvaluator()
	d, err := e.TryOn(t.Context(), j, j.Blanks[0], job.Side)
	if err != nil {
		t.Fatal(err)
	}
	before := e.Grooves()
	cuts := d.Cuts(1)
	if rays := len(fan.Kind.Draw(fan.Values, 1)); len(cuts) != 2*rays || e.Grooves()-before != rays {
		t.Errorf("%d cuts, %d grooves cut, for a fan of %d rays", len(cuts), e.Grooves()-before, rays)
	}
	p := planned(t, j)
	if free := p.Free(); !slices.Equal(free, []int{2}) {
		t.Errorf("free: %v", free)
	}
	// The fan's copies are three repeats apart, the leaf's next ones one.
	if near, far := p.apart(0), p.apart(1); math.Abs(near-p.PitchAngle()) > 1e-12 || math.Abs(far-3*p.PitchAngle()) > 1e-12 {
		t.Errorf("copies are %g and %g apart", near, far)
	}
}

// An editor and an evaluator tell apart jobs that differ only in the repeats of a motif.
func TestListsAreToldApart(t *testing.T) {
	ring := jobtest.Motif(t, "ring", map[string]float64{"lines": 1}, jobtest.At(0, 0.2), jobtest.Size(1, 0.1))
	fan := jobtest.Motif(t, "fan", nil, jobtest.At(0, 0.2), jobtest.Size(0.4, 0.4)) // it lies on the ring
	e, v := new(Editor), NewEvaluator()
	for _, c := range []struct{ bare, on []int }{
		{nil, nil}, {[]int{2}, nil}, {[]int{3}, nil}, {[]int{2}, []int{2}}, {[]int{2}, []int{3}}, {nil, []int{1, 4}}, {[]int{1, 4}, nil}, {nil, nil},
	} {
		j := jobOn(blankOf(t, 38, 42), 6, ring, fan)
		j.Layout.Bare, j.Motifs[1].Only = c.bare, c.on
		plans, err := e.Lay(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		want := planned(t, j)
		if !reflect.DeepEqual(want.Cuts, plans[0].Cuts) || !reflect.DeepEqual(want.Findings, plans[0].Findings) {
			t.Errorf("%+v: the editor's plan isn't the one from scratch", c)
		}
		d, err := v.TryOn(t.Context(), j, j.Blanks[0], job.Side)
		if err != nil {
			t.Fatal(err)
		}
		if d.Clears() != (len(want.Findings) == 0) {
			t.Errorf("%+v: the evaluator says %t", c, d.Clears())
		}
	}
	// Alone on the bare repeat, the fan has no ring to lie on.
	j := jobOn(blankOf(t, 38, 42), 6, ring, fan)
	j.Layout.Bare, j.Motifs[1].Only = []int{2}, []int{2}
	for _, f := range planned(t, j).Findings {
		if about, _ := planned(t, j).About(f); len(about) == 2 {
			t.Errorf("%v between the ring and a fan where no ring is", f.Kind)
		}
	}
}
