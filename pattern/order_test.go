package pattern

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// someBars is a job of single cuts, one a repeat and a motif, with wheels,
// depths and lengths that often agree.
func someBars(t testing.TB, random *rand.Rand, n int) *job.Job {
	var all []job.Motif
	for range n {
		m := bar(t, 0, 30, []float64{24, 30, 40}[random.IntN(3)], depth([]float64{0.3, 0.5, 0.8}[random.IntN(3)]), with(random.IntN(3)))
		all = append(all, m)
	}
	return jobOn(straight(t), 3, all...)
}

// permutations calls visit with every order of n things.
func permutations(n int, visit func([]int)) {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	var walk func(k int)
	walk = func(k int) {
		if k == n {
			visit(order)
			return
		}
		for i := k; i < n; i++ {
			order[k], order[i] = order[i], order[k]
			walk(k + 1)
			order[k], order[i] = order[i], order[k]
		}
	}
	walk(0)
}

// TestOrderAgainstAll compares with every order of the cuts there is: none takes
// fewer changes of wheel, and of those that take as few none has a deeper or a
// longer cut where it first differs.
func TestOrderAgainstAll(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 1))
	for range 60 {
		p := laid(t, someBars(t, random, 1+random.IntN(6)))
		var got []Cut
		for _, pass := range p.Order() {
			for _, c := range pass.Cuts {
				if c.Wheel != pass.Wheel {
					t.Fatalf("cut %d of wheel %d in the pass of wheel %d", c.ID, c.Wheel, pass.Wheel)
				}
				got = append(got, c)
			}
		}
		// Depths and lengths here differ by far more than rounding.
		worse := func(a, b []Cut) int {
			for i := range a {
				if math.Abs(a[i].Depth-b[i].Depth) > 0.01 {
					return cmp.Compare(b[i].Depth, a[i].Depth)
				}
				if math.Abs(a[i].Length-b[i].Length) > 0.01 {
					return cmp.Compare(b[i].Length, a[i].Length)
				}
			}
			return 0
		}
		changes := func(cuts []Cut) int {
			n := 0
			for i := 1; i < len(cuts); i++ {
				if cuts[i].Wheel != cuts[i-1].Wheel {
					n++
				}
			}
			return n
		}
		permutations(len(p.Cuts), func(order []int) {
			other := make([]Cut, len(order))
			for i, k := range order {
				other[i] = p.Cuts[k]
			}
			a, b := changes(got), changes(other)
			if b < a || b == a && worse(got, other) > 0 {
				t.Fatalf("%v is a better order than %v", ids(other), ids(got))
			}
		})
	}
}

func ids(cuts []Cut) []int {
	var all []int
	for _, c := range cuts {
		all = append(all, c.ID)
	}
	return all
}

// Every cut on the glass comes once, whatever the job says of the order.
func TestSequence(t *testing.T) {
	leaf := func(change ...func(*job.Motif)) job.Motif {
		return motif(t, "leaf", motifs.Values{"fronds": 4}, append(change, size(0.6, 0.6))...)
	}
	for name, j := range map[string]*job.Job{
		"one wheel":    jobOn(straight(t), 5, leaf()),
		"odd and even": jobOn(straight(t), 6, leaf(on(job.Odd)), leaf(on(job.Even), with(olive)), leaf(with(fine))),
		"overruled":    jobOn(straight(t), 3, leaf(with(olive)), leaf(with(fine)), leaf()),
	} {
		if name == "overruled" {
			j.Shop.Order = []int{fine, mitre}
			j.Motifs[0].CutOrder = 3
		}
		p := laid(t, j)
		got := p.Sequence()
		for i, id := range slices.Sorted(slices.Values(got)) {
			if id != i+1 {
				t.Fatalf("%s: %v is not every number once", name, got)
			}
		}
		if len(got) != p.Totals().Cuts {
			t.Errorf("%s: %d numbers for %d cuts", name, len(got), p.Totals().Cuts)
		}
	}
}

// TestOrderByHand has three wheels, each with its deepest cut in another motif.
func TestOrderByHand(t *testing.T) {
	j := jobOn(straight(t), 4,
		bar(t, 0, 20, 30, depth(0.3), with(mitre)), // 1
		bar(t, 0, 20, 30, depth(0.9), with(fine)),  // 2
		bar(t, 0, 20, 40, depth(0.3), with(mitre)), // 3
		bar(t, 0, 20, 30, depth(0.5), with(olive)), // 4
		bar(t, 0, 20, 30, depth(0.5), with(mitre)), // 5
	)
	order := func() (wheels, cuts []int) {
		for _, pass := range laid(t, j).Order() {
			wheels = append(wheels, pass.Wheel)
			cuts = append(cuts, ids(pass.Cuts)...)
		}
		return wheels, cuts
	}
	check := func(what string, wheels, cuts []int) {
		t.Helper()
		gotWheels, gotCuts := order()
		if !slices.Equal(gotWheels, wheels) || !slices.Equal(gotCuts, cuts) {
			t.Errorf("%s: wheels %v, cuts %v; wanted %v, %v", what, gotWheels, gotCuts, wheels, cuts)
		}
	}
	// The olive and the mitre both begin with half a millimetre over 30 mm. With
	// the olive first a cut as deep comes second; with the mitre first, a shallow one.
	check("by itself", []int{fine, olive, mitre}, []int{2, 4, 5, 3, 1})
	j.Shop.Order = []int{mitre}
	check("the mitre first", []int{mitre, fine, olive}, []int{5, 3, 1, 2, 4})
	j.Shop.Order = []int{olive, panel, mitre, fine}
	check("all of them", []int{olive, mitre, fine}, []int{4, 5, 3, 1, 2})
	j.Shop.Order = nil
	j.Motifs[0].CutOrder, j.Motifs[2].CutOrder = 2, 1
	check("two motifs first", []int{fine, olive, mitre}, []int{2, 4, 3, 1, 5})

	// The fine wheel's deep cut has to wait for a shallow one: it still is the
	// deepest wheel.
	shallow := jobOn(straight(t), 4,
		bar(t, 0, 20, 30, depth(0.2), with(fine)),  // 1
		bar(t, 0, 20, 30, depth(0.9), with(fine)),  // 2
		bar(t, 0, 20, 30, depth(0.5), with(mitre)), // 3
	)
	shallow.Motifs[0].CutOrder = 1
	if got := laid(t, shallow).Sequence(); !slices.Equal(got, []int{1, 4, 7, 10, 2, 5, 8, 11, 3, 6, 9, 12}) {
		t.Errorf("one motif first on the deepest wheel: %v", got)
	}

	p := laid(t, j)
	if got := p.Around(2); !slices.Equal(got, []int{2, 7, 12, 17}) {
		t.Errorf("cut 2 round the glass: %v", got)
	}
	// Cuts 1 and 3 and 5 are 30, 40 and 30 mm long, four times round: 400 mm, at
	// 50 mm a minute.
	pass := p.Order()[2]
	if got, minutes := p.Length(pass), p.PassMinutes(pass); !near(got, 400, 1e-9) || minutes != 0 {
		t.Errorf("%g mm in %g minutes", got, minutes)
	}
	j.Shop.Rate = 50
	if got := p.PassMinutes(pass); !near(got, 8, 1e-9) {
		t.Errorf("%g minutes", got)
	}
}
