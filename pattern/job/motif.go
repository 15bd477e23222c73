package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/motifs"
)

// motifs reads every [[motif]], given the layout of each face. One has 0 repeats where their
// number isn't known.
func (s section) motifs(wheels rack, layouts [2]Layout, read source) []Motif {
	tables := s.required("motif").list("a table [[motif]] for each motif", maxMotifs)
	kinds := readable()
	all, names := make([]Motif, 0, len(tables)), make([]string, 0, len(tables))
	for _, table := range tables {
		names = table.named(names)
		m := table.motif(&kinds, wheels, layouts, all)
		m.Name = names[len(names)-1]
		_, m.Line = read.place(table.table.at)
		all = append(all, m)
	}
	return all
}

// The least share of its space that a motif may take, and how many repeats it may be wide.
const (
	MinShare = 0.001
	MaxWide  = 2
)

// motif reads one motif, given the kinds there are and the motifs before it.
func (s section) motif(kinds *kindKeys, wheels rack, layouts [2]Layout, before []Motif) Motif {
	m := Motif{
		X: Measure{0, true}, Y: Measure{0.5, true},
		Width: Measure{1, true}, Height: Measure{1, true},
	}
	s.only(kinds.keysFor(s.table))
	s.kindless(kinds.names)
	if i, ok := s.required("kind").word(kinds.names); ok {
		m.Kind = kinds.all[i]
		m.Values, m.Most = s.values(m.Kind)
		s.content(&m)
		if m.Kind.Draw != nil { // else what it is made of is refused already
			m.Parts = s.parts(m.Kind, wheels)
		}
	}
	m.Wheel = s.motifWheel(wheels)
	m.Depth, _ = s.required("depth").length(span{0.01, maxDepth, 1.6})

	s.face(&m)
	s.place(&m)
	s.proportions(&m)
	if turn, ok := s.optional("turn").degrees(span{-360, 360, 15}); ok {
		m.Turn = turn
	}
	if mirror, ok := s.optional("mirror").truth(); ok {
		m.Mirror = mirror
	}
	if i, ok := s.optional("shape").word(Shapes()); ok {
		m.Shape = Shape(i)
	}
	if !s.inside(&m, before) && !m.Middle {
		s.on(&m, layouts[m.Face])
	}
	if land, ok := s.optional("land").length(span{0, maxDepth, 0.8}); ok {
		m.Land = &land
	}
	if share, ok := s.optional("clear").within(span{0, 1, 0.4}); ok {
		m.Clear = &share
	}
	m.Swell, m.Rock = s.swell(), s.rock()
	m.CutOrder, _ = s.optional("cut_order").whole(1, maxMotifs)
	return m
}

// kindNames returns the names of kinds, in order.
func kindNames(kinds []motifs.Kind) []string {
	names := make([]string, len(kinds))
	for i, kind := range kinds {
		names[i] = kind.Name
	}
	return names
}

// kindKeys are the kinds that a motif can be of, with their names and all the keys that a
// motif of each can have.
type kindKeys struct {
	all   []motifs.Kind
	names []string
	keys  [][]string
}

func readable() kindKeys {
	k := kindKeys{all: motifs.Readable()}
	k.names, k.keys = kindNames(k.all), make([][]string, len(k.all))
	for i, kind := range k.all {
		known := keysOf("motif")
		for _, p := range kind.Params {
			known = append(known, p.Name)
		}
		for _, key := range kind.Keys {
			known = append(known, key.Name)
		}
		k.keys[i] = known
	}
	return k
}

// keysFor returns the keys that a motif can have: those of its kind, and where that isn't
// known those of all.
func (k *kindKeys) keysFor(motif *table) []string {
	if e := motif.find("kind"); e != nil {
		if i := slices.Index(k.names, e.value.text); i >= 0 {
			return k.keys[i]
		}
	}
	all := keysOf("motif")
	own := len(all)
	for _, keys := range k.keys {
		all = append(all, keys[own:]...)
	}
	return all
}

// values reads the parameters of a kind, and which of its counts are to be as large
// as clears.
func (s section) values(kind motifs.Kind) (values motifs.Values, most []string) {
	values = kind.Defaults()
	for _, p := range kind.Params {
		field := s.optional(p.Name)
		if field.value == nil {
			continue
		}
		if p.Sort == motifs.Switch {
			if on, ok := field.truth(); ok {
				values[p.Name] = 0
				if on {
					values[p.Name] = 1
				}
			}
			continue
		}
		if p.Sort == motifs.Count && field.value.kind == unstable.String && isMost(field.value.text) {
			delete(values, p.Name)
			most = append(most, p.Name)
			continue
		}
		accepted := p.Range()
		if p.Sort == motifs.Count {
			accepted += ", or " + quoted(maxWord)
		}
		if x, ok := field.number(accepted, p.Accepts); ok {
			values[p.Name] = x
		}
	}
	return values, most
}

// maxWord is written in a job for the largest count that clears.
const maxWord = "most"

// isMost reports whether a text is that word, however it is written.
func isMost(text string) bool { return strings.EqualFold(strings.TrimSpace(text), maxWord) }

// motifWheel reads which wheel of the rack cuts the motif.
func (s section) motifWheel(wheels rack) int {
	field := s.required("wheel")
	accepted := "the name of a wheel in the rack"
	if len(wheels.names) > 0 {
		accepted += ", " + list(wheels.names)
	}
	if field.absent(accepted) {
		return 0
	}
	i := -1
	if field.value.kind == unstable.String {
		i = slices.Index(wheels.names, field.value.text)
	}
	if i < 0 && (wheels.whole || field.value.kind != unstable.String) {
		field.refuse(accepted, meant(field.value.text, wheels.names))
	}
	return i
}

// place reads where the motif stands and how large it is.
func (s section) place(m *Motif) {
	if across, up, ok := s.optional("at").pair("a list of two, across from -0.5 to 0.5 of the repeat and up from 0 to 1 of the band, such as [0, 0.5]"); ok {
		m.X, _ = across.measure(span{-0.5, 0.5, 0}, span{-maxGirth / 2, maxGirth / 2, 12}, ", from the repeat's middle")
		m.Y, _ = up.measure(span{0, 1, 0.5}, span{0, maxAcross, 40}, ", up from the band's foot")
	}
	// A motif may reach over its neighbours, but not round the glass.
	if width, ok := s.optional("width").measure(span{MinShare, MaxWide, 1}, span{0.1, maxGirth, 25}, ""); ok {
		m.Width = width
	}
	if height, ok := s.optional("height").measure(span{MinShare, 1, 1}, span{0.1, maxAcross, 40}, ""); ok {
		m.Height = height
	}
}

// earlier returns the motifs before one that its inside can name, by their numbers in the
// whole job, given how many there are: the first is named 1. An included file counts its own
// alone, for it doesn't know what is read before it. where says so in a message.
func (f field) earlier(before int) (numbers []int, where string) {
	if file := includedAt(f.in.files, f.value.at); file != nil {
		own := file.doc.root.numbers["motif"]
		return own[:slices.Index(own, before+1)], " in " + quoted(file.name)
	}
	for n := range before {
		numbers = append(numbers, n+1)
	}
	return numbers, ""
}

// inside reads which earlier motif's space this one fills. It then has that one's
// repeats and its shape. It reports whether the key is there.
func (s section) inside(m *Motif, before []Motif) bool {
	field := s.optional("inside")
	if field.value == nil {
		return false
	}
	earlier, where := field.earlier(len(before))
	accepted := "the number of a motif before this one" + where
	switch n := len(earlier); {
	case n > 1:
		accepted += fmt.Sprintf(", a whole number from 1 to %d", n)
	case n == 1:
		accepted += ", which is 1"
	default:
		accepted = "no such key in the first motif" + where + ": a motif is inside one that stands before it"
	}
	n, ok := field.number(accepted, func(x float64) bool {
		return x >= 1 && x <= float64(len(earlier)) && x == math.Trunc(x) && earlier[int(x)-1] <= len(before)
	})
	if !ok {
		return true
	}
	m.Inside = earlier[int(n)-1]
	outer := before[m.Inside-1]
	m.On, m.Only, m.Shape, m.Face, m.Middle = outer.On, outer.Only, outer.Shape, outer.Face, outer.Middle
	for _, key := range fromOuter() {
		if given := s.optional(key); given.value != nil {
			given.refuse(fmt.Sprintf("no %s in a motif that is inside another", key),
				fmt.Sprintf("it follows motif %d", m.Inside))
		}
	}
	return true
}
