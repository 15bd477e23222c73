package pattern

// landKey is a pair of cuts with everything that their land depends on.
type landKey struct {
	first, second placed
	turns         int
	sameMotif     bool
	land, clear   float64
}

// placed is one cut of a numbered figure in a repeat of the period.
type placed struct{ figure, number, repeat int }

// verdict is the result of checking a pair; the cuts' ids in it are not to be used.
type verdict struct {
	finding Finding
	bad     bool
}

// knownLands keeps the lands measured in earlier layouts. A nil one keeps nothing.
type knownLands struct {
	shelf *shelf[landKey, verdict]
	cuts  []placed // the plan's
}

// known returns the lands that are known for a plan made of figures.
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

// check is crowding.check with its results kept.
func (k *knownLands) check(c *crowding, q pair) (Finding, bool) {
	if k == nil {
		return c.check(q)
	}
	p := c.plan
	first, second := &p.Cuts[q.first], &p.Cuts[q.second]
	key := landKey{
		first: k.cuts[q.first], second: k.cuts[q.second], turns: q.turns, sameMotif: first.Motif == second.Motif,
		land: p.landOf(first.side(), second.side()), clear: p.clearOf(first.side(), second.side()),
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
