package pattern

import (
	"math"
	"slices"
)

// Chain is what is cut without lifting the wheel: one cut, or several that continue into
// one another from repeat to repeat.
type Chain struct {
	Cuts   []int // ids, from end to end; the first is in the first period
	Closed bool  // the last continues into the first, all round the glass
	Times  int   // how many copies of the chain there are round the glass
}

// Alone reports whether the chain is a single cut that continues into no other.
func (c Chain) Alone() bool { return len(c.Cuts) == 1 && !c.Closed }

// GoesOn reports whether any of the plan's cuts continues into another.
func (p *Plan) GoesOn() bool {
	return slices.ContainsFunc(p.Chains(), func(c Chain) bool { return !c.Alone() })
}

// Chains returns the plan's chains, each once for all its copies round the glass, in the
// order of their first ids. Every cut of the period belongs to exactly one of them.
func (p *Plan) Chains() []Chain {
	links := p.links()
	seen := make([]bool, len(p.Cuts))
	var all []Chain
	for i := range p.Cuts {
		if seen[i] {
			continue
		}
		chain := Chain{Cuts: []int{p.Cuts[i].ID}, Times: p.Periods()}
		if len(links) > 0 {
			chain = p.chain(links, i)
		}
		for _, id := range chain.Cuts {
			seen[p.inPeriod(id)] = true
		}
		all = append(all, chain)
	}
	slices.SortFunc(all, func(a, b Chain) int { return a.Cuts[0] - b.Cuts[0] })
	return all
}

// Copy returns the ids of a chain's copy the given number of periods further round.
func (p *Plan) Copy(c Chain, turns int) []int {
	ids := make([]int, len(c.Cuts))
	for i, id := range c.Cuts {
		ids[i] = p.id(id, turns)
	}
	return ids
}

// Sum returns a chain as one cut: its length and volume are the sums, its depth and
// width the largest, its glass left the least.
func (p *Plan) Sum(c Chain) Cut {
	sum := p.Cuts[p.inPeriod(c.Cuts[0])]
	whole := *sum.Groove // its own: cuts share theirs
	sum.Groove = &whole
	for _, id := range c.Cuts[1:] {
		next := &p.Cuts[p.inPeriod(id)]
		sum.Length += next.Length
		sum.Volume += next.Volume
		sum.Depth, sum.Width = max(sum.Depth, next.Depth), max(sum.Width, next.Width)
		sum.Plunge = max(sum.Plunge, next.Plunge)
		sum.Left = min(sum.Left, next.Left)
	}
	return sum
}

// inPeriod returns the index in p.Cuts of the cut that the given one is a copy of.
func (p *Plan) inPeriod(id int) int { return (id - 1 - p.before) % len(p.Cuts) }

// TurnsTo returns how many periods round the face the cut with an id stands.
func (p *Plan) TurnsTo(id int) int { return (id - 1 - p.before) / len(p.Cuts) }

// tip is one of the two ends of a cut on the glass: the start of its line or the end.
type tip struct {
	id  int
	end bool
}

// other returns the cut's other end.
func (t tip) other() tip { return tip{t.id, !t.end} }

// chain returns the chain that a cut of the period belongs to.
func (p *Plan) chain(links map[tip]tip, i int) Chain {
	all := len(p.Cuts) * p.Periods()
	// Back from the cut to where its chain begins: to its left, if it has one.
	first := tip{p.Cuts[i].ID, p.leftEnd(i)}
	closed := false
	for range all {
		before, ok := p.follow(links, first)
		if !ok {
			break
		}
		if first = before.other(); first.id == p.Cuts[i].ID {
			closed = true
			break
		}
	}
	ids := []int{first.id}
	for at := first.other(); len(ids) < all; {
		next, ok := p.follow(links, at)
		if !ok || next.id == ids[0] {
			break
		}
		ids, at = append(ids, next.id), next.other()
	}
	if closed { // a ring has no start: begin at its lowest id
		least := slices.Index(ids, slices.Min(ids))
		ids = slices.Concat(ids[least:], ids[:least])
	}
	// Shift the chain so that it begins in the first period.
	chain := Chain{Cuts: ids, Closed: closed}
	chain.Cuts = p.Copy(chain, -p.TurnsTo(ids[0]))
	own := 0
	for _, id := range ids {
		if p.inPeriod(id) == p.inPeriod(ids[0]) {
			own++
		}
	}
	chain.Times = p.Periods() / own
	return chain
}

// leftEnd reports whether a cut's end lies further to the left than its start.
func (p *Plan) leftEnd(i int) bool {
	s := p.Cuts[i].Samples
	return s[len(s)-1].Theta < s[0].Theta
}

// follow returns the end of the cut that continues from an end.
func (p *Plan) follow(links map[tip]tip, from tip) (tip, bool) {
	// Links are stored for the first period only.
	turns := p.TurnsTo(from.id)
	to, ok := links[tip{p.id(from.id, -turns), from.end}]
	return tip{p.id(to.id, turns), to.end}, ok
}

// links returns, for the period's cuts, which end continues into which.
func (p *Plan) links() map[tip]tip {
	links := map[tip]tip{}
	ends := map[[2]int][]stub{} // by motif and height
	for i := range p.Cuts {
		if p.Cuts[i].RunsOn {
			for _, e := range []bool{false, true} {
				s := p.stub(i, e)
				ends[s.row(0)] = append(ends[s.row(0)], s)
			}
		}
	}
	for _, some := range ends {
		for _, s := range some {
			straightest := math.Inf(1)
			for row := -1; row <= 1; row++ {
				for _, o := range ends[s.row(row)] {
					if turns, cos, meets := p.goesOn(s, o); meets && cos < straightest {
						links[s.tip], straightest = tip{p.id(o.id, turns), o.end}, cos
					}
				}
			}
		}
	}
	for from, to := range links {
		if back, ok := p.follow(links, to); !ok || back != from {
			delete(links, from) // the other end has a straighter link
		}
	}
	return links
}

// stub is an end of a cut that may continue in another: its place, and the direction out
// of it, round the glass and up.
type stub struct {
	tip
	motif, repeat int
	theta, height float64
	tool
	radius    float64
	round, up float64
}

// row returns the key under which stubs are stored, by motif and by whole millimetres of
// height; above adds to the height.
func (s stub) row(above int) [2]int { return [2]int{s.motif, int(math.Floor(s.height)) + above} }

func (p *Plan) stub(i int, end bool) stub {
	c := &p.Cuts[i]
	tools := toolsOf(c.Wheel, c.Asked/c.Hand.Greatest(), *c.Hand)
	at, inner, own := c.Samples[0], c.Samples[1], tools[0]
	if end {
		n := len(c.Samples)
		at, inner, own = c.Samples[n-1], c.Samples[n-2], tools[1]
	}
	s := stub{tip: tip{c.ID, end}, motif: c.Motif, repeat: c.Repeat, theta: at.Theta, height: at.Height, tool: own}
	s.radius = p.Surface.RadiusAt(at.Height)
	s.round = s.radius * (at.Theta - inner.Theta)
	s.up = p.Surface.AlongAt(at.Height) - p.Surface.AlongAt(inner.Height)
	long := math.Hypot(s.round, s.up)
	s.round, s.up = s.round/long, s.up/long
	return s
}

// goesOn reports whether one end continues straight into a copy of another, how many
// periods further round that copy stands, and the cosine between the two directions out.
func (p *Plan) goesOn(from, to stub) (turns int, cos float64, meets bool) {
	const (
		near     = 5 * touching
		straight = -0.985 // looser than in meetings.meets: these directions are taken over one sample
	)
	period := float64(p.Period) * p.PitchAngle()
	turns = int(math.Round((from.theta - to.theta) / period))
	off := math.Hypot(from.radius*(from.theta-to.theta-float64(turns)*period), from.height-to.height)
	same := turns == 0 && from.repeat == to.repeat // one copy of the motif
	cos = from.round*to.round + from.up*to.up
	return turns, cos, !same && from.tool.goesOn(to.tool) && off < near && cos < straight
}
