package pattern

// landKey is a pair of cuts with all that their land follows from: each by its
// figure, and what lies between them.
type landKey struct {
	first, second placed
	turns         int
	sameMotif     bool
	land, clear   float64
}

// placed is one cut of a figure in a repeat of the period.
type placed struct{ figure, number, repeat int }

// verdict is what was found on a pair, but for the names of its cuts.
type verdict struct {
	finding Finding
	bad     bool
}

// knownLands finds again what was measured in an earlier layout. A nil one knows
// nothing, and keeps nothing.
type knownLands struct {
	shelf *shelf[landKey, verdict]
	cuts  []placed // the plan's
}

// known returns what is known of the lands of a plan made of figures.
func (e *Editor) known(p *Plan, figures []numbered) *knownLands {
	if e.once {
		return nil
	}
	k := &knownLands{&e.lands, make([]placed, len(p.Cuts))}
	number := 0
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if number++; i == 0 || c.Motif != p.Cuts[i-1].Motif || c.Repeat != p.Cuts[i-1].Repeat {
			number = 0
		}
		k.cuts[i] = placed{figures[c.Motif].number, number, c.Repeat}
	}
	return k
}

// check is crowding's, kept.
func (k *knownLands) check(c *crowding, q pair) (Finding, bool) {
	if k == nil {
		return c.check(q)
	}
	p := c.plan
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	key := landKey{
		first: k.cuts[q.first], second: k.cuts[q.second], turns: q.turns, sameMotif: first.Motif == second.Motif,
		land: p.land(first.Motif, second.Motif), clear: p.clear(first.Motif, second.Motif),
	}
	l, known := k.shelf.get(key)
	if !known {
		l.finding, l.bad = c.check(q)
		k.shelf.put(key, l)
	}
	f := l.finding
	if l.bad {
		f.Cuts, f.Repeat = []int{first.ID, p.id(second.ID, q.turns)}, first.Repeat
	}
	return f, l.bad
}
