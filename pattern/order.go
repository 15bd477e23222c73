package pattern

import (
	"cmp"
	"math"
	"slices"

	"roundlay/pattern/job"
)

// Pass is what is cut with one wheel on the machine: the cuts of one period, in
// the order to cut them. Each is cut all round the glass before the next.
type Pass struct {
	Wheel int // the rack's
	Cuts  []Cut
}

// Order returns the order in which to cut, wheel by wheel: deep cuts before
// shallow ones and long before short, with no more changes of the wheel than
// there must be. The wheel that cuts deepest comes first. The job may overrule which
// wheels come first, and which motifs on a wheel; numbers stay as they are.
func (p *Plan) Order() []Pass {
	passes := make(map[int]*Pass)
	for _, c := range p.Cuts {
		if passes[c.Wheel] == nil {
			passes[c.Wheel] = &Pass{Wheel: c.Wheel}
		}
		passes[c.Wheel].Cuts = append(passes[c.Wheel].Cuts, c)
	}
	var order []Pass
	for wheel := range p.Job.Rack { // not over the map, whose order changes
		if pass := passes[wheel]; pass != nil {
			slices.SortStableFunc(pass.Cuts, func(a, b Cut) int {
				return cmp.Or(before(a, b), cmp.Compare(a.Motif, b.Motif))
			})
			order = append(order, *pass)
		}
	}
	// The order of motifs on a wheel is no matter of which wheel comes first.
	slices.SortStableFunc(order, func(a, b Pass) int {
		return cmp.Or(cmp.Compare(p.turn(a.Wheel), p.turn(b.Wheel)), a.before(b))
	})
	for _, pass := range order {
		slices.SortStableFunc(pass.Cuts, p.given)
	}
	return order
}

// Sequence returns the ids of every cut on the glass in the order to cut them.
func (p *Plan) Sequence() []int {
	var ids []int
	for _, pass := range p.Order() {
		for _, c := range pass.Cuts {
			ids = append(ids, p.Around(c.ID)...)
		}
	}
	return ids
}

// Around returns the ids of a cut and of its copies all round the glass.
func (p *Plan) Around(id int) []int {
	ids := make([]int, p.Turns())
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
	return length * float64(p.Turns())
}

// Minutes returns how long a length of groove takes at the shop's own rate. It
// is 0 where that isn't known.
func (p *Plan) Minutes(length float64) float64 {
	if p.Job.Shop.Rate == 0 {
		return 0
	}
	return length / p.Job.Shop.Rate
}

// Overruled reports whether the job says anything of the order.
func (p *Plan) Overruled() bool {
	return len(p.Job.Shop.Order) > 0 || slices.ContainsFunc(p.Job.Motifs, func(m job.Motif) bool { return m.CutOrder > 0 })
}

// turn returns the place of a wheel in the order the job gives, the last of all
// for one it doesn't name.
func (p *Plan) turn(wheel int) int {
	if i := slices.Index(p.Job.Shop.Order, wheel); i >= 0 {
		return i
	}
	return len(p.Job.Shop.Order)
}

// given compares two cuts by the order the job asks for between their motifs.
// Those it says nothing of come after those it does.
func (p *Plan) given(a, b Cut) int {
	place := func(c Cut) int {
		if n := p.Job.Motifs[c.Motif].CutOrder; n > 0 {
			return n
		}
		return math.MaxInt
	}
	return cmp.Compare(place(a), place(b))
}

// before compares two cuts by depth, then by length, to the thousandth of a
// millimetre: mirrored cuts differ by what rounding leaves.
func before(a, b Cut) int {
	const fine = 1000
	return cmp.Or(
		cmp.Compare(math.Round(b.Depth*fine), math.Round(a.Depth*fine)),
		cmp.Compare(math.Round(b.Length*fine), math.Round(a.Length*fine)),
	)
}

// before compares two passes: that one goes first which, with the other after
// it, has the deeper or the longer cut where the two orders first differ.
func (a Pass) before(b Pass) int {
	return slices.CompareFunc(slices.Concat(a.Cuts, b.Cuts), slices.Concat(b.Cuts, a.Cuts), before)
}
