package job

import (
	_ "embed" // for shop.toml and motif.toml
	"strings"
	"unicode"
	"unicode/utf8"

	"roundlay/geometry"
	"roundlay/motifs"
)

//go:embed shop.toml
var shopText string

//go:embed motif.toml
var motifText string

// ShopFile returns a file to include: the limits, the rack and the shop of the starter, with
// a note on every key. The name is the file's.
func ShopFile(name string, unit geometry.Unit) []byte {
	return begun(unit, described(), shopText, name)
}

// motifFile is what motif.toml is filled in with.
type motifFile struct {
	File, Name  string
	Kind        motifs.Kind
	Keys        []string // what its kind is made of, as lines
	Parts, Part string   // all of them, and the first
}

// MotifFile returns a file to include: one motif of a kind at its defaults, with a note on
// every key. The name is the file's; without its ending, the motif has it too.
func MotifFile(name string, kind motifs.Kind, unit geometry.Unit) []byte {
	called, _, _ := strings.Cut(name, ".")
	if called = strings.TrimSpace(called); called == "" || utf8.RuneCountInString(called) > maxName || strings.ContainsFunc(called, func(r rune) bool { return !unicode.IsPrint(r) }) {
		called = kind.Name
	}
	about := motifFile{File: name, Name: called, Kind: kind, Parts: "named as plan lists them", Part: "NAME"}
	if len(kind.Parts) > 0 {
		about.Parts, about.Part = list(kind.Parts), kind.Parts[0]
	}
	for _, c := range kind.Keys {
		line := contentNote(c)
		if c.Begins {
			line = noted(c.Name+" = "+c.Example, c.About)
		}
		about.Keys = append(about.Keys, line)
	}
	return begun(unit, described(), motifText, about)
}

// parameterNote is a parameter of a kind with its default, as a key.
func parameterNote(p motifs.Param) string {
	k := ofParameter(p)
	return noted(k.Name+" = "+k.Default, p.About+"; "+p.Range())
}
