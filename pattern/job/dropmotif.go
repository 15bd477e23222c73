package job

import (
	"math"
	"slices"
	"strconv"
)

// dropMotif takes out a motif. Those inside it come to stand where it stood: in the space
// it was inside, or on their own. The numbers in later ones follow. With the last motif of the
// base its table goes too.
func (r *revising) dropMotif(owner place, i int) error {
	all := owner.places("motif")
	if r.changes(all[i]) { // the included one stays, as it is
		return r.take(owner, "motif", i)
	}
	number := owner.table.number("motif", i)
	freed := make(map[int][]given)
	for n, m := range all {
		if m.outer() == number {
			freed[n] = r.freed(all[i], m)
		}
	}
	outer, face := all[i].outer(), all[i].says("face")
	if err := r.take(owner, "motif", i); err != nil {
		return err
	}
	for n := range all[:len(all)-1] {
		was := n
		if n >= i {
			was++
		}
		path := Item("motif", r.doc.root.number("motif", n)-1)
		if err := r.renumber(path, number, outer); err != nil {
			return err
		}
		for _, g := range freed[was] {
			if err := r.set(path, g.key, g.value); err != nil {
				return err
			}
		}
	}
	if face == Base.String() {
		return r.dropBareBase()
	}
	return nil
}

// dropBareBase takes out the table of the base where nothing stands on it.
func (r *revising) dropBareBase() error {
	e := r.doc.root.find("base")
	stands := func(m place) bool { return m.says("face") == Base.String() }
	if e == nil || e.value.table == nil || slices.ContainsFunc(place{table: r.root}.places("motif"), stands) {
		return nil
	}
	return r.dropTable("base", r.doc.root, e)
}

// outer returns the number of the motif that one is inside, 0 where it is in none.
func (p place) outer() int {
	e := p.find("inside")
	if e == nil || !e.value.isNumber() {
		return 0
	}
	x, err := e.value.number()
	if err != nil || x != math.Trunc(x) || math.Abs(x) > maxMotifs {
		return 0
	}
	return int(x)
}

// renumber mends the inside of a motif after the one of a number was dropped, which was
// inside outer.
func (r *revising) renumber(path string, dropped, outer int) error {
	p, ok := r.place(path)
	if !ok {
		return r.strange(path)
	}
	switch inside := p.outer(); {
	case inside == dropped && outer == 0:
		return r.unset(path, "inside")
	case inside == dropped:
		return r.set(path, "inside", strconv.Itoa(outer))
	case inside > dropped:
		return r.set(path, "inside", strconv.Itoa(inside-1))
	}
	return nil
}

// freed returns what a motif needs to stand where it stood inside another when that one
// is gone. Its place and size can be given where both have them as shares and the outer
// one stands upright.
func (r *revising) freed(outer, inner place) []given {
	var keep []given
	for _, key := range []string{"on", "shape", "face"} {
		if e := outer.find(key); e != nil && outer.outer() == 0 {
			keep = append(keep, given{key, r.raw(e)})
		}
	}
	o, whole := r.shares(outer)
	n, sized := r.shares(inner)
	if !whole || !sized || outer.find("turn") != nil || outer.find("mirror") != nil {
		return keep
	}
	x, y := o.x+o.width*n.x, o.y+o.height*(n.y-0.5)
	if math.Abs(x) > 0.5 {
		x -= math.Round(x) // it stands in the next repeat
	}
	return append(keep,
		given{"at", "[" + share(x) + ", " + share(min(max(y, 0), 1)) + "]"},
		given{"width", share(max(o.width*n.width, MinShare))}, given{"height", share(max(o.height*n.height, MinShare))})
}

// shares is where a motif stands and how large it is, in shares of its space.
type shares struct{ x, y, width, height float64 }

// shares reads those of a motif; ok is false where one of them is a length or can't be
// read.
func (r *revising) shares(p place) (s shares, ok bool) {
	var texts []string
	for _, key := range []string{"at", "width", "height"} {
		k, _ := p.key(key)
		if f := r.field(p, &k); f.List != nil {
			texts = append(texts, f.List...)
		} else {
			texts = append(texts, f.Text)
		}
	}
	into := []*float64{&s.x, &s.y, &s.width, &s.height}
	if len(texts) != len(into) {
		return s, false
	}
	for i, text := range texts {
		if !plainNumber().MatchString(text) {
			return s, false
		}
		*into[i], _ = strconv.ParseFloat(text, 64)
	}
	return s, true
}

// share writes a share as a person would, to a thousandth.
func share(x float64) string {
	const fine = 1000
	return strconv.FormatFloat(math.Round(x*fine)/fine+0, 'f', -1, 64)
}
