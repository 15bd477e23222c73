package job

import (
	"fmt"
	"math"
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Stands reports whether a motif stands on a repeat, counted from 1. Those it lists it
// stands on. One over the middle of a base stands once. Otherwise it stands on each, or on the odd or even ones, that isn't left bare.
func (l Layout) Stands(m Motif, repeat int) bool {
	if m.Middle {
		return repeat == 1
	}
	if m.Only != nil {
		_, listed := slices.BinarySearch(m.Only, repeat)
		return listed
	}
	_, bare := slices.BinarySearch(l.Bare, repeat)
	return !bare && (m.On == Each || (m.On == Odd) == (repeat%2 == 1))
}

// Copies returns the repeats on which a motif stands, from 1 on.
func (l Layout) Copies(m Motif) []int {
	var all []int
	for repeat := 1; repeat <= l.Repeats; repeat++ {
		if l.Stands(m, repeat) {
			all = append(all, repeat)
		}
	}
	return all
}

// Stride returns how many repeats the nearest two copies of a motif stand apart. One that
// stands once is all the repeats from itself.
func (l Layout) Stride(m Motif) float64 {
	copies := l.Copies(m)
	least := l.Repeats
	for i, repeat := range copies {
		if i > 0 {
			least = min(least, repeat-copies[i-1])
		}
	}
	if n := len(copies); n > 1 {
		least = min(least, copies[0]+l.Repeats-copies[n-1])
	}
	return float64(max(least, 1))
}

// ByNumber reports whether a job says of any repeat of a face by its number what stands
// there. Such a face can't be given another number of repeats: nobody knows where its motifs
// would go.
func (j *Job) ByNumber(face Face) bool {
	return len(j.LayoutOf(face).Bare) > 0 || slices.ContainsFunc(j.Motifs, func(m Motif) bool { return m.Face == face && m.Only != nil })
}

// repeatNumbers reads a list of repeats, each once, in any order. most is 0 where it
// isn't known how many there are.
func (f field) repeatNumbers(accepted string, most int) []int {
	if f.value.kind != unstable.Array {
		f.refuse(accepted, f.listHint(most))
		return nil
	}
	if len(f.value.items) == 0 {
		f.refuse(accepted, "")
		return nil
	}
	var all []int
	for i, item := range f.value.items {
		n, ok := item.repeatNumber(most)
		switch {
		case !ok:
			hint := ""
			if item.kind == unstable.String {
				hint = inQuotes(item.text)
			}
			f.item(i).refuse(accepted, hint)
			return nil
		case slices.Contains(all, n):
			f.item(i).refuse(accepted, "this one is in the list already")
			return nil
		}
		all = append(all, n)
	}
	slices.Sort(all)
	return all
}

// repeatNumber reads the number of a repeat.
func (v *value) repeatNumber(most int) (int, bool) {
	if !v.isNumber() {
		return 0, false
	}
	if most == 0 {
		most = maxRepeats
	}
	x, err := v.number()
	return int(x), err == nil && x == math.Trunc(x) && x >= 1 && x <= float64(most)
}

// listHint is the hint for a repeat that stands without the brackets of a list.
func (f field) listHint(most int) string {
	if n, ok := f.value.repeatNumber(most); ok {
		return fmt.Sprintf("write [%d]", n)
	}
	return ""
}

// listOfRepeats says what a list of repeats is.
func listOfRepeats(repeats int) string {
	accepted := "a list of repeats by their numbers, each once"
	if repeats > 0 {
		accepted += fmt.Sprintf(", from 1 to %d", repeats)
	}
	return accepted
}

// on reads which repeats carry the motif.
func (s section) on(m *Motif, layout Layout) {
	field := s.optional("on")
	accepted := list(Ons()) + ", or " + listOfRepeats(layout.Repeats)
	switch {
	case field.value == nil:
	case field.value.kind == unstable.Array || field.value.isNumber():
		m.Only = field.repeatNumbers(accepted, layout.Repeats)
		return
	case field.value.kind == unstable.String && slices.Contains(Ons(), field.value.text):
		m.On = On(slices.Index(Ons(), field.value.text))
	default:
		field.refuse(accepted, meant(field.value.text, Ons()))
		return
	}
	if m.On != Each && layout.Repeats%2 != 0 {
		field.read = fmt.Sprintf("%s with layout.repeats = %d", quoted(m.On.String()), layout.Repeats)
		field.refuse(quoted(Each.String())+", a list of repeats, or an even number of them",
			fmt.Sprintf("alternating repeats need an even N: write repeats = %d, or on = %s", layout.Repeats+1, quoted(Each.String())))
		return
	}
	s.somewhere(*m, layout)
}

// somewhere refuses a motif that all of its repeats being left bare leaves no place.
func (s section) somewhere(m Motif, layout Layout) {
	if layout.Repeats == 0 || len(layout.Copies(m)) > 0 || s.late(s.table.at) {
		return
	}
	s.note(&mistake{
		at: s.table.at, key: s.name("on"), read: fmt.Sprintf("%s repeats, all of them left free by layout.bare", m.On),
		accepted: "a repeat to stand on: " + listOfRepeats(layout.Repeats),
	})
}

// bare reads which repeats are left free.
func (s section) bare(repeats int) []int {
	field := s.optional("bare")
	if field.value == nil {
		return nil
	}
	return field.repeatNumbers(listOfRepeats(repeats)+", such as [2]", repeats)
}
