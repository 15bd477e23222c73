package pattern

import (
	"cmp"
	"math"
	"slices"

	"roundlay/pattern/job"
)

// Pass is what is cut with one wheel on the machine, in the order to cut it: chain by
// chain, each with all its copies round the glass before the next.
type Pass struct {
	Wheel  int // number in the rack, from 0
	Chains []Chain
	Cuts   []Cut // the period's, in the order of their chains

	sums []Cut // the chains, each as one cut
}

// Order returns the order in which to cut. Each wheel is put on once, the wheel that cuts
// deepest first. On a wheel deep cuts come before shallow ones, then long before short; a
// chain counts as one cut. The job can overrule the order of the wheels, and of the motifs
// on a wheel. Cuts keep their ids.
func (p *Plan) Order() []Pass {
	passes := make(map[int]*Pass)
	for _, c := range p.Chains() {
		sum := p.Sum(c)
		if passes[sum.Wheel] == nil {
			passes[sum.Wheel] = &Pass{Wheel: sum.Wheel}
		}
		pass := passes[sum.Wheel]
		pass.Chains, pass.sums = append(pass.Chains, c), append(pass.sums, sum)
	}
	var order []Pass
	for wheel := range p.Job.Rack { // not over the map, which has no order
		if pass := passes[wheel]; pass != nil {
			pass.sort(func(a, b Cut) int {
				return cmp.Or(before(a, b), cmp.Compare(a.Motif, b.Motif), cmp.Compare(a.twin.number, b.twin.number))
			})
			order = append(order, *pass)
		}
	}
	// The job's order of motifs must not change the order of wheels: sort wheels first.
	slices.SortStableFunc(order, func(a, b Pass) int {
		return cmp.Or(cmp.Compare(p.rank(a.Wheel), p.rank(b.Wheel)), a.before(b))
	})
	for i := range order {
		order[i].sort(p.given)
		order[i].Cuts = p.cutsIn(order[i].Chains)
	}
	return order
}

// sort sorts the chains of a pass, compared as one cut each.
func (a *Pass) sort(compare func(a, b Cut) int) {
	places := make([]int, len(a.Chains))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(i, k int) int { return compare(a.sums[i], a.sums[k]) })
	chains, sums := slices.Clone(a.Chains), slices.Clone(a.sums)
	for n, i := range places {
		a.Chains[n], a.sums[n] = chains[i], sums[i]
	}
}

// cutsIn returns the period's cuts that the chains are made of, each once.
func (p *Plan) cutsIn(chains []Chain) []Cut {
	var cuts []Cut
	known := make([]bool, len(p.Cuts))
	for _, chain := range chains {
		for _, id := range chain.Cuts {
			if i := p.inPeriod(id); !known[i] {
				known[i] = true
				cuts = append(cuts, p.Cuts[i])
			}
		}
	}
	return cuts
}

// Sequence returns the ids of every cut on the glass in the order to cut them.
func (p *Plan) Sequence() []int {
	var ids []int
	for _, pass := range p.Order() {
		ids = append(ids, p.Within(pass)...)
	}
	return ids
}

// Within returns the ids of every cut of a pass in the order to cut them.
func (p *Plan) Within(pass Pass) []int {
	var ids []int
	for _, c := range pass.Chains {
		for turns := range c.Times {
			ids = append(ids, p.Copy(c, turns)...)
		}
	}
	return ids
}

// Around returns the ids of a cut and of its copies all round the glass.
func (p *Plan) Around(id int) []int {
	ids := make([]int, p.Periods())
	for turns := range ids {
		ids[turns] = p.id(id, turns)
	}
	return ids
}

// Length returns the length of groove of a pass, all round the glass.
func (p *Plan) Length(pass Pass) float64 {
	length := 0.0
	for _, c := range pass.Cuts {
		length += c.Length
	}
	return length * float64(p.Periods())
}

// Overruled reports whether the job says anything about the order.
func (p *Plan) Overruled() bool {
	return len(p.Job.Shop.Order) > 0 || slices.ContainsFunc(p.Job.Motifs, func(m job.Motif) bool { return m.CutOrder > 0 })
}

// rank returns the place of a wheel in the job's order. A wheel it doesn't name ranks after
// all it does.
func (p *Plan) rank(wheel int) int {
	if i := slices.Index(p.Job.Shop.Order, wheel); i >= 0 {
		return i
	}
	return len(p.Job.Shop.Order)
}

// given compares two cuts by the job's order of their motifs. Motifs without a place in the
// order come last.
func (p *Plan) given(a, b Cut) int {
	place := func(c Cut) int {
		if n := p.Job.Motifs[c.Motif].CutOrder; n > 0 {
			return n
		}
		return math.MaxInt
	}
	return cmp.Compare(place(a), place(b))
}

// before compares two cuts by depth, then by length, to the thousandth of a millimetre, as
// mirrored cuts differ by rounding.
func before(a, b Cut) int {
	const fine = 1000
	return cmp.Or(
		cmp.Compare(math.Round(b.Depth*fine), math.Round(a.Depth*fine)),
		cmp.Compare(math.Round(b.Length*fine), math.Round(a.Length*fine)),
	)
}

// before compares two passes by comparing the two possible orders cut by cut: at the first
// difference, the order with the deeper or longer cut is the better one.
func (a Pass) before(b Pass) int {
	return slices.CompareFunc(slices.Concat(a.sums, b.sums), slices.Concat(b.sums, a.sums), before)
}
