package pattern

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/pattern/job"
)

// Draft is one job on one blank. Its methods cut and measure only what they need. Use it
// only while its context lasts: after that Clears says no, and Problems is not complete.
type Draft struct {
	Plan   *Plan       // without cuts
	Motifs []job.Motif // the job's, in the sizes this blank is given

	ctx context.Context
	of  *Evaluator
	ids []int // of the motifs
}

// drawable returns an error if a motif of the draft can't be drawn, or if all of them
// together are over a limit.
func (d *Draft) drawable() error {
	all := bill{plan: d.Plan, each: make([]toll, len(d.ids))}
	for i := range d.ids {
		s := d.stand(i)
		if s.wrong != nil {
			return s.wrong
		}
		all.each[i] = s.toll
	}
	return all.within()
}

func (d *Draft) stand(i int) *placedMotif { return d.of.placed[d.ids[i]] }

// Clears reports whether nothing is found.
func (d *Draft) Clears() bool {
	if d.Plan.Ungored() {
		return false
	}
	for i := range d.Motifs {
		if d.ctx.Err() != nil || !d.ClearsAlone(i) {
			return false
		}
	}
	for i := range d.Motifs {
		for k := range i {
			if d.ctx.Err() != nil || !d.ClearsPair(i, k) {
				return false
			}
		}
	}
	return true
}

// ClearsAlone reports whether a motif clears by itself, and beside its own copies.
func (d *Draft) ClearsAlone(i int) bool {
	s := d.stand(i)
	if s.known {
		return s.clear
	}
	s.known = true
	if !s.isCut() {
		drawn, placed := d.placed(i)
		if d.Plan.closeLines(i, drawn, placed) {
			s.figure = nil // it may never be cut, and is large
			return false
		}
	}
	p := d.only(d.Cuts(i))
	for _, find := range []func() []Finding{p.thin, p.margins, p.buried, p.tight, p.shallow, p.bridged} {
		if slices.ContainsFunc(find(), Finding.counts) {
			return false
		}
	}
	for range p.crowd(i) {
		return false
	}
	d.measured(i)
	s.clear = true
	return true
}

// only returns the draft's plan with some of its cuts alone.
func (d *Draft) only(cuts []Cut) *Plan {
	p := *d.Plan
	p.Cuts = cuts
	return &p
}

// measured counts the work of measuring a motif's cuts against one another.
func (d *Draft) measured(i int) { d.of.spent.work += int(2 * d.stand(i).toll.beside) }

// Cuts returns the cuts of a motif in one period, with ids and joins as if it were the
// only motif.
func (d *Draft) Cuts(i int) []Cut {
	s := d.stand(i)
	if s.cuts == nil && s.isCut() {
		s.cuts, s.price = s.like.cuts, s.like.price
		d.of.spent.add(s.price)
	}
	if s.cuts == nil {
		p := *d.Plan
		all := make([]*figure, len(d.Motifs))
		_, all[i] = d.placed(i)
		s.figure = nil                                  // its grooves are the cuts now
		_ = p.cutAll(context.WithoutCancel(d.ctx), all) // one motif is soon cut, and is kept only when complete
		const longer = 3                                // a bent line takes this many times longer
		const resting = 4                               // and so many, where the wheel rests in two places: it is looked at all over
		for n, c := range p.Cuts[:len(all[i].cuts)] {
			s.price.grooves++
			if c.Length > r2.Norm(r2.Sub(c.Ends()[1], c.Ends()[0]))+touching {
				s.price.grooves += longer
			}
			work := p.work(p.Job.Rack[c.Wheel], !all[i].shapes[0].lines[n].Straight(), *c.Hand) * float64(len(c.Samples))
			if c.Bridges() {
				work *= resting
			}
			s.price.work += int(work)
		}
		d.of.spent.add(s.price)
		s.cuts = p.Cuts
	}
	return s.cuts
}

// placed returns a motif drawn, and its figure with the lines placed, which is kept until it
// is cut.
func (d *Draft) placed(i int) (drawing, *figure) {
	s := d.stand(i)
	one, _ := d.Plan.drawing(i) // no error: drawable has drawn it
	if s.figure == nil {
		s.figure = &figure{cuts: one.cuts}
		s.figure.place(d.Plan, one)
	}
	return one, s.figure
}

// ClearsPair reports whether two motifs clear one another.
func (d *Draft) ClearsPair(a, b int) bool {
	if a == b || d.Plan.land(a, b) == 0 || !d.Plan.carries(a) || !d.Plan.carries(b) {
		return true
	}
	a, b = min(a, b), max(a, b)
	key := [2]int{d.ids[a], d.ids[b]}
	if isClear, ok := d.of.pairs[key]; ok {
		return isClear
	}
	isClear := true
	for range d.pair(a, b).crowd(a, b) {
		isClear = false
		break
	}
	d.of.pairs[key] = isClear
	return isClear
}

// pair returns the plan of two motifs alone.
func (d *Draft) pair(a, b int) *Plan {
	cuts := slices.Concat(d.Cuts(a), d.Cuts(b))
	for i := range cuts {
		cuts[i].ID, cuts[i].Joins = i+1, nil // motifs don't join one another
	}
	d.of.spent.work += 4 + len(cuts) // the search among them for two that come near
	return d.only(cuts)
}

// Problems returns the problems of all the motifs.
func (d *Draft) Problems() Problems {
	all := Problems{}
	d.of.spent.work += len(d.Motifs) * len(d.Motifs) / 32 // looking up the pairs
	for i := range d.Motifs {
		if d.ctx.Err() != nil {
			break
		}
		all.add(d.alone(i))
		for k := range i {
			all.add(d.between(k, i))
		}
	}
	return all
}

// alone returns the problems of a motif by itself.
func (d *Draft) alone(i int) Problems {
	s := d.stand(i)
	if s.problems == nil {
		s.problems = Problems{}
		if !d.ClearsAlone(i) || d.Plan.Ungored() {
			p := d.only(slices.Clone(d.Cuts(i)))
			d.measured(i)
			found := p.findings()
			s.problems.count(p, found)
		}
	}
	return s.problems
}

// between returns the problems between two motifs, given in the job's order.
func (d *Draft) between(a, b int) Problems {
	key := [2]int{d.ids[a], d.ids[b]}
	found, ok := d.of.found[key]
	if !ok {
		found = Problems{}
		if !d.ClearsPair(a, b) {
			p := d.pair(a, b)
			found.count(p, slices.Collect(p.crowd(a, b)))
		}
		d.of.found[key] = found
	}
	return found
}

// Kinds returns the kinds of findings on a motif alone. Kinds that moving the motif mends
// come last, as another size may need another place. Any finding between two cuts counts
// as Crowded.
func (d *Draft) Kinds(i int) []Kind {
	if d.ClearsAlone(i) {
		return nil
	}
	s := d.stand(i)
	if s.kinds != nil {
		return s.kinds
	}
	p := d.only(slices.Clone(d.Cuts(i)))
	d.measured(i)
	for range p.crowd(i) {
		s.kinds = append(s.kinds, Crowded)
		break
	}
	for _, find := range []func() []Finding{p.buried, p.tight, p.shallow, p.thin, p.bridged, p.margins} {
		for _, one := range find() {
			if one.counts() && !slices.Contains(s.kinds, one.Kind) {
				s.kinds = append(s.kinds, one.Kind)
			}
		}
	}
	return s.kinds
}

// Finds reports whether a kind is found on exactly the given motifs: none, one or two.
func (d *Draft) Finds(kind Kind, motifs []int) bool {
	p := d.Plan
	switch len(motifs) {
	case 1:
		i := motifs[0]
		if d.ClearsAlone(i) {
			return false
		}
		d.measured(i)
		p = d.only(d.Cuts(i))
	case 2:
		if d.ClearsPair(motifs[0], motifs[1]) {
			return false
		}
		p = d.pair(motifs[0], motifs[1])
	}
	return p.has(kind, motifs)
}

// RunsOn reports whether a motif is meant to run on from one repeat to the next: it is as
// wide as its repeat, or its lines continue there.
func (d *Draft) RunsOn(i int) bool {
	m := d.Plan.Job.Motifs[i]
	if !d.Plan.carries(i) {
		return false
	}
	tapers := m.Shape == job.Taper || d.Plan.Surface.Upright() // else it lies on its next copy where the glass is narrower
	if tapers && m.Width.Fraction && meets(d.Plan.layout(), m) && m.Width.Value < d.Plan.layout().Stride(m)+1e-3 {
		return true
	}
	return slices.ContainsFunc(d.Cuts(i), func(c Cut) bool { return c.RunsOn })
}
