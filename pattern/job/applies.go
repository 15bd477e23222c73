package job

import (
	"fmt"
	"slices"
	"sync"

	"roundlay/motifs"
)

// keys returns the keys that apply to a table: of a wheel those of its edge, of a motif
// also those of its kind, but not what it has from the one it is inside.
func (p place) keys() []*Key {
	known, _ := tableOf(p.name)
	own := ofKinds()[p.says("kind")]
	all := make([]*Key, 0, len(known.Keys)+len(own))
	edge, follows := p.says("edge"), p.following()
	for i := range known.Keys {
		k := &known.Keys[i]
		if k.suits(edge) && !(slices.Contains(follows, k.Name) && p.find(k.Name) == nil) {
			all = append(all, k)
		}
	}
	if p.name == "motif" {
		for i := range own {
			all = append(all, &own[i])
		}
	}
	return all
}

// following lists the keys that a motif has no say in: those it takes from the one it is
// inside, and those that are settled where it stands over the middle of a base.
func (p place) following() []string {
	var all []string
	if p.name == "motif" && p.find("inside") != nil {
		all = append(all, fromOuter()...)
	}
	if p.name == "motif" && p.says("middle") == "true" {
		all = append(all, overMiddle()...)
	}
	return all
}

// fromOuter lists the keys that a motif takes from the one it is inside.
func fromOuter() []string { return []string{"on", "shape", "face", "middle"} }

// overMiddle lists those that are settled where a motif stands over the middle of a base.
func overMiddle() []string { return []string{"at", "on", "shape"} }

// key returns the description of a key of the table. One that is for other edges is
// described too, and where a motif's kind isn't known one of any kind.
func (p place) key(name string) (Key, bool) {
	known, _ := tableOf(p.name)
	if k, ok := known.key(name); ok || p.name != "motif" {
		return k, ok
	}
	if own, ok := ofKinds()[p.says("kind")]; ok {
		return Table{Keys: own}.key(name)
	}
	for _, kind := range allKinds() {
		if k, ok := (Table{Keys: ofKinds()[kind.Name]}).key(name); ok {
			return k, true
		}
	}
	return Key{}, false
}

// allKinds holds every kind of motif, and ofKinds its parameters as keys. They never
// change.
var (
	allKinds = sync.OnceValue(motifs.Listed)
	ofKinds  = sync.OnceValue(func() map[string][]Key {
		all := make(map[string][]Key)
		for _, kind := range allKinds() {
			for _, p := range kind.Params {
				all[kind.Name] = append(all[kind.Name], ofParameter(p))
			}
			for _, c := range kind.Keys {
				all[kind.Name] = append(all[kind.Name], ofContent(c))
			}
		}
		return all
	})
)

// ofContent describes a key of a kind's contents.
func ofContent(c motifs.ContentKey) Key {
	sorts := [...]Sort{motifs.Text: OfText, motifs.Texts: OfTexts, motifs.Choice: OfSwitch}
	k := Key{Name: c.Name, About: c.About, Sort: sorts[c.Sort], inches: c.Example, mm: c.Example}
	switch c.Sort {
	case motifs.Text:
		k.Min, k.Max = 1, maxTitle
	case motifs.Choice:
		k.Default = fmt.Sprint(false)
	}
	return k
}

// ofParameter describes the parameter of a kind as a key.
func ofParameter(p motifs.Param) Key {
	k := Key{Name: p.Name, About: p.About, Sort: OfNumber, Min: p.Min, Max: p.Max, Default: fmt.Sprintf("%g", p.Default)}
	switch p.Sort {
	case motifs.Count:
		k.Sort, k.Words = OfWhole, []string{maxWord}
	case motifs.Switch:
		k.Sort, k.Min, k.Max, k.Default = OfSwitch, 0, 0, fmt.Sprint(p.Default != 0)
	}
	return k
}
